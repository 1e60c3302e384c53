/**
 * What a held loop and the teeth on it are as a spring, seen from the belt.
 *
 * While the slack side of a fixed loop still relaxes (below F_s) the loop is stiffer.
 */
export interface StopSpring {
  /** κ, N/m. */
  readonly stiffness: number
  /** κ_1, N/m, 1/κ_1 = 1/κ − δ. */
  readonly earlyStiffness: number
  /** δ = λ ℓ/S, m/N: 0 on a sprung tensioner. */
  readonly relief: number
  /** F_s = N_0/λ, N: 0 on a sprung tensioner. */
  readonly slackAt: number
  /** ℓ/S, m/N: the stretch of the held span for each newton. */
  readonly spanGive: number
}

/**
 * Stiffness of the engaged rows and the loop between them, one after the other.
 *
 * K ← k, then (rows − 1) times K ← k + 1/(p/S + 1/K).
 *
 * @param row k, N/m
 * @param link S/p, N/m
 * @param rows z_e
 * @returns K, N/m
 * *Source:* springs in series and parallel (a ladder).
 */
export function ladderStiffness(row: number, link: number, rows: number): number {
  let whole = row
  for (let done = 1; done < rows; done += 1) {
    const next = row + 1 / (1 / link + 1 / whole)
    if (next === whole) break // the far rows no longer count
    whole = next
  }
  return whole
}

/**
 * The spring that a held loop is.
 *
 * κ = 1/(1/K + ℓ/S);  fixed: δ = λ ℓ/S, F_s = N_0/λ, 1/κ_1 = 1/κ − δ;  sprung: δ = F_s = 0.
 *
 * @param ladder K, N/m, from {@link ladderStiffness}
 * @param span ℓ, m
 * @param loopStiffness S, N
 * @param tightShare λ; null for a sprung tensioner
 * @param pretension N_0, N
 * *Source:* the loop's stretch conserved between tight and slack side.
 */
export function stopSpringOf(
  ladder: number,
  span: number,
  loopStiffness: number,
  tightShare: number | null,
  pretension: number,
): StopSpring {
  const spanGive = span / loopStiffness
  const give = 1 / ladder + spanGive
  const relief = tightShare === null ? 0 : tightShare * spanGive
  return {
    stiffness: 1 / give,
    earlyStiffness: 1 / (give - relief),
    relief,
    slackAt: tightShare === null ? 0 : pretension / tightShare,
    spanGive,
  }
}
