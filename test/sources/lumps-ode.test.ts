import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import { patternCourse } from '../../shared-engine/cases/pattern-course.ts'
import { warmUpCurve } from '../../shared-engine/cases/warm-up.ts'
import { LumpCycle } from '../../shared-engine/heat/controller-cycle.ts'
import { addCycleRow, clearCycle, closeCycle, MotorCycle } from '../../shared-engine/heat/motor-cycle.ts'
import { MotorNodes } from '../../shared-engine/heat/two-nodes.ts'
import type { Machine, PatternRowPart } from '../../shared-engine/machine/parts.ts'
import { packEndTemperature } from '../../shared-engine/pack/heat.ts'
import { creepSpeedOf } from '../../shared-engine/vehicle/creep.ts'
import { Motion, setRunning } from '../../shared-engine/vehicle/motion.ts'
import { spinUpSeconds } from '../../shared-engine/vehicle/spin-up.ts'
import { motorThrustAt } from '../../shared-engine/vehicle/thrust-line.ts'
import { internalDragAt } from '../../shared-engine/track/drag.ts'
import { noLoadAmpsAt } from '../../shared-engine/motor/drive-line.ts'
import { solvedByOdex } from '../engine/numeric/odex.ts'
import { evenly } from '../fixtures/evenly.ts'
import { machines } from '../laws/machines.ts'

// What the engine solves in closed form, followed through time instead. *Source:* the balances as they stand, solved by
// odex, a port of Hairer and Wanner's extrapolation code (*Solving Ordinary Differential Equations I*).

const alpha = 0.00393

/** Two nodes and a controller that warm, behind a circuit or in the air. */
const warmed = fc
  .record({
    machine: machines,
    flow: evenly(4e-6, 1e-4),
    radiator: evenly(2, 60),
    winding: evenly(10, 200),
    shell: evenly(50, 2000),
    liquid: fc.boolean(),
    rows: fc.array(fc.record({ seconds: evenly(20, 400), speed: evenly(0.1, 3) }), {
      minLength: 1,
      maxLength: 4,
    }),
  })
  .map(({ machine, flow, radiator, winding, shell, liquid, rows }): Machine => {
    const pattern = rows.map(({ seconds, speed }): PatternRowPart => ({
      seconds,
      kind: 'speed',
      value: speed,
      grade: 0,
      load: null,
      tow: null,
      resistanceShare: 1,
      gripShare: 1,
      turnShare: 0,
    }))
    const circuit = {
      flow,
      radiator,
      airCapacity: null,
      density: 1043,
      specificHeat: 3660,
      coolant: 'glycol30',
      freezes: -15.7,
      boilingRise: 4,
      volume: 2e-4,
      testFlow: null,
      flowTestTemperature: 20,
      pumpPower: 0,
      capPressure: 0,
    } as const
    return {
      ...machine,
      cooling: liquid ? circuit : null,
      motor: {
        ...machine.motor,
        windingToCase: 0.4,
        caseToSink: 0.6,
        windingHeatCapacity: winding,
        caseHeatCapacity: shell,
      },
      controller: { ...machine.controller, thermalResistance: 1.2, heatCapacity: 90 },
      service: { ...machine.service, pattern: { name: null, rows: pattern } },
    }
  })

function evaluated(machine: Machine): Evaluation {
  const e = new Evaluation()
  evaluate(e, machine)
  return e
}

/** From a wall behind R to the inlet of C W/K. *Source:* Incropera, effectiveness by transfer units with C_r = 0. */
const toInlet = (resistance: number, rate: number) =>
  Number.isNaN(rate) ? resistance : 1 / (rate * (1 - Math.exp(-1 / (resistance * rate))))

describe('a controller under a pattern that repeats itself', () => {
  it('is after many rounds where the lump through time comes to', () => {
    const rows = fc.array(fc.record({ seconds: evenly(1, 300), loss: evenly(0, 60) }), {
      minLength: 1,
      maxLength: 6,
    })
    fc.assert(
      fc.property(rows, evenly(0.1, 4), evenly(20, 400), (drawn, resistance, capacity) => {
        const lump = new LumpCycle()
        lump.begin(resistance, capacity)
        for (const { seconds, loss } of drawn) lump.add(seconds, loss)
        const round = drawn.reduce((sum, { seconds }) => sum + seconds, 0)
        // What is left of the start after the rounds is below 1e-9 of it.
        const rounds = Math.ceil((21 * resistance * capacity) / round) + 1
        if (rounds > 60) return
        let excess: readonly number[] = [0]
        let hottest = 0
        for (let at = 0; at < rounds; at += 1) {
          hottest = -Infinity
          for (const { seconds, loss } of drawn) {
            const slopes = (_time: number, [kelvin = NaN]: readonly number[]) => [
              (loss - kelvin / resistance) / capacity,
            ]
            excess = solvedByOdex(slopes, 0, excess, seconds)
            hottest = Math.max(hottest, excess[0] ?? NaN)
          }
        }
        // 1e-7: what is left of the start, and the solver's tolerance
        expect(Math.abs(lump.hottest() - hottest)).toBeLessThanOrEqual(1e-7 * (1 + hottest))
      }),
      { numRuns: 40 },
    )
  })
})

describe('cells', () => {
  it('warm as their balance says, with heat to the air and without', () => {
    const draws = fc.tuple(
      evenly(-20, 40),
      evenly(-30, 40),
      evenly(0, 200),
      evenly(100, 5000),
      evenly(10, 7200),
    )
    fc.assert(
      fc.property(draws, fc.option(evenly(0.1, 20)), ([start, air, heat, capacity, seconds], way) => {
        const slopes = (_time: number, [celsius = NaN]: readonly number[]) => [
          (heat - (way === null ? 0 : (celsius - air) / way)) / capacity,
        ]
        const [end = NaN] = solvedByOdex(slopes, 0, [start], seconds)
        const found = packEndTemperature(start, air, heat, capacity, way, seconds)
        // 1e-8: the solver's tolerance of 1e-11 over up to hundreds of time constants
        expect(Math.abs(found - end)).toBeLessThan(1e-8 * (1 + Math.abs(end)))
      }),
      { numRuns: 150 },
    )
  })
})

describe('a motor of two nodes with its controller', () => {
  it('warms up at one current as the balances of winding, case and controller do', () => {
    let compared = 0
    fc.assert(
      fc.property(warmed, evenly(5, 40), evenly(0, 20), (machine, amps, iron) => {
        const curve = warmUpCurve(machine, amps, iron, true)
        if (curve === null) return
        compared += 1
        const { motor, controller, cooling } = machine
        const rate =
          cooling === null ? NaN : (cooling.density * cooling.flow * cooling.specificHeat) / motor.count
        const { windingHeatCapacity: ofWinding, caseHeatCapacity: ofCase } = motor
        const slopes = (_time: number, [winding = NaN, shell = NaN]: readonly number[]) => {
          const copper = amps * amps * motor.resistance * (1 + alpha * (winding - 20))
          const passed = (winding - shell) / 0.4
          return [
            (copper - passed) / (ofWinding ?? NaN),
            (iron + passed - (shell - curve.sink) / toInlet(0.6, rate)) / (ofCase ?? NaN),
          ]
        }
        for (const place of [20, 120]) {
          const seconds = curve.seconds[place] ?? NaN
          const ends = solvedByOdex(slopes, 0, [curve.sink, curve.sink], seconds)
          const hottest = Math.max(...ends)
          if (hottest > 1000) continue // run away: the solver's error grows with it
          // 1e-7: the solver's tolerance over the time constants
          expect(Math.abs((curve.motor[place] ?? NaN) - hottest)).toBeLessThan(1e-7 * (1 + Math.abs(hottest)))
        }
        // The controller starts and ends by its own balance: from its stream's temperature towards R′ P above it.
        const [first = NaN, last = NaN] = [curve.controller?.[0], curve.controller?.at(-1)]
        const rise = last - first
        const seconds = curve.seconds.at(-1) ?? NaN
        const way = toInlet(controller.thermalResistance ?? NaN, rate)
        const lost = way * amps * amps * controller.resistance
        // 1e-9: the curve's end is a closed form of this very balance; these builds know no switching time
        expect(Math.abs(rise + lost * Math.expm1(-seconds / (way * 90)))).toBeLessThan(
          1e-9 * (1 + Math.abs(last)),
        )
        const warming = (_time: number, [kelvin = NaN]: readonly number[]) => [(lost - kelvin) / (way * 90)]
        const [half = NaN] = solvedByOdex(warming, 0, [0], curve.seconds[60] ?? NaN)
        expect(Math.abs((curve.controller?.[60] ?? NaN) - first - half)).toBeLessThan(1e-7 * (1 + rise))
      }),
      { numRuns: 40 },
    )
    expect(compared).toBeGreaterThan(20)
  })

  it('goes round its pattern between the row ends as the balances do', () => {
    let compared = 0
    fc.assert(
      fc.property(warmed, (machine) => {
        const { pattern, heat } = evaluated(machine)
        const course = patternCourse(machine, pattern, heat, 5)
        if (course === null || Math.max(...course.winding) > 500) return
        compared += 1
        const { motor } = machine
        let state: readonly number[] = [course.winding[0] ?? NaN, course.case?.[0] ?? NaN]
        for (const [at, row] of pattern.rows.slice(0, pattern.count).entries()) {
          const { motorAmps, ironLoss } = row.straight
          const slopes = (_time: number, [winding = NaN, shell = NaN]: readonly number[]) => {
            const copper = motorAmps * motorAmps * motor.resistance * (1 + alpha * (winding - 20))
            const passed = (winding - shell) / 0.4
            return [
              (copper - passed) / (motor.windingHeatCapacity ?? NaN),
              (ironLoss + passed - (shell - heat.feed) / heat.toInlet) / (motor.caseHeatCapacity ?? NaN),
            ]
          }
          for (let point = 1; point < 5; point += 1) {
            state = solvedByOdex(slopes, 0, state, row.seconds / 4)
            const found = [course.winding[5 * at + point], course.case?.[5 * at + point]]
            // 1e-6 K: the solver's tolerance, grown where the round nearly runs away
            for (const [node, celsius] of state.entries())
              expect(Math.abs((found[node] ?? NaN) - celsius)).toBeLessThan(1e-6 * (1 + Math.abs(celsius)))
          }
        }
        // and is where it began
        expect(Math.abs((state[0] ?? NaN) - (course.winding[0] ?? NaN))).toBeLessThan(1e-4)
      }),
      { numRuns: 60 },
    )
    expect(compared).toBeGreaterThan(15)
  })

  it('runs away exactly where rounds through time grow for ever', () => {
    let [away, settled] = [0, 0]
    const nodesOf = (resistance: number): MotorNodes => {
      const nodes = new MotorNodes()
      Object.assign(nodes, { two: true, windingToCase: 2.5, toSink: 1 / resistance })
      Object.assign(nodes, { windingCapacity: 30, caseCapacity: 150 })
      return nodes
    }
    const rows = fc.array(fc.record({ seconds: evenly(20, 200), copper: evenly(0, 400) }), {
      minLength: 1,
      maxLength: 4,
    })
    fc.assert(
      fc.property(rows, evenly(0.2, 1.5), (drawn, resistance) => {
        const nodes = nodesOf(resistance)
        const cycle = new MotorCycle()
        clearCycle(cycle)
        for (const { seconds, copper } of drawn) addCycleRow(cycle, nodes, seconds, copper, 5, false)
        closeCycle(cycle, false)
        const ends: number[] = []
        let state: readonly number[] = [0, 0]
        for (let round = 0; round < 60 && (ends.at(-1) ?? 0) < 1e6; round += 1) {
          for (const { seconds, copper } of drawn) {
            const slopes = (_time: number, [winding = NaN, shell = NaN]: readonly number[]) => {
              const passed = 2.5 * (winding - shell)
              const made = copper * (1 + alpha * (winding - 20))
              return [(made - passed) / 30, (5 + passed - shell / resistance) / 150]
            }
            state = solvedByOdex(slopes, 0, state, seconds, 1e-7)
          }
          ends.push(state[0] ?? NaN)
        }
        const [before = NaN, between = NaN, last = NaN] = ends.slice(-3)
        const growth = (last - between) / (between - before)
        // Where a round's gain is hardly less or more than the one before, the rounds followed do not tell.
        if (last - between > 1e-3 && Math.abs(growth - 1) > 1e-3) {
          expect(cycle.runaway).toBe(growth > 1)
          if (growth > 1) away += 1
          else settled += 1
        } else if (last - between <= 1e-3) {
          settled += 1
          expect(cycle.runaway).toBe(false)
        }
      }),
      { numRuns: 60 },
    )
    expect(away).toBeGreaterThan(5)
    expect(settled).toBeGreaterThan(5)
  })
})

describe('a track that spins on the spot', () => {
  it('is at 95 % of its belt speed after the seconds of the spin-up', () => {
    let spun = 0
    const motion = new Motion()
    fc.assert(
      fc.property(machines, evenly(0.02, 0.3), (drawn, share) => {
        const machine =
          drawn.ground.model === 'coefficient'
            ? { ...drawn, ground: { ...drawn.ground, gripCoefficient: drawn.ground.gripCoefficient * share } }
            : drawn
        setRunning(motion, machine)
        const seconds = spinUpSeconds(motion, machine.vehicle.mass)
        if (Number.isNaN(seconds)) return
        spun += 1
        const { line, footing, equivalentMass } = motion
        const turning = equivalentMass - machine.vehicle.mass
        const surplus = (belt: number) => motorThrustAt(line, belt) - footing.gripThrust
        // In two pieces, so that no step passes over the corner of the current limit.
        const end = 0.95 * ((line.openStart - footing.gripThrust) / line.openSlope)
        const beyond =
          line.limitedStart - line.limitedSlope * Math.max(0, line.cornerSpeed) < footing.gripThrust
        const last = beyond ? 0.95 * ((line.limitedStart - footing.gripThrust) / line.limitedSlope) : end
        const corner = Math.min(Math.max(0, line.cornerSpeed), last)
        // In shares of the time found: the solver's tolerance is absolute too.
        const slopes = (belt: number) => [turning / surplus(belt) / seconds]
        const marks = [0, ...(corner > 0 && corner < last ? [corner * (1 - 1e-12)] : []), last]
        let [time] = [0]
        for (let at = 1; at < marks.length; at += 1)
          [time = NaN] = solvedByOdex(slopes, marks[at - 1] ?? 0, [time], marks[at] ?? 0)
        // 1e-7: the solver's tolerance, and the speed left out beside the corner
        expect(Math.abs(time - 1)).toBeLessThan(1e-7)
      }),
      { numRuns: 150 },
    )
    expect(spun).toBeGreaterThan(20)
  })
})

describe('shorted motors', () => {
  it('let it creep as fast as it comes to roll down the slope', () => {
    let rolled = 0
    const motion = new Motion()
    fc.assert(
      fc.property(machines, evenly(0.1, 0.6), (drawn, grade) => {
        const slope = Math.atan(grade)
        const ground = { ...drawn.ground, grade, sinSlope: Math.sin(slope), cosSlope: Math.cos(slope) }
        const machine = { ...drawn, ground, vehicle: { ...drawn.vehicle, towForce: 0 } }
        setRunning(motion, machine)
        const creep = creepSpeedOf(machine, motion)
        if (!(creep > 1e-6)) return
        rolled += 1
        const { drive, line, footing, equivalentMass } = motion
        const { train, track, vehicle, motor } = machine
        const pull = vehicle.mass * 9.80665 * Math.sin(slope) - footing.groundResistance
        const slopes = (_time: number, [speed = 0]: readonly number[]) => {
          const turning = speed * line.motorPerBelt
          const amps =
            (turning * drive.torqueConstant) / drive.seriesResistance + noLoadAmpsAt(drive, turning)
          const held = (motor.count * drive.torqueConstant * amps * line.motorPerBelt) / train.efficiency
          return [(pull - held - internalDragAt(track, speed)) / equivalentMass]
        }
        // From beside it, long enough for what is left to be nothing: 40 times the time that the motors take to hold it.
        const [faster = 0] = slopes(0, [1.5 * creep])
        const seconds = (40 * 0.5 * creep) / Math.abs(faster)
        const [settled = NaN] = solvedByOdex(slopes, 0, [1.5 * creep], seconds, 1e-10)
        // 1e-7: the solver's tolerance
        expect(Math.abs(settled / creep - 1)).toBeLessThan(1e-7)
      }),
      { numRuns: 80 },
    )
    expect(rolled).toBeGreaterThan(10)
  })
})
