import { limitOf } from '../../shared-engine/limits/table.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'
import type { Shown } from '../../shared-engine/units/display.ts'
import { worstByPart } from '../../shared-engine/limits/worst.ts'
import { oneText } from '../../shared-engine/units/display.ts'

/** The worst limit of a part that is not kept with something in hand. */
export interface PartSign {
  readonly standing: 'near' | 'over'
  /** "Tooth shear over". */
  readonly words: string
}

/** Sign of each part's worst limit in ordinary use; parts within all of them have none. */
export function partSigns(rows: readonly LimitRow[]): ReadonlyMap<string, PartSign> {
  const signs = new Map<string, PartSign>()
  for (const [part, { id, standing }] of worstByPart(rows)) {
    if (standing !== 'within') signs.set(part, { standing, words: `${limitOf(id)?.label ?? id} ${standing}` })
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
