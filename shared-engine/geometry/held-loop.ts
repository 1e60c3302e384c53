/**
 * How a loop is kept tight. `fixed`: a screw holds the wheels apart, so that what one side gains the other loses.
 * `sprung`: a spring or a weight keeps the slack side at the pretension.
 */
export type TensionerKind = 'fixed' | 'sprung'

/** A loop on its wheels, cold. */
export interface LoopHold {
  readonly tensioner: TensionerKind
  /** N_0, N, tension of the loop at rest at the air's temperature. */
  readonly pretension: number
  /** λ = ℓ/L, part of the loop that the pull stretches. */
  readonly tightShare: number
}

/**
 * Part of a fixed loop's pretension by which it shrinks more than the frame.
 *
 * s = (α_loop − α_frame)(T_assembly − T_air).
 *
 * @param loopExpansion, frameExpansion 1/K
 * @param assembly, air °C
 * @returns strain, > 0 where the loop would be shorter
 * *Source:* thermal expansion.
 */
export function shrinkage(
  loopExpansion: number,
  frameExpansion: number,
  assembly: number,
  air: number,
): number {
  return (loopExpansion - frameExpansion) * (assembly - air)
}

/**
 * Pretension at the air's temperature on a fixed tensioner.
 *
 * N_0 = max(0, N + S s).
 *
 * @param pretension N at assembly, N
 * @param stiffness S, N
 * @param strain s
 * *Source:* Hooke's law.
 */
export function coldPretension(pretension: number, stiffness: number, strain: number): number {
  return Math.max(0, pretension + stiffness * strain)
}

/**
 * Part of a loop that the pull stretches.
 *
 * λ = ℓ/L, ℓ given or max(p, (L − r wrap)/2), at most L.
 *
 * @param given ℓ, m, or null
 * @param pitch p, m
 * @param length L, m
 * @param wrapped r · wrap, m
 * *Source:* assumption: half of what is not on the sprocket.
 */
export function tightSpanOf(given: number | null, pitch: number, length: number, wrapped: number): number {
  return Math.min(given ?? Math.max(pitch, (length - wrapped) / 2), length)
}
