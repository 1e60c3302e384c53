import type { Motion } from './motion.ts'
import { beltSpeedForThrust, motorThrustAt } from './thrust-line.ts'

/** Share of the spinning belt speed at which a spin-up counts as done. *Source:* assumption: the rest is approached for ever. */
const done = 0.95

/**
 * Seconds from rest to spinning on the spot.
 *
 * t = ∫ m_s/(F_m(v_b) − F_max) dv_b to 95 % of the belt speed at which F_m = F_max.
 *
 * @param motion of the running state: m_s = m_e − m, of rotors, wheels and loops
 * @param mass m, kg
 * @returns s; NaN where the tracks grip
 * *Source:* Newton's second law of the spinning parts; closed form on each straight piece of the thrust line.
 */
export function spinUpSeconds({ line, footing, equivalentMass }: Motion, mass: number): number {
  const grip = footing.gripThrust
  if (!(motorThrustAt(line, 0) > grip)) return NaN
  const end = done * beltSpeedForThrust(line, grip)
  const corner = Math.max(0, Math.min(line.cornerSpeed, end))
  let seconds = 0
  if (corner > 0) seconds += pieceSeconds(line.limitedStart - grip, line.limitedSlope, corner)
  if (corner < end) {
    seconds += pieceSeconds(line.openStart - grip - line.openSlope * corner, line.openSlope, end - corner)
  }
  return (equivalentMass - mass) * seconds
}

/** ∫ dv/(F − s v) from 0 to v. */
function pieceSeconds(surplus: number, slope: number, speed: number): number {
  const share = (slope * speed) / surplus
  return share === 0 ? speed / surplus : -Math.log1p(-share) / slope
}
