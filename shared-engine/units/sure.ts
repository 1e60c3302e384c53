import type { QuantityKind } from './kinds.ts'

/**
 * Significant figures that a number deserves beside a figure that deserves so many. The zero of °C is only a place on the
 * scale: two figures of 104 °C would say nothing of how well it is known.
 *
 * @param known of the figure; undefined: all that are shown anywhere
 */
export const sureFigures = (kind: QuantityKind, known: 2 | 3 | undefined): 2 | 3 | undefined =>
  kind === 'temperature' ? known && 3 : known
