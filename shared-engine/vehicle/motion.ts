import type { Footing } from '../ground/footing.ts'
import type { DriveLine } from '../motor/drive-line.ts'
import type { ThrustLine } from './thrust-line.ts'

/** What pushes a machine and what holds it back, at one throttle: whatever moves it is told by these. */
export interface Motion {
  readonly drive: DriveLine
  readonly line: ThrustLine
  /** On the build's slope, and on the level. */
  readonly footing: Footing
  readonly level: Footing
  /** ½ ρ C_d A, N/(m/s)². */
  readonly airDragFactor: number
  /** m_e, kg. */
  readonly equivalentMass: number
  /** I_a, A. */
  readonly accessoryAmps: number
}
