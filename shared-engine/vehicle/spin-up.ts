import type { Motion } from './motion.ts'

/** Share of the spinning belt speed at which a spin-up counts as done. *Source:* assumption: the rest is approached for ever. */
const done = 0.95

/**
 * Seconds from rest to spinning on the spot.
 *
 * t = ∫ m_s/(F_m(v_b) − F_max) dv_b to 95 % of the belt speed at which F_m = F_max.
 *
 * @param spinningMass m_s = m_e − m, kg: rotors, wheels and loops
 * @param spinBelt m/s at which F_m = F_max
 * @returns s
 * *Source:* Newton's second law of the spinning parts; closed form on each straight piece of the thrust line.
 */
export function spinUpSeconds({ line, footing }: Motion, spinningMass: number, spinBelt: number): number {
  const end = done * spinBelt
  const grip = footing.gripThrust
  const corner = Math.max(0, Math.min(line.cornerSpeed, end))
  let seconds = 0
  if (corner > 0) seconds += pieceSeconds(line.limitedStart - grip, line.limitedSlope, corner)
  if (corner < end) {
    seconds += pieceSeconds(line.openStart - grip - line.openSlope * corner, line.openSlope, end - corner)
  }
  return spinningMass * seconds
}

/** ∫ dv/(F − s v) from 0 to v. */
function pieceSeconds(surplus: number, slope: number, speed: number): number {
  const share = (slope * speed) / surplus
  return share === 0 ? speed / surplus : -Math.log1p(-share) / slope
}
