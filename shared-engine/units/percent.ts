/**
 * The size of a share in percent, as far as a builder can use it: one decimal below 10 %, whole ones from there, and no
 * more than that it is beyond 1,000 %.
 *
 * @param share its sign is left out: words such as "over" say it
 * @example percentText(-0.0274) // '2.7'
 */
export function percentText(share: number): string {
  const percent = Math.abs(share) * 100
  if (percent >= 1000) return '> 1,000'
  return percent >= 10 ? String(Math.round(percent)) : percent.toFixed(1)
}
