import type { Machine } from '../machine/parts.ts'
import { internalDragAt } from '../track/drag.ts'
import { Footing, mostGripOf, setFooting } from '../ground/footing.ts'
import { referenceTemperature } from '../motor/constants.ts'
import { DriveLine, setDriveLine } from '../motor/drive-line.ts'
import { bracketedRoot } from '../numeric/root.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import { centrifugalTension } from '../track/tension.ts'
import { curveSettingOf } from '../vehicle/curve-setting.ts'
import { driveStateAt } from '../vehicle/drive-state.ts'
import { setTrackLoad, TrackLoad } from './track-loads.ts'
import { limitedPull } from './train-pulls.ts'

/** Cases that can be told over the throttle; at free running there is next to no load. */
export type ThrottleCase = 'launch' | 'grip' | 'top'

/** What the track bears at one throttle in one case. */
export interface TrackLoadPoint {
  /** Duty, 0 to 1. */
  readonly throttle: number
  /** N at the sprocket per loop. */
  readonly force: number
  /** N on the most loaded tooth. */
  readonly toothForce: number
  /** Pa; null without a tooth. */
  readonly shear: number | null
  readonly bending: number | null
  readonly bearing: number | null
  /** N, of the tight and of the slack side. */
  readonly tension: number
  readonly slack: number
  /** 1 lifts out of mesh; null where it is not computed. */
  readonly climb: number | null
}

const load = new TrackLoad()

function pointOf(machine: Machine, throttle: number, force: number, beltSpeed: number): TrackLoadPoint {
  setTrackLoad(load, machine, force, beltSpeed)
  const tooth = machine.track.tooth
  return {
    throttle,
    force,
    toothForce: load.toothForce,
    shear: tooth === null ? null : toothShear(tooth, load.toothForce),
    bending: tooth === null ? null : toothBending(tooth, load.toothForce),
    bearing: tooth === null ? null : toothBearing(tooth, load.toothForce),
    tension: load.tension,
    slack: load.slack,
    climb: Number.isNaN(load.climb) ? null : load.climb,
  }
}

/** Force per loop of the jam at one throttle: pack full and rested, motor at 20 °C, every efficiency 1, limiters slip. */
function jamForce(machine: Machine, throttle: number): number {
  if (throttle === 0) return 0
  const drive = new DriveLine()
  setDriveLine(drive, machine, machine.pack.fullVolts, referenceTemperature, throttle)
  const amps = Math.min((throttle * drive.volts) / drive.loopResistance, drive.currentLimit)
  const torque = Math.max(0, drive.torqueConstant * (amps - drive.noLoadBase))
  const { motor, train, track } = machine
  return limitedPull(machine, (motor.count * torque * train.ratio) / (track.radius * track.count))
}

/**
 * What the track bears in one case at one throttle.
 *
 * *Source:* `docs/model.md` §6, with δ the throttle asked about instead of the strongest; null for `top` where the machine
 * does not get going at that throttle.
 */
export function trackLoadAtThrottle(
  machine: Machine,
  name: ThrottleCase,
  throttle: number,
): TrackLoadPoint | null {
  if (name === 'top') {
    if (throttle === 0) return null
    const { top } = curveSettingOf(machine, throttle)
    if (!top.exists) return null
    const force = (top.thrust + internalDragAt(machine.track, top.beltSpeed)) / machine.track.count
    return pointOf(machine, throttle, force, top.beltSpeed)
  }
  const jam = jamForce(machine, throttle)
  if (name === 'launch') return pointOf(machine, throttle, jam, 0)
  const footing = new Footing()
  setFooting(footing, machine, machine.ground.sinSlope, machine.ground.cosSlope)
  const passed = (mostGripOf(machine, footing) + machine.track.internalDrag) / machine.track.count
  return pointOf(machine, throttle, Math.min(jam, passed), 0)
}

/** The same over the whole range of throttle up to the cap; gaps are null. */
export function trackLoadOverThrottle(
  machine: Machine,
  name: ThrottleCase,
  count = 101,
): (TrackLoadPoint | null)[] {
  const cap = machine.controller.throttleCap
  return Array.from({ length: count }, (_, index) =>
    trackLoadAtThrottle(machine, name, (cap * index) / (count - 1)),
  )
}

/** What a throttle limit may be asked for. */
export type TrackQuantity = 'shear' | 'bending' | 'bearing' | 'tension' | 'climb'

/** What is allowed of a quantity; null where the build does not say. */
export function allowedTrackQuantity(machine: Machine, quantity: TrackQuantity): number | null {
  const { tooth, breakingTension } = machine.track
  if (quantity === 'tension') return breakingTension
  if (quantity === 'climb') return 1
  if (tooth === null) return null
  return { shear: tooth.allowedShear, bending: tooth.allowedTensile, bearing: tooth.allowedBearing }[quantity]
}

/**
 * Throttle at which a quantity passes what is allowed, in one case.
 *
 * @returns duty, 0 to the cap; null where it stays below at every throttle
 * *Source:* bracketed root on the curve's first crossing.
 */
export function throttleAtLimit(
  machine: Machine,
  name: ThrottleCase,
  quantity: TrackQuantity,
): number | null {
  const allowed = allowedTrackQuantity(machine, quantity)
  if (allowed === null) return null
  const excess = (throttle: number): number => {
    const value = trackLoadAtThrottle(machine, name, throttle)?.[quantity]
    return value === null || value === undefined ? -allowed : value - allowed
  }
  const cap = machine.controller.throttleCap
  const steps = 50
  for (let index = 1; index <= steps; index += 1) {
    const high = (cap * index) / steps
    if (excess(high) < 0) continue
    const low = (cap * (index - 1)) / steps
    return excess(low) >= 0 ? low : bracketedRoot(excess, low, high)
  }
  return null
}

/** What the track bears at one belt speed at full throttle. */
export interface TrackSpeedPoint {
  /** m/s of the belt and of the ground. */
  readonly beltSpeed: number
  readonly groundSpeed: number
  /** With what the motors push: a jam while turning. */
  readonly motorSide: TrackLoadPoint
  /** With what the ground lets through. */
  readonly groundSide: TrackLoadPoint
  /** N of the loop's own mass. */
  readonly centrifugal: number
}

/** Loads over belt speed from rest to free running, at full throttle in the running state. */
export function trackLoadOverSpeed(machine: Machine, count = 101): TrackSpeedPoint[] {
  const setting = curveSettingOf(machine)
  const { track, controller } = machine
  const end = Math.max(0, setting.line.openStart / setting.line.openSlope)
  return Array.from({ length: count }, (_, index) => {
    const beltSpeed = (end * index) / (count - 1)
    const state = driveStateAt(setting, beltSpeed)
    const drag = internalDragAt(track, beltSpeed)
    const point = (thrust: number) => {
      const pull = limitedPull(machine, Math.max(0, thrust + drag) / track.count)
      return pointOf(machine, controller.throttleCap, pull, beltSpeed)
    }
    return {
      beltSpeed,
      groundSpeed: state.groundSpeed,
      motorSide: point(state.motorThrust),
      groundSide: point(state.thrust),
      centrifugal: centrifugalTension(track, beltSpeed),
    }
  })
}
