/**
 * A number for a person or a file: `null` where there is none, because JSON has neither NaN nor Infinity and a figure
 * that does not exist must not be shown as one.
 *
 * @param value any number, in any unit
 * @returns the same number, `null` for NaN and for either infinity
 * @example finiteOrNull(2.5) // 2.5
 * @example finiteOrNull(1 / 0) // null
 */
export function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null
}
