import type { CoefficientGround, Machine } from '../machine/parts.ts'
import { dutyAt } from '../motor/drive-line.ts'
import type { Motion } from './motion.ts'
import { setSoilTop } from './soil-equilibrium.ts'
import { setDuty, setMotorsForThrust } from './state-at-speed.ts'
import { beltSpeedForThrust, motorThrustAt } from './thrust-line.ts'
import { clearTopState, type TopState } from './top-state.ts'

/**
 * Finds the ground speed at which thrust equals resistance.
 *
 * F(v) = R(v); none where min(F_m(0), F_max) ≤ R(0).
 *
 * @param top filled
 * *Source:* `docs/model.md` §5; on `coefficient` ground a quadratic in closed form, on `soil` a bracketed root.
 */
export function setTopState(top: TopState, machine: Machine, motion: Motion): void {
  const { footing, line } = motion
  const restThrust = motorThrustAt(line, 0)
  if (!(Math.min(restThrust, footing.gripThrust) > footing.standingResistance)) {
    clearTopState(top)
    return
  }
  top.exists = true
  if (machine.ground.model === 'soil') setSoilTop(top, motion)
  else setCoefficientTop(top, machine.ground, motion)
  setElectricalTop(top, machine, motion)
}

/**
 * Speed at which a falling straight line meets the resistance.
 *
 * The positive root of k v² + s v − (F_0 − R_0) = 0, written so that it loses no digits.
 *
 * @param surplus F_0 − R_0, N, > 0
 * @param slope s, N per m/s of ground speed, ≥ 0
 * @param airDragFactor k
 */
function meetingSpeed(surplus: number, slope: number, airDragFactor: number): number {
  return (2 * surplus) / (slope + Math.sqrt(slope * slope + 4 * airDragFactor * surplus))
}

function setCoefficientTop(top: TopState, ground: CoefficientGround, motion: Motion): void {
  const { footing, line, airDragFactor } = motion
  const resistance = footing.standingResistance
  const gripping = 1 - ground.slip
  let speed = meetingSpeed(line.openStart - resistance, line.openSlope / gripping, airDragFactor)
  // Below the corner the limited piece lies under the open one, so its meeting point is the true one there.
  if (line.cornerSpeed > 0 && !(speed / gripping >= line.cornerSpeed)) {
    speed = meetingSpeed(line.limitedStart - resistance, line.limitedSlope / gripping, airDragFactor)
  }
  top.slip = ground.slip
  top.beltSpeed = speed / gripping
  top.spinning = resistance + airDragFactor * speed * speed > footing.gripThrust
  if (top.spinning) {
    speed = Math.sqrt((footing.gripThrust - resistance) / airDragFactor)
    top.beltSpeed = beltSpeedForThrust(line, footing.gripThrust)
    top.slip = 1 - speed / top.beltSpeed
  }
  top.groundSpeed = speed
  top.thrust = resistance + airDragFactor * speed * speed
}

/**
 * Motor and pack in that state: torque from the thrust, current from the torque, or the limit below the corner.
 */
function setElectricalTop(top: TopState, machine: Machine, motion: Motion): void {
  const { drive } = motion
  setMotorsForThrust(top, machine, motion)
  if (top.motorSpeed < drive.cornerSpeed) top.motorAmps = drive.currentLimit
  setDuty(top, drive.count, dutyAt(drive, top.motorSpeed))
}
