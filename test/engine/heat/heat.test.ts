import { describe, expect, it } from 'vitest'
import {
  coolantRise,
  sinkTemperature,
  steadyControllerTemperature,
} from '../../../shared-engine/heat/circuit.ts'
import { secondsToMotorLimit, steadyMotorTemperature } from '../../../shared-engine/heat/motor.ts'
import { setSteadyHeat, SteadyHeat } from '../../../shared-engine/heat/steady-heat.ts'
import { warmUpCurve } from '../../../shared-engine/heat/warm-up.ts'
import { solvedByOdex } from '../numeric/odex.ts'
import { fullBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored } from '../../fixtures/build/machine.ts'

const alpha = 0.00393
const cooling = {
  flow: 5e-5,
  density: 1000,
  specificHeat: 4000,
  radiator: 20,
  coolant: 'water',
  volume: 2e-4,
  airCapacity: null,
  testFlow: null,
  flowTestTemperature: 20,
  pumpPower: 0,
  capPressure: 0,
} as const

describe('a cooling circuit', () => {
  it('is P/UA above the air: 300 W over 20 W/K, 15 K', () => {
    expect(sinkTemperature(cooling, 10, 300)).toBe(25)
    expect(sinkTemperature(null, 10, 300)).toBe(10)
  })

  it('warms by P/(ρ V̇ c): 300 W into 0.05 l/s of 4 MJ/(m³·K), 1.5 K; by nothing known without one', () => {
    expect(coolantRise(cooling, 300)).toBeCloseTo(1.5, 12)
    expect(coolantRise(null, 300)).toBeNaN()
  })
})

describe('a controller', () => {
  it('is R_th I² R above its sink: 2 K/W · 50² · 4 mΩ, 20 K', () => {
    expect(steadyControllerTemperature(25, 2, 50, 0.004)).toBeCloseTo(45, 12)
  })
})

describe('a motor', () => {
  it('with iron loss alone is a plain exponential: half of its final rise after ln 2 time constants', () => {
    // final rise 0.5 K/W · 100 W = 50 K; R C = 0.5 · 600 = 300 s
    expect(steadyMotorTemperature(20, 0.5, 100, 0, 0.05)).toBeCloseTo(70, 12)
    expect(secondsToMotorLimit(20, 0.5, 600, 100, 0, 0.05, 45)).toBeCloseTo(300 * Math.LN2, 9)
  })

  it('is there at once where its sink is, and never where it stays below', () => {
    expect(secondsToMotorLimit(90, 0.5, 600, 100, 0, 0.05, 90)).toBe(0)
    expect(secondsToMotorLimit(20, 0.5, 600, 100, 0, 0.05, 70)).toBeNaN()
    expect(secondsToMotorLimit(20, 0.5, 600, 0, 0, 0.05, 70)).toBeNaN()
  })

  it('that just does not run away warms evenly: growth nothing, t = C ΔT/P', () => {
    // a = I² R α − 1/R_th = 0 to the last digit where R_th = 1/(I² R α)
    const copper = 40 * 40 * 0.05
    const thermalResistance = 1 / (copper * alpha)
    const seconds = secondsToMotorLimit(20, thermalResistance, 500, 10, 40, 0.05, 120)
    // 1e-9: what is left of a after rounding
    expect(Math.abs(seconds / ((500 * 100) / (10 + copper)) - 1)).toBeLessThan(1e-9)
  })
})

const full = machineOfStored(fullBuild())
const machine = { ...full, service: { ...full.service, loadShare: 0.55 } }

describe('heat of a long run', () => {
  const heat = new SteadyHeat()
  setSteadyHeat(heat, machine, 80, 15)

  it('flows at the share of the current given: 55 % of 80 A, two motors and controllers', () => {
    expect(heat.amps).toBeCloseTo(44, 12)
    // 15 + 44² · (60 mΩ · (1 + 0.00393 · 50) + 2 mΩ), twice
    expect(heat.circuitHeat).toBeCloseTo(2 * (15 + 1936 * (0.06 * 1.1965 + 0.002)), 9)
  })

  it('sets sink, motor and controller in turn', () => {
    expect(heat.sink).toBeCloseTo(-5 + heat.circuitHeat / 20, 9)
    const left = 1 - 0.7 * 1936 * 0.06 * alpha
    const cold = 15 + 1936 * 0.06 * (1 - 20 * alpha)
    expect(heat.motorTemperature).toBeCloseTo((heat.sink + 0.7 * cold) / left, 9)
    expect(heat.controllerTemperature).toBeCloseTo(heat.sink + 0.8 * 1936 * 0.002, 9)
    expect(heat.runaway).toBe(false)
  })

  it('runs away at three times of that current, and says so', () => {
    const hot = new SteadyHeat()
    setSteadyHeat(hot, { ...machine, cooling: null }, 240, 15)
    expect(hot.runaway).toBe(true)
    expect(hot.motorTemperature).toBeNaN()
    expect(hot.secondsToMotorLimit).toBeGreaterThan(0)
  })
})

describe('warming up', () => {
  it.each([30, 44, 132])('at %d A follows the heat balance through time', (amps) => {
    const curve = warmUpCurve(machine, amps, 15, true)
    if (curve === null || curve.controller === null) throw new Error('no curve')
    const slopes = (_time: number, [motor = NaN, controller = NaN]: readonly number[]) => [
      (15 + amps * amps * 0.06 * (1 + alpha * (motor - 20)) - (motor - curve.sink) / 0.7) / 400,
      (amps * amps * 0.002 - (controller - curve.sink) / 0.8) / 150,
    ]
    for (const at of [1, 40, 120]) {
      const seconds = curve.seconds[at] ?? NaN
      const [motor = NaN, controller = NaN] = solvedByOdex(slopes, 0, [curve.sink, curve.sink], seconds)
      // 1e-8: the solver's tolerance of 1e-11, grown with a temperature that runs away
      expect(Math.abs((curve.motor[at] ?? NaN) / motor - 1)).toBeLessThan(1e-8)
      expect(Math.abs((curve.controller[at] ?? NaN) / controller - 1)).toBeLessThan(1e-8)
    }
  })

  it('starts from the air where the circuit is off', () => {
    expect(warmUpCurve(machine, 44, 15, false)?.sink).toBe(-5)
  })

  it('does not exist without the motor’s thermal entries', () => {
    const bare = { ...machine, motor: { ...machine.motor, heatCapacity: null } }
    expect(warmUpCurve(bare, 44, 15, true)).toBeNull()
  })
})
