import { isRow, type Rows } from '../entries/rows/group.ts'
import { benchFactor } from '../units/convert.ts'

/** Keys of the rows that hold numbers. */
type NumberKey<R extends Rows> = {
  [K in keyof R & string]: R[K] extends { readonly help: string }
    ? R[K] extends { readonly kind: 'text' } | { readonly flag: true }
      ? never
      : K
    : never
}[keyof R & string]

/** A number in SI; `null` where it may be missing and is. */
type InSi<R> = R extends { readonly optional: true } ? number | null : number

/** The numbers of a part, as a build holds them in force. */
type Numbers<R extends Rows> = { readonly [_ in NumberKey<R>]?: number | undefined }

/**
 * The one crossing from bench units to SI: an entry's row says its kind, the table of units what that is stored in.
 *
 * @param rows of the part
 * @returns for a part what reads its entries by key, in the engine's unit of their kind; `null` where one is missing
 * @example siOf({ pitchMm: { label: '', kind: 'length', help: '' } })({ pitchMm: 20 })('pitchMm') // 0.02
 */
export function siOf<const R extends Rows>(rows: R) {
  const factors: Record<string, number> = {}
  for (const [key, row] of Object.entries(rows)) if (isRow(row)) factors[key] = benchFactor(row.kind)
  return (part: Numbers<R>) =>
    <K extends NumberKey<R>>(key: K): InSi<R[K]> => {
      const entry = part[key]
      // A row that is not optional has a value in a complete build; the compiler cannot follow that through a table.
      return (entry === undefined ? null : entry * (factors[key] ?? NaN)) as InSi<R[K]>
    }
}
