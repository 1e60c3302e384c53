import { type MotorNodes, NodeMotion, NodeStep, setNodeMotion, setNodeStep } from './two-nodes.ts'

/**
 * A drive pattern repeated until every round is like the one before: the motor's temperatures at the ends of its rows,
 * as excess over the sink, affine in the sink's temperature.
 */
export class MotorCycle {
  /** Rows in use. */
  count = 0
  readonly steps: NodeStep[] = []
  /** s of a round. */
  seconds = 0
  /** Excess at the start of a round: K, and K for each °C of the sink. */
  winding = NaN
  case = NaN
  windingPerSink = NaN
  casePerSink = NaN
  /** Mean excess next to the sink, likewise; NaN where it was not asked for. */
  meanFixed = NaN
  meanPerSink = NaN
  /** Whether the loss grows faster with heat than the heat leaves: there is no such round. */
  runaway = false
}

const motion = new NodeMotion()
const whole = new NodeStep()

/** Empties a cycle, for the rows of {@link addCycleRow}. */
export function clearCycle(cycle: MotorCycle): void {
  cycle.count = 0
  cycle.seconds = 0
}

/**
 * Adds one row of the pattern.
 *
 * @param coldCopper mean of I² R_20, W
 * @param iron mean iron loss, W
 * @param withMean whether the mean next to the sink is wanted
 * *Source:* as `NodeMotion`, one row after another.
 */
export function addCycleRow(
  cycle: MotorCycle,
  nodes: MotorNodes,
  seconds: number,
  coldCopper: number,
  iron: number,
  withMean: boolean,
): void {
  const step = (cycle.steps[cycle.count] ??= new NodeStep())
  setNodeMotion(motion, nodes, coldCopper, iron)
  setNodeStep(step, motion, nodes, seconds, withMean)
  cycle.count += 1
  cycle.seconds += seconds
}

/**
 * Solves for the round that repeats itself.
 *
 * x = x + E x + p + q T_s, E of all rows one after another; none where (1 − Φ_11)(1 − Φ_22) ≤ Φ_12 Φ_21 or a Φ_ii ≥ 1,
 * Φ = 1 + E.
 *
 * @param withMean as its rows were added
 * *Source:* fixed point of an affine map; `docs/model.md` §7.
 */
export function closeCycle(cycle: MotorCycle, withMean: boolean): void {
  clearWhole()
  for (let row = 0; row < cycle.count; row += 1) append(cycle.steps[row])
  const { ww, wc, cw, cc } = whole
  const determinant = ww * cc - wc * cw
  cycle.runaway = !(determinant > 0 && ww < 0 && cc < 0)
  cycle.winding = (wc * whole.case - cc * whole.winding) / determinant
  cycle.case = (cw * whole.winding - ww * whole.case) / determinant
  cycle.windingPerSink = (wc * whole.casePerSink - cc * whole.windingPerSink) / determinant
  cycle.casePerSink = (cw * whole.windingPerSink - ww * whole.casePerSink) / determinant
  cycle.meanFixed = cycle.meanPerSink = NaN
  if (withMean && !cycle.runaway) setMean(cycle)
}

function clearWhole(): void {
  whole.ww = whole.wc = whole.cw = whole.cc = 0
  whole.winding = whole.case = whole.windingPerSink = whole.casePerSink = 0
}

/** Puts a row behind those so far: 1 + E ← (1 + E_k)(1 + E), p ← p + E_k p + p_k, without ever forming 1 + E. */
function append(step: NodeStep | undefined): void {
  if (step === undefined) return
  const { ww, wc, cw, cc, winding, windingPerSink } = whole
  const { case: inCase, casePerSink } = whole
  whole.ww = ww + step.ww + step.ww * ww + step.wc * cw
  whole.wc = wc + step.wc + step.ww * wc + step.wc * cc
  whole.cw = cw + step.cw + step.cw * ww + step.cc * cw
  whole.cc = cc + step.cc + step.cw * wc + step.cc * cc
  whole.winding = winding + step.ww * winding + step.wc * inCase + step.winding
  whole.case = inCase + step.cw * winding + step.cc * inCase + step.case
  whole.windingPerSink =
    windingPerSink + step.ww * windingPerSink + step.wc * casePerSink + step.windingPerSink
  whole.casePerSink = casePerSink + step.cw * windingPerSink + step.cc * casePerSink + step.casePerSink
}

function setMean(cycle: MotorCycle): void {
  let { winding, case: inCase, windingPerSink, casePerSink } = cycle
  let fixed = 0
  let perSink = 0
  for (let row = 0; row < cycle.count; row += 1) {
    const step = cycle.steps[row]
    if (step === undefined) break
    const { sinkFromWinding, sinkFromCase } = step
    fixed += sinkFromWinding * winding + sinkFromCase * inCase + step.sinkFixed
    perSink += sinkFromWinding * windingPerSink + sinkFromCase * casePerSink + step.sinkPerSink
    const nextWinding = winding + step.ww * winding + step.wc * inCase + step.winding
    inCase += step.cw * winding + step.cc * inCase + step.case
    winding = nextWinding
    const next = windingPerSink + step.ww * windingPerSink + step.wc * casePerSink + step.windingPerSink
    casePerSink += step.cw * windingPerSink + step.cc * casePerSink + step.casePerSink
    windingPerSink = next
  }
  cycle.meanFixed = fixed / cycle.seconds
  cycle.meanPerSink = perSink / cycle.seconds
}

/** The hottest end of a row. */
export class RowEnd {
  /** °C. */
  winding = NaN
  case = NaN
  /** °C, the hotter of both. */
  hottest = NaN
  /** Which row, from 0. */
  row = 0
}

/**
 * Fills the row end at which winding or case is hottest.
 *
 * @param sink T_s, °C
 * *Source:* `docs/model.md` §7: magnets sit with the case, so the hotter of both counts.
 */
export function setHottestEnd(end: RowEnd, cycle: MotorCycle, sink: number): void {
  let winding = cycle.winding + cycle.windingPerSink * sink
  let inCase = cycle.case + cycle.casePerSink * sink
  end.hottest = -Infinity
  for (let row = 0; row < cycle.count; row += 1) {
    const step = cycle.steps[row]
    if (step === undefined) break
    const next = winding + step.ww * winding + step.wc * inCase + step.winding + step.windingPerSink * sink
    inCase += step.cw * winding + step.cc * inCase + step.case + step.casePerSink * sink
    winding = next
    const hotter = sink + Math.max(winding, inCase)
    if (!(hotter > end.hottest)) continue
    end.hottest = hotter
    end.winding = sink + winding
    end.case = sink + inCase
    end.row = row
  }
}
