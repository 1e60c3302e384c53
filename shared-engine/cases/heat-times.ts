import type { Machine } from '../machine/parts.ts'
import { steadyExcess } from '../heat/steady-nodes.ts'
import { caseAfter, NodeCourse, secondsToExcess, setNodeCourse } from '../heat/node-times.ts'
import { NodeMotion, setNodeMotion } from '../heat/two-nodes.ts'
import { torqueConstantAt } from '../motor/constants.ts'
import type { Motion } from '../vehicle/motion.ts'
import type { PatternHeat } from './pattern-heat.ts'
import type { PatternState } from './pattern-state.ts'

/** One steady load from cold: A of one motor, s to the motor's limit, and °C of the case then. */
export class TimeToLimit {
  amps = NaN
  seconds = NaN
  case = NaN
  /** s from the worst row end of the pattern, or from the air's temperature without a steady state. */
  warmSeconds = NaN
}

/** How long the motor bears what; NaN where it never gets so hot or an entry is missing. */
export class HeatTimes {
  /** Whether {@link setHeatTimes} has filled what limits do not read. */
  whole = false
  readonly hold = new TimeToLimit()
  readonly launch = new TimeToLimit()
  readonly pivot = new TimeToLimit()
  /** s at the pattern's RMS amps and mean iron loss. */
  secondsToLimit = NaN
  /** °C of the case when the pattern's hottest node is at its limit. */
  caseAtLimit = NaN
  /** °C of the winding at the label's current for long; NaN in runaway. */
  label = NaN
  labelRunaway = false
}

const motion = new NodeMotion()
const course = new NodeCourse()
/** Below this excess the pattern does not warm the motor. *Source:* `docs/model.md` §7. */
const leastExcess = 1e-6

/**
 * Fills the currents that are borne, and how long a warm motor bears those of a burst: what limits read.
 *
 * Of the hotter node, sink T_air, iron 0, K_t at the limit.
 * Hold: max(0, m g sin θ + tow − R_g − D(0)) r/(G M K_t);  launch: the least of the most standstill amps and those of F_max
 * at rest;  pivot: those of the turn.
 *
 * @param restAmps most standstill amps as running, A
 * *Source:* `docs/model.md` §7; the equations are linear, solved, the time a root.
 */
export function setBurstTimes(
  times: HeatTimes,
  machine: Machine,
  from: Motion,
  heat: PatternHeat,
  pivotThrust: number,
  restAmps: number,
): void {
  const { motor, track } = machine
  const hot = torqueConstantAt(motor, motor.maxTemperature)
  const { line, footing, drive } = from
  const slopeForce = footing.standingResistance - 2 * footing.groundResistance
  const held = Math.max(0, slopeForce - track.internalDrag)
  const perForce = 1 / (line.motorPerBelt * drive.count * hot)
  times.hold.amps = held * perForce
  const grip = (footing.gripThrust + track.internalDrag) / (line.thrustPerTorque * hot) + drive.noLoadBase
  times.launch.amps = Math.max(0, Math.min(restAmps, grip))
  const turn = (2 * (pivotThrust + track.internalDrag / 2)) / (line.thrustPerTorque * hot) + drive.noLoadBase
  times.pivot.amps = Math.min(turn, restAmps)
  setWarm(times.launch, machine, heat)
  setWarm(times.pivot, machine, heat)
  times.whole = false
}

/**
 * Fills the other times: figures that no limit reads, worked out when they are first asked for.
 *
 * From T_air, sink T_air.
 *
 * *Source:* as {@link setBurstTimes}.
 */
export function setHeatTimes(
  times: HeatTimes,
  machine: Machine,
  heat: PatternHeat,
  pattern: PatternState,
): void {
  if (times.whole) return
  setCold(times.hold, machine, heat)
  setCold(times.launch, machine, heat)
  setCold(times.pivot, machine, heat)
  setLong(times, machine, heat, pattern)
  setLabel(times, machine, heat)
  times.whole = true
}

/** Fills the motion of the nodes at the amps of a burst; false where it is not known. */
function setBurst(time: TimeToLimit, machine: Machine, heat: PatternHeat): boolean {
  if (!heat.hasMotor || !heat.hasCapacities || Number.isNaN(time.amps)) return false
  setNodeMotion(motion, heat.nodes, time.amps * time.amps * machine.motor.resistance, 0)
  return true
}

/** From the pattern's worst row end; from T_air where there is no steady state. */
function setWarm(time: TimeToLimit, machine: Machine, heat: PatternHeat): void {
  const { maxTemperature } = machine.motor
  const { end, feed } = heat
  time.warmSeconds = NaN
  if (!setBurst(time, machine, heat)) return
  const isKnown = !Number.isNaN(end.hottest)
  const sink = isKnown ? feed : machine.ground.airTemperature
  const winding = isKnown ? end.winding - feed : 0
  const inCase = isKnown && heat.nodes.two ? end.case - feed : 0
  setNodeCourse(course, motion, winding, inCase, sink)
  time.warmSeconds = secondsToExcess(course, maxTemperature - sink)
}

/** From T_air. */
function setCold(time: TimeToLimit, machine: Machine, heat: PatternHeat): void {
  const { airTemperature } = machine.ground
  time.seconds = time.case = NaN
  if (!setBurst(time, machine, heat)) return
  setNodeCourse(course, motion, 0, 0, airTemperature)
  time.seconds = secondsToExcess(course, machine.motor.maxTemperature - airTemperature)
  if (heat.nodes.two) time.case = airTemperature + caseAfter(course, time.seconds)
}

/** At the pattern's RMS amps and mean iron loss, from the sink's temperature. */
function setLong(times: HeatTimes, machine: Machine, heat: PatternHeat, pattern: PatternState): void {
  const { motor } = machine
  const { end, feed } = heat
  times.secondsToLimit = times.caseAtLimit = NaN
  if (!heat.hasMotor || Number.isNaN(feed)) return
  const excess = end.hottest - feed
  const sensed = heat.nodes.two ? end.case : end.winding
  if (excess > leastExcess)
    times.caseAtLimit = feed + ((sensed - feed) * (motor.maxTemperature - feed)) / excess
  if (!heat.hasCapacities) return
  const amps = pattern.motorAmpsRms
  setNodeMotion(motion, heat.nodes, amps * amps * motor.resistance, pattern.ironLoss)
  setNodeCourse(course, motion, 0, 0, feed)
  times.secondsToLimit = secondsToExcess(course, motor.maxTemperature - feed)
}

/** Air of the label's test, °C. *Source:* common practice, no source. */
const labelAir = 25

/** The winding at its label's current for long, no iron loss, at 25 °C. */
function setLabel(times: HeatTimes, machine: Machine, heat: PatternHeat): void {
  const amps = machine.motor.continuousAmps
  times.label = NaN
  times.labelRunaway = false
  if (amps === null || !heat.hasMotor) return
  const coldCopper = amps * amps * machine.motor.resistance
  const excess = steadyExcess(heat.windingToCase + heat.toSink, heat.toSink, coldCopper, 0, labelAir)
  times.labelRunaway = Number.isNaN(excess)
  times.label = labelAir + excess
}
