import type { Machine } from '../build/machine-parts.ts'
import type { Footing } from '../ground/footing.ts'
import { legendreRule } from '../numeric/legendre.ts'
import type { ThrustLine } from './thrust-line.ts'

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

/** What a run needs to know at every speed. */
export interface RunSetting {
  readonly machine: Machine
  readonly footing: Footing
  readonly line: ThrustLine
  readonly airDragFactor: number
  /** m_e, kg. */
  readonly mass: number
}

/**
 * Fixed rule for smooth pieces: thrust less resistance falls and bends downwards, so its nearest zero lies at or past the
 * top speed, and eight nodes leave less than 1e-10 on any piece up to 80 % of it.
 */
const rule = legendreRule(8)

/**
 * Adds a piece on which thrust is F_0 − s v.
 *
 * @param from, to ground speeds, m/s
 * @param start F_0, N
 * @param slope s, N per m/s of ground speed
 */
export function addPiece(
  progress: RunProgress,
  setting: RunSetting,
  from: number,
  to: number,
  start: number,
  slope: number,
): void {
  const { mass, airDragFactor } = setting
  const surplus = start - setting.footing.standingResistance
  const middle = 0.5 * (from + to)
  const reach = 0.5 * (to - from)
  let seconds = 0
  let metres = 0
  for (let index = 0; index < rule.nodes.length; index += 1) {
    const speed = middle + reach * (rule.nodes[index] ?? 0)
    const part = (rule.weights[index] ?? 0) / (surplus - slope * speed - airDragFactor * speed * speed)
    seconds += part
    metres += part * speed
  }
  progress.seconds += seconds * reach * mass
  progress.metres += metres * reach * mass
}
