/**
 * The engaged rows as springs k, the loop between them as springs S/p, told by what their closed form needs
 * (`track/sharing.ts`): κ = k p/S, sinh(θ/2) = √κ/2.
 */
export interface RowSprings {
  /** κ^½/2 = sinh(θ/2). */
  readonly halfSine: number
  /** cosh(θ/2). */
  readonly halfCosine: number
  /** θ. */
  readonly decay: number
  /** e^(−θ/2). */
  readonly halfStep: number
  /** e^−θ, and 1 − e^−θ, which loses no digits where θ is small. */
  readonly step: number
  readonly rise: number
  /** e S/p, N. */
  readonly errorTension: number
}

/**
 * Works out the springs of a track.
 *
 * @param rowStiffness k, N/m
 * @param loopStiffness S, N
 * @param pitch p, m
 * @param pitchError e, m, the loop's pitch less the sprocket's
 * *Source:* `docs/model.md` §6.
 */
export function rowSpringsOf(
  rowStiffness: number,
  loopStiffness: number,
  pitch: number,
  pitchError: number,
): RowSprings {
  const halfSine = Math.sqrt((rowStiffness * pitch) / loopStiffness) / 2
  const decay = 2 * Math.asinh(halfSine)
  return {
    halfSine,
    halfCosine: Math.sqrt(1 + halfSine * halfSine),
    decay,
    halfStep: Math.exp(-decay / 2),
    step: Math.exp(-decay),
    rise: -Math.expm1(-decay),
    errorTension: (pitchError * loopStiffness) / pitch,
  }
}
