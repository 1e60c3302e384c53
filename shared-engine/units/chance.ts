/**
 * A probability in two digits at most: as much as some thousand draws can tell, and as a builder can use.
 *
 * @param probability 0 to 1
 * @example chanceText(0.0958) // '9.6\u202f%'
 */
export function chanceText(probability: number): string {
  const percent = probability * 100
  if (percent < 1) return '<\u202F1\u202F%'
  if (percent > 99) return '>\u202F99\u202F%'
  return `${percent < 9.95 ? percent.toFixed(1) : Math.round(percent)}\u202F%`
}
