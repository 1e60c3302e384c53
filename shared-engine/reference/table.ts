import { toEngine } from '../units/convert.ts'
import { z } from './zod.ts'

/** Where a table comes from, kept beside its numbers so that a working can say so. */
export interface Origin {
  readonly source: string
  /** Written down from memory, not from the open page; `checked` says what has been compared since. */
  readonly fromMemory: boolean
  readonly checked: readonly { readonly what: string; readonly source: string }[]
}

const sentence = z.string().trim().min(10, 'a table says where it comes from')

/** The three keys that every table must have. */
export const originShape = {
  source: sentence,
  fromMemory: z.boolean(),
  checked: z.array(z.strictObject({ what: sentence, source: z.string().trim().min(1) })).min(1),
}

/** A positive, finite number: a strength, a pitch, a density. */
export const positive = z.number().positive()

/** The tables keep the units in which their sources print them; these bring them to SI. */
export const fromMillimetres = (value: number) => toEngine(value, 'length', 'mm')
export const fromMegapascals = (value: number) => toEngine(value, 'stress', 'MPa')
export const fromPerMillionKelvin = (value: number) => toEngine(value, 'temperatureCoefficient', 'ppm/K')
export const fromPercent = (value: number) => toEngine(value, 'fraction', '%')

/**
 * A reference table, checked against its schema once, when the module loads.
 *
 * @throws where the table does not fit: a fault of ours, never of a person's file
 */
export function assertTable<S extends z.ZodType>(name: string, schema: S, table: unknown): z.output<S> {
  const read = schema.safeParse(table)
  if (!read.success) throw new Error(`reference table ${name}: ${z.prettifyError(read.error)}`)
  return read.data
}

/** The row of an id that the build's schema has let through. */
export function rowOf<Row>(rows: ReadonlyMap<string, Row>, id: string): Row {
  const row = rows.get(id)
  if (row === undefined) throw new Error(`no row "${id}" in the table`)
  return row
}
