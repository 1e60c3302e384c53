import { shearShareInverse } from '../ground/soil-shear.ts'
import { curveSettingOf, type CurveSetting } from './curve-setting.ts'
import { driveStateAt, stateOf, type DriveState } from './drive-state.ts'
import type { Machine } from '../machine/parts.ts'
import { moveToGroundSpeed, SoilPoint, startingShear } from './soil-motion.ts'
import { isFlat } from './flat-limit.ts'
import { beltSpeedForThrust, motorThrustAt } from './thrust-line.ts'

/** Thrust, resistance and what the drive draws over speed at one throttle. */
export interface ThrustCurve {
  /** From rest to where the motors no longer push, in ground speed. */
  readonly states: readonly DriveState[]
  /** Where thrust meets resistance; null where the machine does not get going. */
  readonly top: DriveState | null
  /** Where the current limit lets go; null without one. */
  readonly corner: DriveState | null
}

/**
 * State at a ground speed: belt speed and slip are what the ground makes of it.
 *
 * @param groundSpeed v, m/s
 * *Source:* `docs/model.md` §5.
 */
export function driveStateAtGroundSpeed(setting: CurveSetting, groundSpeed: number): DriveState {
  const { machine } = setting
  const beltSpeed =
    machine.ground.model === 'coefficient'
      ? coefficientBeltSpeed(setting, machine.ground.slip, groundSpeed)
      : soilBeltSpeed(setting, groundSpeed)
  const slip = beltSpeed > 0 ? Math.max(0, 1 - groundSpeed / beltSpeed) : 0
  return stateOf(setting, beltSpeed, groundSpeed, slip)
}

function coefficientBeltSpeed(setting: CurveSetting, slip: number, groundSpeed: number): number {
  const { line, footing } = setting
  const gripping = groundSpeed / (1 - slip)
  if (motorThrustAt(line, gripping) <= footing.gripThrust) return gripping
  return beltSpeedForThrust(line, footing.gripThrust)
}

const point = new SoilPoint()

function soilBeltSpeed(setting: CurveSetting, groundSpeed: number): number {
  const { line, footing } = setting
  const restThrust = motorThrustAt(line, 0)
  if (restThrust <= 0) return groundSpeed
  if (groundSpeed === 0)
    return restThrust > footing.gripThrust ? beltSpeedForThrust(line, footing.gripThrust) : 0
  if (isFlat(line) && line.cornerThrust < footing.gripThrust) {
    const slip = shearShareInverse(line.cornerThrust / footing.shearStrength) / footing.fullShear
    if (groundSpeed < line.cornerSpeed * (1 - slip)) return groundSpeed / (1 - slip)
  }
  const most = isFlat(line) ? Math.min(restThrust, line.cornerThrust) : restThrust
  moveToGroundSpeed(point, setting, startingShear(footing, most), groundSpeed)
  return point.beltSpeed
}

/**
 * The whole curve of one throttle.
 *
 * @param throttle duty, 0 to 1; the driver's cap where left out
 * @param count states, at least 2
 */
export function thrustCurve(
  machine: Machine,
  throttle = machine.controller.throttleCap,
  count = 161,
): ThrustCurve {
  const setting = curveSettingOf(machine, throttle)
  const { line, footing, top } = setting
  const restThrust = motorThrustAt(line, 0)
  if (!(restThrust > 0)) return { states: [driveStateAt(setting, 0)], top: null, corner: null }
  const slip = machine.ground.model === 'coefficient' ? machine.ground.slip : 0
  const end = (line.openStart / line.openSlope) * (1 - slip)
  const states = Array.from({ length: count }, (_, index) =>
    driveStateAtGroundSpeed(setting, (end * index) / (count - 1)),
  )
  const cornerVisible = line.cornerSpeed > 0 && line.cornerThrust <= footing.gripThrust
  return {
    states,
    top: top.exists ? driveStateAtGroundSpeed(setting, top.groundSpeed) : null,
    corner: cornerVisible ? driveStateAt(setting, line.cornerSpeed) : null,
  }
}
