import { limitOf } from '../../shared-engine/limits/table.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'
import type { Shown } from '../../shared-engine/units/display.ts'
import { oneText } from '../../shared-engine/units/display.ts'

/** The worst limit of a part that is not kept with something in hand. */
export interface PartSign {
  readonly standing: 'near' | 'over'
  /** "Tooth shear over". */
  readonly words: string
}

/** Worst sign of each part; parts within all limits have none. Rows come worst first. */
export function partSigns(rows: readonly LimitRow[]): ReadonlyMap<string, PartSign> {
  const signs = new Map<string, PartSign>()
  for (const { id, standing } of rows) {
    const limit = limitOf(id)
    if (limit === undefined || standing === 'within' || signs.has(limit.part)) continue
    signs.set(limit.part, { standing, words: `${limit.label} ${standing}` })
  }
  return signs
}

/** A part's name for screen readers: what it is, its live figures, its worst limit. */
export function partName(
  label: string,
  description: string,
  figures: readonly Shown[],
  sign: PartSign | undefined,
): string {
  const numbers = figures.map(oneText).join(', ')
  return [`${label}: ${description}`, numbers, sign?.words].filter(Boolean).join('; ')
}

/** Outlines of the two signs about their middle, 11 px: a triangle and an eight-cornered plate. */
export const signOutlines = {
  near: 'M0-5.5 6 5H-6z',
  over: 'M-2.3-5.5h4.6l3.2 3.2v4.6l-3.2 3.2h-4.6l-3.2-3.2v-4.6z',
} as const
