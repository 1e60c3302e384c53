import type { Machine } from '../machine/parts.ts'
import { flowAt } from '../heat/cold-flow.ts'
import { NodeCourse, caseAfter, setNodeCourse, windingAfter } from '../heat/node-times.ts'
import { NodeMotion, setNodeMotion } from '../heat/two-nodes.ts'
import type { PatternHeat } from './pattern-heat.ts'
import { type PatternState, rowAmpsSquared, rowIronLoss } from './pattern-state.ts'

/** Temperatures of one round of a pattern that repeats itself; °C. */
export interface PatternCourse {
  readonly seconds: readonly number[]
  readonly winding: readonly number[]
  /** Null with one node. */
  readonly case: readonly number[] | null
  /** s at which each row begins. */
  readonly rows: readonly number[]
}

/**
 * Winding and case over one round of the pattern.
 *
 * @param pattern, heat of one evaluation
 * @param perRow points of each row, its ends among them
 * @returns null without the motor's entries, or in runaway
 * *Source:* `docs/model.md` §7, the periodic solution between the rows' ends.
 */
export function patternCourse(
  machine: Machine,
  pattern: PatternState,
  heat: PatternHeat,
  perRow = 25,
): PatternCourse | null {
  if (!heat.hasMotor || !heat.hasCapacities || heat.runaway) return null
  const { cycle, nodes, feed } = heat
  const motion = new NodeMotion()
  const course = new NodeCourse()
  let winding = cycle.winding + cycle.windingPerSink * feed
  let inCase = nodes.two ? cycle.case + cycle.casePerSink * feed : 0
  let from = 0
  const [seconds, windings, cases, rows]: number[][] = [[], [], [], []]
  for (const row of pattern.rows.slice(0, pattern.count)) {
    setNodeMotion(motion, nodes, rowAmpsSquared(row) * machine.motor.resistance, rowIronLoss(row))
    setNodeCourse(course, motion, winding, inCase, feed)
    rows?.push(from)
    for (let point = 0; point < perRow; point += 1) {
      const time = (row.seconds * point) / (perRow - 1)
      seconds?.push(from + time)
      windings?.push(feed + windingAfter(course, time))
      cases?.push(feed + caseAfter(course, time))
    }
    winding = windingAfter(course, row.seconds)
    if (nodes.two) inCase = caseAfter(course, row.seconds)
    from += row.seconds
  }
  return {
    seconds: seconds ?? [],
    winding: windings ?? [],
    case: nodes.two ? (cases ?? []) : null,
    rows: rows ?? [],
  }
}

/** What a circuit's pump moves as the weather makes the coolant thick. */
export interface FlowOverWeather {
  /** °C of air and coolant. */
  readonly celsius: readonly number[]
  /** m³/s; 0 where it is frozen. */
  readonly flow: readonly number[]
}

/**
 * Flow of the circuit at the start, over the air's temperature.
 *
 * @returns null without a circuit
 * *Source:* {@link flowAt}.
 */
export function flowOverWeather(machine: Machine, from = -40, to = 40, count = 81): FlowOverWeather | null {
  const { cooling } = machine
  if (cooling === null) return null
  const celsius = Array.from({ length: count }, (_, index) => from + ((to - from) * index) / (count - 1))
  return { celsius, flow: celsius.map((one) => flowAt(cooling, one)) }
}
