import { Footing, setFooting } from '../ground/footing.ts'
import type { Machine } from '../machine/parts.ts'
import { type DriveLine, noLoadAmpsAt } from '../motor/drive-line.ts'
import { brakeAmpsAt, Braking, setBrakingGround, setBrakingParts } from '../vehicle/braking.ts'
import { brakingAmpsAt } from '../vehicle/braking-amps.ts'
import { creepSpeedOf } from '../vehicle/creep.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Motion } from '../vehicle/motion.ts'
import type { RowState } from '../vehicle/row-state.ts'
import { setStop, Stop } from '../vehicle/stop.ts'
import type { TopState } from '../vehicle/top-state.ts'
import type { PatternState } from './pattern-state.ts'

/** Stops, what they feed back, and what the brakes hold; SI, NaN where one does not exist. */
export class BrakingState {
  /** Filled by `setStops` when they are first asked for. */
  readonly level = new Stop()
  readonly downhill = new Stop()
  stopped = false
  /** At the start of a stop, pack full, no accessories: A of one motor, A into the pack, V of the pack. */
  motorAmps = NaN
  chargeAmps = NaN
  packVolts = NaN
  /** Most A into the pack over the pattern's own braking rows, pack full; 0 without one. */
  rowChargeAmps = 0
  /** Most A into the pack over the pattern's rows as they are. */
  patternChargeAmps = 0
  /** The pattern's worst row downhill: N that the brakes have, N asked for; NaN without one. */
  holdForce = NaN
  holdAsked = NaN
  creepSpeed = 0
}

const parts = new Braking()
/** What is towed neither holds back in a stop nor moves weight. */
const untowed = new Footing()

/**
 * Fills what the brakes feed back and hold, and how it creeps.
 *
 * *Source:* `docs/model.md` §7, braking; each law names its own.
 */
export function setBraking(
  braking: BrakingState,
  machine: Machine,
  motion: Motion,
  top: TopState,
  pattern: PatternState,
): void {
  braking.stopped = false
  setFullPack(braking, machine, motion, top)
  braking.creepSpeed = creepSpeedOf(machine, motion)
  setRows(braking, machine, pattern)
}

/**
 * Fills the stops from top speed, on the level and down the build's slope: the dearest figures, which no limit reads, so
 * they are worked out when they are first asked for.
 */
export function setStops(braking: BrakingState, machine: Machine, motion: Motion, top: TopState): void {
  if (braking.stopped) return
  const { drive, line, level, airDragFactor } = motion
  const { ground, vehicle } = machine
  const from = top.exists ? top.groundSpeed : NaN
  setBrakingParts(parts, machine, motion)
  setBrakingGround(parts, level.groundResistance, level.gripThrust, airDragFactor)
  setStop(braking.level, parts, drive, line, from)
  setFooting(untowed, machine, -ground.sinSlope, ground.cosSlope, vehicle.mass, 0)
  setBrakingGround(parts, untowed.standingResistance, untowed.gripThrust, airDragFactor)
  setStop(braking.downhill, parts, drive, line, from)
  braking.stopped = true
}

/** The start of a stop on the level with a full pack. */
function setFullPack(braking: BrakingState, machine: Machine, motion: Motion, top: TopState): void {
  const { pack, controller } = machine
  const { level, airDragFactor } = motion
  braking.motorAmps = braking.chargeAmps = braking.packVolts = NaN
  if (!(controller.brakeAmps > 0) || !top.exists) return
  setBrakingParts(parts, machine, motion)
  setBrakingGround(parts, level.groundResistance, level.gripThrust, airDragFactor)
  const speed = top.groundSpeed
  braking.motorAmps = brakeAmpsAt(parts, speed)
  braking.chargeAmps = fullChargeAmps(
    machine,
    motion.drive,
    braking.motorAmps,
    speed * motion.line.motorPerBelt,
  )
  braking.packVolts = pack.fullVolts + braking.chargeAmps * pack.resistance
}

/**
 * A into a full pack, no accessories, that motors feed back.
 *
 * M δ I, δ = 2c/(V_0 + √(V_0² + 4 M I R_b c)), c = ω K_t − I R_s;  V_0 = V_oc(100 %).
 *
 * @param amps I of one motor, ≥ 0
 * @param speed ω, rad/s
 */
function fullChargeAmps(machine: Machine, drive: DriveLine, amps: number, speed: number): number {
  const volts = machine.pack.fullVolts
  const passed = speed * drive.torqueConstant - amps * drive.seriesResistance
  const inside = volts * volts + 4 * drive.count * amps * drive.packResistance * passed
  const duty = Math.min((2 * passed) / (volts + Math.sqrt(inside)), machine.controller.throttleCap)
  return drive.count * duty * amps
}

/** What the pattern's rows feed back, as they are and with a full pack, and whether the brakes hold their speed. */
function setRows(braking: BrakingState, machine: Machine, pattern: PatternState): void {
  const { motion } = pattern
  braking.rowChargeAmps = braking.patternChargeAmps = 0
  braking.holdForce = braking.holdAsked = NaN
  for (let index = 0; index < pattern.count; index += 1) {
    const row = pattern.rows[index]
    if (row === undefined) break
    const { straight } = row
    braking.patternChargeAmps = Math.max(braking.patternChargeAmps, -straight.packAmps)
    if (straight.motorAmps < 0) {
      const charge = fullChargeAmps(machine, motion.drive, -straight.motorAmps, straight.motorSpeed)
      braking.rowChargeAmps = Math.max(braking.rowChargeAmps, charge)
    }
    if (row.resistance < 0 && straight.groundSpeed > 0) setHold(braking, machine, motion, row)
  }
}

/** The least of F_max and all brakes against what the slope asks for: the row where it is least enough. */
function setHold(braking: BrakingState, machine: Machine, motion: Motion, row: RowState): void {
  const { drive, line } = motion
  const { efficiency } = machine.train
  const speed = row.straight.groundSpeed
  const motorSpeed = speed * line.motorPerBelt
  const amps =
    brakingAmpsAt(drive, machine.controller.brakeAmps, motorSpeed) + noLoadAmpsAt(drive, motorSpeed)
  const motors = (line.thrustPerTorque * drive.torqueConstant * amps) / (efficiency * efficiency)
  const back = motors + internalDragAt(machine.track, speed) + machine.vehicle.brakeForce
  const force = Math.min(row.gripThrust, back)
  const worse = -row.resistance * braking.holdForce > braking.holdAsked * force
  if (!Number.isNaN(braking.holdForce) && !worse) return
  braking.holdForce = force
  braking.holdAsked = -row.resistance
}
