import type { Footing } from '../ground/footing.ts'
import { gravity } from '../constants.ts'
import type { Machine } from '../machine/parts.ts'
import { beltSpeedForThrust, motorThrustAt, type ThrustLine } from './thrust-line.ts'
import { flatLoopArea, spinUpMoment } from './tipping.ts'

/** What lifts the front while the loops spin up on the spot; NaN where the tracks grip. */
export class SpinUpLift {
  /** a_b, m/s², of the belt. */
  acceleration = NaN
  /** N·m, nose-up. */
  moment = NaN
  /** s until the belt has its spinning speed. */
  seconds = NaN
}

/**
 * Fills it.
 *
 * m_s = m_e − m;  a_b = (F* − F_max′)/m_s; the moment of {@link spinUpMoment} for v_s/a_b seconds, F_m(v_s) = F_max′ (v_s
 * is 0 where F_m(0) is no more).
 *
 * @param lifted footing with all weight on the tracks
 * @param push F*, N, motor-side thrust at the most standstill current
 * @param equivalentMass m_e, kg
 * *Source:* momentum of what turns with the belt; `docs/model.md` §5.
 */
export function setSpinUpLift(
  spinUp: SpinUpLift,
  machine: Machine,
  lifted: Footing,
  line: ThrustLine,
  push: number,
  equivalentMass: number,
): void {
  const { track, vehicle, ground } = machine
  const height = vehicle.centreHeight
  spinUp.acceleration = spinUp.moment = spinUp.seconds = NaN
  const grip = lifted.gripThrust
  if (!(push > grip) || height === null || vehicle.centreAhead === null) return
  const acceleration = (push - grip) / (equivalentMass - vehicle.mass)
  const area = enclosedAreaOf(machine)
  const downhill = vehicle.mass * gravity * ground.sinSlope
  const reaction = 2 * track.count * track.massPerMetre * area
  const spare = grip - lifted.standingResistance
  const tow = vehicle.towForce * vehicle.towHeight
  spinUp.acceleration = acceleration
  spinUp.moment = spinUpMoment(height, spare, downhill, tow, reaction, acceleration)
  const speed = motorThrustAt(line, 0) > grip ? beltSpeedForThrust(line, grip) : 0
  spinUp.seconds = speed / acceleration
}

/**
 * Area inside one loop: as entered, or that of a flat loop.
 *
 * @returns m²
 * *Source:* {@link flatLoopArea}.
 */
function enclosedAreaOf({ track }: Machine): number {
  return track.enclosedArea ?? flatLoopArea(track.radius, track.loopPitches * track.pitch)
}
