/** What moves weight from the skis to the tracks. */
interface Transfer {
  /** h, m, height of the centre of mass. */
  readonly height: number
  /** d, m, from the middle of the patch to the skis. */
  readonly skiDistance: number
  /** F_t, N, and h_t, m, of the hitch. */
  readonly tow: number
  readonly towHeight: number
}

/**
 * Weight that thrust moves from the skis to the tracks.
 *
 * Δ = [h (F_max − R_g) + F_t (h_t − h)]/(d − h f_1), held to 0…W_s: moments about the patch's middle, with grip growing by
 * f_1 Δ. 0 where the numerator is not positive, W_s where the denominator is not.
 *
 * @param grip F_max without transfer, N
 * @param gripPerWeight f_1
 * @param groundResistance R_g, N
 * @param skiWeight W_s, N
 * @returns Δ, N
 * *Source:* statics; sinkage and R_g kept as they are: assumption.
 */
export function weightTransfer(
  transfer: Transfer,
  grip: number,
  gripPerWeight: number,
  groundResistance: number,
  skiWeight: number,
): number {
  const { height, skiDistance, tow, towHeight } = transfer
  const moment = height * (grip - groundResistance) + tow * (towHeight - height)
  if (!(moment > 0)) return 0
  const arm = skiDistance - height * gripPerWeight
  if (!(arm > 0)) return skiWeight
  return Math.min(moment / arm, skiWeight)
}
