import { legendreRule } from '../numeric/legendre.ts'
import type { Motion } from './motion.ts'

/** A run from rest while it is integrated: where it stands and what it took. */
export class RunProgress {
  seconds = 0
  metres = 0
  /** m/s of the ground reached so far. */
  speed = 0
  /** On soil: i L/K and N at rest, and at the speed reached; NaN there where a flat current limit hides it. */
  startShear = NaN
  shear = NaN
  thrust = NaN
}

/**
 * Fixed rule for smooth pieces: thrust less resistance falls and bends downwards, so its nearest zero lies at or past the
 * top speed, and eight nodes leave less than 1e-10 on any piece up to 80 % of it.
 */
const { nodes, weights } = legendreRule(8)

/**
 * Adds a piece on which thrust is F_0 − s v, from the speed reached to another.
 *
 * @param to ground speed, m/s
 * @param start F_0, N
 * @param slope s, N per m/s of ground speed
 * *Source:* closed form of ∫ m_e dv/(F_0 − s v − R(v)) and of ∫ m_e v dv/(…), `docs/model.md` §5.
 */
export function addPiece(
  progress: RunProgress,
  motion: Motion,
  to: number,
  start: number,
  slope: number,
): void {
  const { airDragFactor } = motion
  const surplus = start - motion.footing.standingResistance
  const middle = 0.5 * (progress.speed + to)
  const reach = 0.5 * (to - progress.speed)
  let seconds = 0
  let metres = 0
  for (let index = 0; index < nodes.length; index += 1) {
    const speed = middle + reach * (nodes[index] ?? 0)
    const part = (weights[index] ?? 0) / (surplus - speed * (slope + airDragFactor * speed))
    seconds += part
    metres += part * speed
  }
  const scale = reach * motion.equivalentMass
  progress.seconds += seconds * scale
  progress.metres += metres * scale
  progress.speed = to
}
