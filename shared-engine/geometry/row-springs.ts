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
  /** e S/p, N. */
  readonly errorTension: number
  /** n, rows that the sprocket engages. */
  readonly engaged: number
  /** By a number of rows m, up to n: y_far/y_near from which so many carry, cosh((m − ½) θ)/cosh(θ/2). */
  readonly ratios: Float64Array
  /** By a number of rows j: e^(−jθ), and 1 − e^(−jθ), which is summed up so that a small θ loses no digits. */
  readonly powers: Float64Array
  readonly rises: Float64Array
}

/**
 * Works out the springs of a track, and by rows what every load on them asks for: a load is then told without an
 * exponential, and a search asks millions of times of the same few tracks.
 *
 * c_m = cosh((m − ½) θ)/cosh(θ/2) obeys c_{m+1} − 2 c_m + c_{m−1} = κ c_m, c_0 = c_1 = 1: sums of positive numbers.
 *
 * @param rowStiffness k, N/m
 * @param loopStiffness S, N
 * @param pitch p, m
 * @param pitchError e, m, the loop's pitch less the sprocket's
 * @param engaged n
 * *Source:* `docs/model.md` §6.
 */
export function rowSpringsOf(
  rowStiffness: number,
  loopStiffness: number,
  pitch: number,
  pitchError: number,
  engaged: number,
): RowSprings {
  const relative = (rowStiffness * pitch) / loopStiffness
  const halfSine = Math.sqrt(relative) / 2
  const decay = 2 * Math.asinh(halfSine)
  const step = Math.exp(-decay)
  const rise = -Math.expm1(-decay)
  const ratios = new Float64Array(engaged + 1).fill(1)
  const powers = new Float64Array(engaged + 1).fill(1)
  const rises = new Float64Array(engaged + 1)
  let growth = 0
  for (let row = 1; row <= engaged; row += 1) {
    const before = powers[row - 1] ?? 0
    powers[row] = before * step
    rises[row] = (rises[row - 1] ?? 0) + before * rise
    if (row === 1) continue
    growth += relative * (ratios[row - 1] ?? 0)
    ratios[row] = (ratios[row - 1] ?? 0) + growth
  }
  return {
    halfSine,
    halfCosine: Math.sqrt(1 + halfSine * halfSine),
    decay,
    halfStep: Math.exp(-decay / 2),
    errorTension: (pitchError * loopStiffness) / pitch,
    engaged,
    ratios,
    powers,
    rises,
  }
}
