import type { Machine, PatternRowPart } from '../machine/parts.ts'
import { copyFooting, Footing } from '../ground/footing.ts'
import { resistanceAt } from '../ground/resistance.ts'
import type { RowFootings } from '../ground/row-footings.ts'
import { ampsAt, dutyAt, noLoadAmpsAt } from '../motor/drive-line.ts'
import { internalDragAt } from '../track/drag.ts'
import { brakingAmpsAt } from './braking-amps.ts'
import { slipForThrust } from './cruise.ts'
import { setTopState } from './equilibrium.ts'
import type { Motion } from './motion.ts'
import { pivotThrustOf } from './pivot.ts'
import { setPropulsion } from './propulsion.ts'
import { type DriveMoment, type RowState, setCostAtDuty, setMomentCost, setResting } from './row-state.ts'
import { setMotorsForThrust } from './state-at-speed.ts'
import { beltSpeedForThrust, motorThrustAt } from './thrust-line.ts'
import { TopState } from './top-state.ts'

const top = new TopState()
const flat = new Footing()

/**
 * Fills the steady state of one row of a pattern.
 *
 * @param state filled
 * @param motion at full throttle, at the pattern's charge; its footing is filled with the row's
 * @param throttled propulsion of a part throttle: filled where the row asks for one
 * @param footings those of the pattern's machine
 * @param topSpeed the build's, m/s; NaN without one
 * *Source:* `docs/model.md` §7, drive rows.
 */
export function setRow(
  state: RowState,
  machine: Machine,
  row: PatternRowPart,
  motion: Motion,
  throttled: Motion,
  footings: RowFootings,
  topSpeed: number,
): void {
  const { kind, value } = row
  state.seconds = row.seconds
  footings.set(motion.footing, machine, row, row.grade ?? machine.ground.grade)
  if (kind === 'throttle') setThrottleRow(state, machine, motion, throttled, value)
  else setSpeedRow(state, machine, motion, askedSpeed(row, topSpeed))
  state.resistance = resistanceAt(motion.footing, motion.airDragFactor, state.straight.groundSpeed)
  state.gripThrust = motion.footing.gripThrust
  state.turnShare = 0
  if (row.turnShare > 0) setTurn(state, machine, row, motion, footings)
}

/** m/s; 0 of a brake row, and of a share of a top speed that there is none of. */
function askedSpeed({ kind, value }: PatternRowPart, topSpeed: number): number {
  if (kind === 'speed') return value
  return kind === 'topShare' && topSpeed > 0 ? value * topSpeed : 0
}

function setSpeedRow(state: RowState, machine: Machine, motion: Motion, asked: number): void {
  const moment = state.straight
  state.moves = asked > 0
  if (!(asked > 0)) {
    setResting(moment)
    setCostAtDuty(moment, machine, motion, 0)
    return
  }
  const { footing, line } = motion
  const startThrust = motorThrustAt(line, 0)
  if (!(Math.min(startThrust, footing.gripThrust) > footing.standingResistance)) setStuck(moment, motion)
  else {
    if (!setHeld(moment, machine, motion, asked)) setAtMost(moment, machine, motion)
    setHeldAmps(moment, machine, motion)
  }
  setMomentCost(moment, machine, motion)
}

/** Stuck: v = 0, amps of min(F_m(0), F_max), at most full throttle's. */
function setStuck(moment: DriveMoment, { drive, line, footing }: Motion): void {
  const thrust = Math.min(motorThrustAt(line, 0), footing.gripThrust)
  const drag =
    line.thrustPerTorque * drive.torqueConstant * (ampsAt(drive, 0) - drive.noLoadBase) -
    motorThrustAt(line, 0)
  setResting(moment)
  moment.thrust = thrust
  moment.motorTorque = (thrust + drag) / line.thrustPerTorque
  moment.motorAmps = Math.min(moment.motorTorque / drive.torqueConstant + drive.noLoadBase, ampsAt(drive, 0))
}

/**
 * A held speed never spins: belt v/(1 − i), i the entered slip or the thrust's, 0 where R ≤ 0.
 *
 * @returns false where full throttle does not reach it
 */
function setHeld(moment: DriveMoment, machine: Machine, motion: Motion, speed: number): boolean {
  const { footing, line } = motion
  const thrust = resistanceAt(footing, motion.airDragFactor, speed)
  moment.groundSpeed = speed
  moment.thrust = thrust
  if (thrust > footing.gripThrust) return false
  moment.slip = thrust > 0 ? slipForThrust(machine, footing, thrust) : 0
  moment.beltSpeed = speed / (1 - moment.slip)
  const pulling =
    machine.ground.model === 'coefficient' ? speed / (1 - machine.ground.slip) : moment.beltSpeed
  return motorThrustAt(line, pulling) >= thrust
}

/** The most that full throttle reaches; there too nothing spins. */
function setAtMost(moment: DriveMoment, machine: Machine, motion: Motion): void {
  if (machine.ground.model === 'soil' && dragsAtMost(motion)) setDraggedTop(motion)
  else setTopState(top, machine, motion)
  moment.groundSpeed = top.groundSpeed
  moment.thrust = top.thrust
  moment.slip = top.thrust > 0 ? top.slip : 0
  if (machine.ground.model === 'coefficient' && top.thrust > 0) moment.slip = machine.ground.slip
  moment.beltSpeed = top.groundSpeed / (1 - moment.slip)
}

/** Whether, on soil, the slope alone still drives where the motors no longer do: then nothing slips. */
function dragsAtMost({ line, footing, airDragFactor }: Motion): boolean {
  return resistanceAt(footing, airDragFactor, beltSpeedForThrust(line, 0)) <= 0
}

/** v at which F_m(v) = R(v) ≤ 0, above the corner: F_0 − s v = R_0 + k v². */
function setDraggedTop({ line, footing, airDragFactor }: Motion): void {
  const surplus = line.openStart - footing.standingResistance
  const slope = line.openSlope
  const speed = (2 * surplus) / (slope + Math.sqrt(slope * slope + 4 * airDragFactor * surplus))
  top.groundSpeed = top.beltSpeed = speed
  top.slip = 0
  top.thrust = resistanceAt(footing, airDragFactor, speed)
}

/** T = (R + D) r/(G η M), η on top where the track drives; I = T/K_t + I_0, fed back at most as set. */
function setHeldAmps(moment: DriveMoment, machine: Machine, motion: Motion): void {
  const { drive } = motion
  setMotorsForThrust(moment, machine, motion)
  if (moment.motorTorque < 0) {
    moment.motorTorque *= machine.train.efficiency * machine.train.efficiency
    moment.motorAmps = moment.motorTorque / drive.torqueConstant + moment.noLoadAmps
  }
  if (moment.thrust >= 0) return
  const most = brakingAmpsAt(drive, machine.controller.brakeAmps, moment.motorSpeed)
  if (moment.motorAmps < -most) moment.motorAmps = -most
}

function setThrottleRow(
  state: RowState,
  machine: Machine,
  motion: Motion,
  throttled: Motion,
  throttle: number,
): void {
  const moment = state.straight
  state.moves = throttle > 0
  if (!(throttle > 0)) {
    setResting(moment)
    setCostAtDuty(moment, machine, motion, 0)
    return
  }
  const pushing = throttle < machine.controller.throttleCap ? throttled : motion
  if (pushing === throttled) setThrottled(throttled, machine, motion, throttle)
  if (machine.ground.model === 'soil' && canMove(pushing) && dragsAtMost(pushing)) setDraggedTop(pushing)
  else setTopState(top, machine, pushing)
  if (!canMove(pushing)) setNoGo(moment, pushing)
  else setGoing(moment, machine, pushing)
  setCostAtDuty(moment, machine, pushing, dutyAt(pushing.drive, moment.motorSpeed))
}

function canMove({ line, footing }: Motion): boolean {
  return Math.min(motorThrustAt(line, 0), footing.gripThrust) > footing.standingResistance
}

/** The same ground and charge at part throttle. */
function setThrottled(throttled: Motion, machine: Machine, motion: Motion, throttle: number): void {
  setPropulsion(throttled, machine, motion.openVolts, machine.service.windingTemperature, throttle)
  throttled.airDragFactor = motion.airDragFactor
  throttled.equivalentMass = motion.equivalentMass
  copyFooting(throttled.footing, motion.footing)
}

/** Spinning in place, or stalled. */
function setNoGo(moment: DriveMoment, { drive, line, footing }: Motion): void {
  const spins = motorThrustAt(line, 0) > footing.gripThrust
  setResting(moment)
  moment.thrust = Math.min(motorThrustAt(line, 0), footing.gripThrust)
  moment.slip = spins ? 1 : 0
  moment.beltSpeed = spins ? beltSpeedForThrust(line, footing.gripThrust) : 0
  setAmpsAtThrottle(moment, drive, line)
}

/** At the meeting point; where the slope drives the motors faster than the duty would, no current flows. */
function setGoing(moment: DriveMoment, machine: Machine, { drive, line }: Motion): void {
  moment.groundSpeed = top.groundSpeed
  moment.beltSpeed = top.beltSpeed
  moment.slip = top.slip
  moment.thrust = top.thrust
  setAmpsAtThrottle(moment, drive, line)
}

function setAmpsAtThrottle(moment: DriveMoment, drive: Motion['drive'], line: Motion['line']): void {
  moment.motorSpeed = moment.beltSpeed * line.motorPerBelt
  moment.motorAmps = ampsAt(drive, moment.motorSpeed)
  if (moment.motorAmps < 0) {
    moment.motorAmps = 0
    moment.motorSpeed = (drive.duty * drive.volts) / drive.torqueConstant
    moment.beltSpeed = moment.groundSpeed = moment.motorSpeed / line.motorPerBelt
    moment.slip = 0
  }
  moment.motorTorque = drive.torqueConstant * (moment.motorAmps - noLoadAmpsAt(drive, moment.motorSpeed))
}

/**
 * The row's pivot turns: on the level, with its load and shares, the belts at half of its speed.
 *
 * T = (F_p + D/2) r/(G η) · 2/M;  I = T/K_t + I_0(ω), at least 0, at most full throttle's.
 *
 * *Source:* `docs/model.md` §5, pivot turn; the belts' speed: assumption.
 */
function setTurn(
  state: RowState,
  machine: Machine,
  row: PatternRowPart,
  motion: Motion,
  footings: RowFootings,
): void {
  const { drive, line } = motion
  footings.set(flat, machine, row, 0)
  const half = flat.groundResistance / 2
  const thrust = half + row.gripShare * (pivotThrustOf(machine, flat) - half)
  if (Number.isNaN(thrust)) return
  const moment = state.turn
  state.turnShare = row.turnShare
  setResting(moment)
  moment.beltSpeed = 0.5 * state.straight.groundSpeed
  moment.thrust = thrust
  moment.motorSpeed = moment.beltSpeed * line.motorPerBelt
  const drag = internalDragAt(machine.track, moment.beltSpeed)
  const torque = (2 * (thrust + drag / 2)) / line.thrustPerTorque
  const amps = torque / drive.torqueConstant + noLoadAmpsAt(drive, moment.motorSpeed)
  moment.motorAmps = Math.max(0, Math.min(amps, ampsAt(drive, moment.motorSpeed)))
  moment.motorTorque = drive.torqueConstant * (moment.motorAmps - noLoadAmpsAt(drive, moment.motorSpeed))
  setMomentCost(moment, machine, motion)
}
