import type { Machine } from '../machine/parts.ts'
import { inletResistance } from '../heat/stream.ts'
import { NodeCourse, caseAfter, secondsToExcess, setNodeCourse, windingAfter } from '../heat/node-times.ts'
import { NodeMotion, setNodeMotion } from '../heat/two-nodes.ts'
import { controllerLossAt } from '../motor/controller-loss.ts'
import { windingResistanceAt } from '../motor/constants.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { RowState, setResting } from '../vehicle/row-state.ts'
import { PatternHeat, setPatternHeat } from './pattern-heat.ts'
import { PatternState } from './pattern-state.ts'

/** Temperatures of motor and controller from a cold start at one steady motor current. */
export interface WarmUp {
  readonly seconds: readonly number[]
  /** °C, the hotter of winding and case. */
  readonly motor: readonly number[]
  /** °C; null without the controller's entries. */
  readonly controller: readonly number[] | null
  /** s until the motor's limit; null where never. */
  readonly secondsToLimit: number | null
  /** °C; null in thermal runaway. */
  readonly steady: number | null
  /** °C. */
  readonly sink: number
}

/**
 * Warm-up at a steady motor current, from the temperature of what cools it.
 *
 * With the circuit standing nothing takes the motor's heat: its way to the coolant is no way to the air, and what is left
 * of cooling by the air is not known [assumption, the safe side]. It then starts as warm as the circuit is while it runs.
 *
 * @param amps I, A of one motor: heat follows motor current, not pack current
 * @param ironLoss P_fe, W of one motor
 * @param cooled with the build's cooling, or with its circuit standing; the same where there is none
 * @returns null where the motor's heat capacities or its way to the sink are not given, or its circuit runs away
 * *Source:* `docs/model.md` §7, the linear equations solved.
 */
export function warmUpCurve(
  machine: Machine,
  amps: number,
  ironLoss: number,
  cooled: boolean,
  count = 121,
): WarmUp | null {
  const stands = !cooled && machine.cooling !== null
  const shown = stands ? withoutSink(machine) : machine
  const pattern = steadyPattern(shown, amps, ironLoss)
  const heat = new PatternHeat()
  setPatternHeat(heat, shown, pattern)
  if (!heat.hasMotor || !heat.hasCapacities || Number.isNaN(heat.feed)) return null
  const sink = stands ? feedOf(machine, pattern) : heat.feed
  if (Number.isNaN(sink)) return null
  const course = courseOf(shown, heat, amps, ironLoss, sink)
  const limit = secondsToExcess(course, machine.motor.maxTemperature - sink)
  const settled = 4 * slowestTime(heat, course)
  const end = Number.isFinite(limit) && limit > 0 ? Math.min(settled, 1.5 * limit) : settled
  const seconds = Array.from({ length: count }, (_, index) => (end * index) / (count - 1))
  const { two } = heat.nodes
  return {
    seconds,
    motor: seconds.map((time) => {
      const winding = windingAfter(course, time)
      return sink + (two ? Math.max(winding, caseAfter(course, time)) : winding)
    }),
    controller: controllerOf(shown, heat, pattern.controllerLoss, seconds),
    secondsToLimit: finiteOrNull(limit),
    steady: finiteOrNull(heat.end.hottest),
    sink,
  }
}

/** K/W: so far from any sink that a warm-up has no part of it. */
const noWay = 1e9

/** A machine whose heat stays in its motor. */
function withoutSink(machine: Machine): Machine {
  const { motor } = machine
  const caseToSink = motor.caseToSink === null ? null : noWay
  const thermalResistance = motor.thermalResistance === null ? null : noWay
  return { ...machine, cooling: null, motor: { ...motor, caseToSink, thermalResistance } }
}

/** °C of what feeds the motors while the circuit runs; NaN where it runs away. */
function feedOf(machine: Machine, pattern: PatternState): number {
  const heat = new PatternHeat()
  setPatternHeat(heat, machine, pattern)
  return heat.feed
}

/** One row that lasts, at a motor current and an iron loss. */
function steadyPattern(machine: Machine, amps: number, ironLoss: number): PatternState {
  const { motor, controller, pack, service } = machine
  const row = new RowState()
  setResting(row.straight)
  row.seconds = 1
  row.straight.motorAmps = amps
  row.straight.ironLoss = ironLoss
  row.straight.controllerLoss = controllerLossAt(controller, amps, pack.middleVolts)
  const pattern = new PatternState()
  pattern.rows.push(row)
  pattern.count = 1
  pattern.motorAmpsRms = amps
  pattern.ironLoss = ironLoss
  pattern.copperLoss = amps * amps * windingResistanceAt(motor.resistance, service.windingTemperature)
  pattern.controllerLoss = row.straight.controllerLoss
  return pattern
}

function courseOf(
  machine: Machine,
  heat: PatternHeat,
  amps: number,
  ironLoss: number,
  sink: number,
): NodeCourse {
  const motion = new NodeMotion()
  const course = new NodeCourse()
  setNodeMotion(motion, heat.nodes, amps * amps * machine.motor.resistance, ironLoss)
  setNodeCourse(course, motion, 0, 0, sink)
  return course
}

/** s of the slowest exponential; in runaway, of the motor without its current. */
function slowestTime({ nodes, toInlet, windingToCase }: PatternHeat, { slow }: NodeCourse): number {
  if (slow < 0) return -1 / slow
  const capacity = nodes.windingCapacity + nodes.caseCapacity
  return capacity * (toInlet + windingToCase)
}

function controllerOf(
  { controller, cooling, motor }: Machine,
  heat: PatternHeat,
  loss: number,
  seconds: readonly number[],
): number[] | null {
  const { heatCapacity, thermalResistance } = controller
  if (heatCapacity === null || thermalResistance === null) return null
  const toInlet =
    cooling === null ? thermalResistance : inletResistance(thermalResistance, heat.capacityRate / motor.count)
  return seconds.map(
    (time) => heat.controllerFeed - toInlet * loss * Math.expm1(-time / (heatCapacity * toInlet)),
  )
}
