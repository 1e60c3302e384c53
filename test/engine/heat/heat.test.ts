import { describe, expect, it } from 'vitest'
import { warmUpCurve } from '../../../shared-engine/cases/warm-up.ts'
import { flowOverWeather, patternCourse } from '../../../shared-engine/cases/pattern-course.ts'
import { evaluate } from '../../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../../shared-engine/cases/evaluation.ts'
import { LumpCycle } from '../../../shared-engine/heat/controller-cycle.ts'
import { packEndTemperature } from '../../../shared-engine/pack/heat.ts'
import { solvedByOdex } from '../numeric/odex.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored } from '../../fixtures/build/machine.ts'

const alpha = 0.00393
/** Demo data: one node, a circuit, a controller that warms. */
const machine = machineOfStored({
  ...plainBuild(),
  motor: {
    ...plainBuild().motor,
    heatCapacityJPerK: 400,
    thermalResistanceKPerW: 0.7,
    resistanceMilliohm: 60,
  },
  controller: { resistanceMilliohm: 2, heatCapacityJPerK: 150, thermalResistanceKPerW: 0.8 },
  cooling: { kind: 'liquid', flowLPerMin: 2, coolant: 'glycol30', radiatorWPerK: 20 },
  ground: { ...plainBuild().ground, airTemperatureC: -5 },
})

function evaluated(): Evaluation {
  const e = new Evaluation()
  evaluate(e, machine)
  return e
}

describe('a controller under a pattern', () => {
  it('is the alternating lump of textbooks: (1 − e^−a)/(1 − e^−2a) of the full rise at the end of the loss', () => {
    // 10 W for 30 s, nothing for 30 s; 2 K/W · 40 J/K = 80 s.
    const lump = new LumpCycle()
    lump.begin(2, 40)
    lump.add(30, 10)
    lump.add(30, 0)
    const a = 30 / 80
    expect(lump.hottest()).toBeCloseTo((20 * (1 - Math.exp(-a))) / (1 - Math.exp(-2 * a)), 12)
  })
})

describe('a pack', () => {
  it('warms by P t/C where no heat leaves, and settles P R above the air where it does', () => {
    expect(packEndTemperature(20, -5, 30, 900, null, 600)).toBeCloseTo(40, 12)
    expect(packEndTemperature(20, -5, 30, 900, 1.5, 1e9)).toBeCloseTo(40, 12)
    // After one time constant, 1 − 1/e of the way.
    expect(packEndTemperature(10, 10, 20, 900, 1.5, 1350)).toBeCloseTo(10 + 30 * (1 - Math.exp(-1)), 12)
  })
})

describe('warming up', () => {
  it.each([30, 44, 132])('at %d A follows the heat balance through time', (amps) => {
    const curve = warmUpCurve({ ...machine, cooling: null }, amps, 15, true)
    if (curve === null || curve.controller === null) throw new Error('no curve')
    const { motor, controller } = machine
    const toAir = motor.thermalResistance ?? NaN
    const loss = (celsius: number) => amps * amps * motor.resistance * (1 + alpha * (celsius - 20))
    const slopes = (_time: number, [at = NaN]: readonly number[]) => [
      (15 + loss(at) - (at + 5) / toAir) / (motor.heatCapacity ?? NaN),
    ]
    expect(curve.sink).toBe(-5)
    expect(controller.thermalResistance).not.toBeNull()
    for (const place of [1, 40, 120]) {
      const [end = NaN] = solvedByOdex(slopes, 0, [-5], curve.seconds[place] ?? NaN)
      // 1e-8: the solver's tolerance of 1e-11, grown with a temperature that runs away
      expect(Math.abs((curve.motor[place] ?? NaN) / end - 1)).toBeLessThan(1e-8)
    }
  })

  it('starts from the circuit’s own temperature where there is one', () => {
    const curve = warmUpCurve(machine, 44, 15, true)
    expect(curve?.sink).toBeGreaterThan(-5)
    expect(curve?.motor[0]).toBeCloseTo(curve?.sink ?? NaN, 12)
  })

  it('keeps all heat in the motor while the coolant stands, and so is never the cooler one', () => {
    const [cooled, standing] = [true, false].map((runs) => warmUpCurve(machine, 44, 15, runs))
    if (!cooled || !standing) throw new Error('no curve')
    const { motor } = machine
    expect(standing.sink).toBeCloseTo(cooled.sink, 12)
    expect(standing.steady).toBeNull()
    // dT/dt = [P + I² R (1 + α (T − 20))]/C solved for the time: C/(I² R α) ln(loss at the end/loss at the start).
    const loss = (celsius: number) => 15 + 44 * 44 * motor.resistance * (1 + alpha * (celsius - 20))
    const growth = 44 * 44 * motor.resistance * alpha
    const byHand =
      ((motor.heatCapacity ?? NaN) / growth) * Math.log(loss(motor.maxTemperature) / loss(standing.sink))
    expect(standing.secondsToLimit).toBeCloseTo(byHand, 3)
    expect(cooled.secondsToLimit ?? Infinity).toBeGreaterThan(byHand)
  })

  it('does not exist without the motor’s thermal entries', () => {
    const bare = { ...machine, motor: { ...machine.motor, heatCapacity: null } }
    expect(warmUpCurve(bare, 44, 15, true)).toBeNull()
  })
})

describe('over one round of the pattern', () => {
  it('the curve meets the row ends and closes', () => {
    const e = evaluated()
    const course = patternCourse(machine, e.pattern, e.heat)
    if (course === null) throw new Error('no curve')
    const { winding, seconds } = course
    expect(seconds.at(-1)).toBeCloseTo(e.pattern.seconds, 9)
    expect(winding.at(-1)).toBeCloseTo(winding[0] ?? NaN, 9)
    const ends = winding.filter((_, at) => (at + 1) % 25 === 0)
    expect(Math.max(...ends)).toBeCloseTo(e.heat.end.hottest, 9)
  })

  it('a pump moves what it was measured at in the warm, less in the cold, nothing when frozen', () => {
    const curve = flowOverWeather(machine)
    const { flow = NaN, freezes = NaN } = machine.cooling ?? {}
    const at = (celsius: number) =>
      curve?.flow[(curve?.celsius ?? []).findIndex((one) => one >= celsius)] ?? NaN
    expect(at(25)).toBeCloseTo(flow, 12)
    expect(at(freezes + 2)).toBeLessThan(flow)
    expect(at(freezes - 2)).toBe(0)
  })
})
