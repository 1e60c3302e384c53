/**
 * Wald and Wolfowitz's count of runs of signs, in its own standard deviations: far below 0 where neighbours go together.
 *
 * z = (runs − μ)/σ, μ = 2 n₊ n₋/n + 1, σ² = (μ − 1)(μ − 2)/(n − 1).
 *
 * @returns 0 where all have one sign
 * *Source:* A. Wald and J. Wolfowitz, Annals of Mathematical Statistics 11 (1940); NIST/SEMATECH e-Handbook, 1.3.5.13.
 */
export function runsZOf(values: ArrayLike<number>): number {
  let [runs, above] = [0, 0]
  for (let at = 0; at < values.length; at += 1) {
    const up = (values[at] ?? 0) > 0
    if (up) above += 1
    if (at === 0 || up !== (values[at - 1] ?? 0) > 0) runs += 1
  }
  const count = values.length
  const mean = (2 * above * (count - above)) / count + 1
  const variance = ((mean - 1) * (mean - 2)) / (count - 1)
  return variance > 0 ? (runs - mean) / Math.sqrt(variance) : 0
}
