import type { ToothPart } from '../machine/parts.ts'

/** Shear at the root: τ = F_t/(w t), Pa. *Source:* mean stress over the root section. */
export function toothShear(tooth: ToothPart, force: number): number {
  return force / (tooth.width * tooth.root)
}

/** Bending at the root: σ_b = 6 F_t h/(w t²), Pa. *Source:* cantilever of rectangular section. */
export function toothBending(tooth: ToothPart, force: number): number {
  return (6 * force * tooth.loadHeight) / (tooth.width * tooth.root * tooth.root)
}

/**
 * Pressure on the flank.
 *
 * σ_c = F_t/(w · min(H, 2 (H − h))).
 *
 * @returns Pa
 * *Source:* the pressed height is taken as twice the distance from the load to the tip: `docs/model.md` §6, assumption.
 */
export function toothBearing(tooth: ToothPart, force: number): number {
  const pressed = Math.min(tooth.height, 2 * (tooth.height - tooth.loadHeight))
  return force / (tooth.width * pressed)
}
