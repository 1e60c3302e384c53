import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  addCycleRow,
  clearCycle,
  closeCycle,
  MotorCycle,
  RowEnd,
  setHottestEnd,
} from '../../shared-engine/heat/motor-cycle.ts'
import {
  caseAfter,
  NodeCourse,
  secondsToExcess,
  setNodeCourse,
  windingAfter,
} from '../../shared-engine/heat/node-times.ts'
import { MotorNodes, NodeMotion, setNodeMotion } from '../../shared-engine/heat/two-nodes.ts'
import { steadyExcess } from '../../shared-engine/heat/steady-nodes.ts'
import { solvedByOdex } from '../engine/numeric/odex.ts'

// *Source:* the heat balances C_w dT_w/dt = I² R_20 [1 + α (T_w − 20)] − (T_w − T_c)/R_wc and
// C_c dT_c/dt = P_fe + (T_w − T_c)/R_wc − (T_c − T_s)/R solved by odex, a port of Hairer and Wanner's extrapolation code
// (*Solving Ordinary Differential Equations I*); α = 0.00393 /K of IEC 60028.

const alpha = 0.00393

interface Lumps {
  readonly sink: number
  /** W/K and J/K. */
  readonly windingToCase: number
  readonly toSink: number
  readonly windingCapacity: number
  readonly caseCapacity: number
}
interface Row {
  readonly seconds: number
  readonly copper: number
  readonly iron: number
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const lumps: fc.Arbitrary<Lumps> = fc.record({
  sink: number(-20, 50),
  windingToCase: number(0.1, 10),
  toSink: number(0.2, 10),
  windingCapacity: number(5, 500),
  caseCapacity: number(20, 3000),
})
const row: fc.Arbitrary<Row> = fc.record({
  seconds: number(1, 600),
  copper: number(0, 60),
  iron: number(0, 60),
})

function nodesOf(one: Lumps, two: boolean): MotorNodes {
  const nodes = new MotorNodes()
  nodes.two = two
  nodes.windingToCase = one.windingToCase
  nodes.toSink = one.toSink
  nodes.windingCapacity = one.windingCapacity
  nodes.caseCapacity = two ? one.caseCapacity : 0
  return nodes
}

/** The balances as they stand, for one node and for two. */
const slopesOf =
  (one: Lumps, { copper, iron }: Row, two: boolean) =>
  (_time: number, [winding = NaN, inCase = NaN]: readonly number[]) => {
    const made = copper * (1 + alpha * (winding - 20))
    if (!two) return [(made + iron - one.toSink * (winding - one.sink)) / one.windingCapacity]
    const passed = one.windingToCase * (winding - inCase)
    return [
      (made - passed) / one.windingCapacity,
      (iron + passed - one.toSink * (inCase - one.sink)) / one.caseCapacity,
    ]
  }

function courseOf(one: Lumps, load: Row, two: boolean, winding: number, inCase: number): NodeCourse {
  const motion = new NodeMotion()
  const course = new NodeCourse()
  setNodeMotion(motion, nodesOf(one, two), load.copper, load.iron)
  setNodeCourse(course, motion, winding - one.sink, inCase - one.sink, one.sink)
  return course
}

describe.each([true, false])('a motor of winding and case apart: %s', (two) => {
  it('warms as the balances do', () => {
    fc.assert(
      fc.property(lumps, row, number(-20, 90), number(-20, 90), (one, load, winding, inCase) => {
        const course = courseOf(one, load, two, winding, inCase)
        const [endWinding = NaN, endCase = NaN] = solvedByOdex(
          slopesOf(one, load, two),
          0,
          two ? [winding, inCase] : [winding],
          load.seconds,
        )
        if (endWinding > 1000) return // run away: the solver's error grows with it
        // 1e-6 K: the solver's tolerance of 1e-11 over up to thousands of time constants
        expect(Math.abs(one.sink + windingAfter(course, load.seconds) - endWinding)).toBeLessThan(1e-6)
        if (two) expect(Math.abs(one.sink + caseAfter(course, load.seconds) - endCase)).toBeLessThan(1e-6)
      }),
      { numRuns: 150, seed: 5 },
    )
  })

  it('is at its limit after the seconds of the closed form', () => {
    let reached = 0
    fc.assert(
      fc.property(lumps, row, number(0, 80), (one, load, start) => {
        const limit = 100
        const seconds = secondsToExcess(courseOf(one, load, two, start, start), limit - one.sink)
        if (!(seconds > 0) || seconds > 20_000) return
        reached += 1
        const end = solvedByOdex(slopesOf(one, load, two), 0, two ? [start, start] : [start], seconds)
        // 1e-5 K: the solver's tolerance, grown near a steady temperature
        expect(Math.abs(Math.max(...end) - limit)).toBeLessThan(1e-5)
      }),
      { numRuns: 200, seed: 3 },
    )
    expect(reached).toBeGreaterThan(15)
  })

  it('repeats its round: followed from its start for one more, it is where it began', () => {
    let found = 0
    fc.assert(
      fc.property(lumps, fc.array(row, { minLength: 1, maxLength: 5 }), (one, rows) => {
        const cycle = new MotorCycle()
        clearCycle(cycle)
        for (const { seconds, copper, iron } of rows) {
          addCycleRow(cycle, nodesOf(one, two), seconds, copper, iron, true)
        }
        closeCycle(cycle, true)
        if (cycle.runaway) return
        const start = cycle.winding + cycle.windingPerSink * one.sink
        const startCase = cycle.case + cycle.casePerSink * one.sink
        if (start > 400) return // close to running away, the round's digits go
        found += 1
        let state: readonly number[] = two
          ? [one.sink + start, one.sink + startCase, 0]
          : [one.sink + start, 0]
        let hottest = -Infinity
        for (const load of rows) {
          const slopes = slopesOf(one, load, two)
          // The last state is the integral of what is next to the sink, over the sink.
          const withIntegral = (time: number, at: readonly number[]) => [
            ...slopes(time, at.slice(0, -1)),
            (at.at(-2) ?? NaN) - one.sink,
          ]
          state = solvedByOdex(withIntegral, 0, state, load.seconds)
          hottest = Math.max(hottest, ...state.slice(0, -1))
        }
        // 1e-5 K: the solver's tolerance of 1e-11, grown where the round nearly runs away
        expect(Math.abs((state[0] ?? NaN) - one.sink - start)).toBeLessThan(1e-5)
        const end = new RowEnd()
        setHottestEnd(end, cycle, one.sink)
        expect(Math.abs(end.hottest - hottest)).toBeLessThan(1e-5)
        const seconds = rows.reduce((sum, { seconds: of }) => sum + of, 0)
        const mean = cycle.meanFixed + cycle.meanPerSink * one.sink
        expect(Math.abs((state.at(-1) ?? NaN) / seconds - mean)).toBeLessThan(1e-5)
      }),
      { numRuns: 150, seed: 9 },
    )
    expect(found).toBeGreaterThan(60)
  })
})

describe('a motor with iron loss alone', () => {
  const one = { sink: 20, windingToCase: 1, toSink: 2, windingCapacity: 600, caseCapacity: 0 }
  it('is a plain exponential: half of its final rise after ln 2 time constants', () => {
    // Final rise 100 W/(2 W/K) = 50 K; C/G = 300 s.
    const course = courseOf(one, { seconds: 1, copper: 0, iron: 100 }, false, 20, 20)
    expect(secondsToExcess(course, 25)).toBeCloseTo(300 * Math.LN2, 9)
    expect(secondsToExcess(course, 50)).toBeNaN()
    expect(secondsToExcess(course, 0)).toBe(0)
  })
})

describe('a steady motor', () => {
  it('puts out what it takes up', () => {
    const excess = steadyExcess(1.1, 0.7, 32, 6, 20)
    const copper = 32 * (1 + alpha * excess)
    // 1e-9: closed form put back into its balance; 0.7 K/W behind the iron, 0.4 K/W more behind the copper.
    expect(Math.abs((0.7 * (copper + 6) + 0.4 * copper) / excess - 1)).toBeLessThan(1e-9)
  })
  it('runs away where the loss grows faster than the heat leaves', () => {
    // 1 − R P α = 1 − 2 · 192 · 0.00393 < 0
    expect(steadyExcess(2, 2, 192, 0, 20)).toBeNaN()
  })
})
