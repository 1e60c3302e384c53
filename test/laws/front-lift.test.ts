import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import { DriveLine, setDriveLine } from '../../shared-engine/motor/drive-line.ts'
import { bracketedRoot } from '../../shared-engine/numeric/root.ts'
import { curveSettingOf } from '../../shared-engine/vehicle/curve-setting.ts'
import { motorThrustAt, setThrustLine, ThrustLine } from '../../shared-engine/vehicle/thrust-line.ts'
import { apart, machines } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

// The smallest throttle that lifts the front, by trying every throttle from nothing up: a weak pack's thrust falls
// again past its strongest throttle, so that the first crossing is the one wanted.

const tries = 400

/** Thrust at rest against throttle, N: the running state's line alone, drawn anew at each. */
function thrustAtRest(machine: Machine): (throttle: number) => number {
  const { drive } = curveSettingOf(machine)
  const [line, thrust] = [new DriveLine(), new ThrustLine()]
  return (throttle) => {
    setDriveLine(line, machine, drive.volts, machine.service.windingTemperature, throttle)
    setThrustLine(thrust, machine, line)
    return motorThrustAt(thrust, 0)
  }
}

/** Smallest throttle at which thrust at rest reaches `wanted`, NaN where none does; by scan, then Brent's method. */
function slowThrottle(machine: Machine, wanted: number): number {
  const thrust = thrustAtRest(machine)
  const surplus = (throttle: number): number => thrust(throttle) - wanted
  const cap = machine.controller.throttleCap
  let before = 1e-9
  if (surplus(before) >= 0) return before
  for (let step = 1; step <= tries; step += 1) {
    const throttle = (cap * step) / tries
    if (surplus(throttle) >= 0) return bracketedRoot(surplus, before, throttle) ?? throttle
    before = throttle
  }
  return NaN
}

/** Most thrust of any throttle tried, N. */
function mostThrust(machine: Machine): number {
  const cap = machine.controller.throttleCap
  const thrust = thrustAtRest(machine)
  return Math.max(...Array.from({ length: tries }, (_, step) => thrust((cap * (step + 1)) / tries)))
}

describe('throttle that lifts the front', () => {
  it('is the first of all throttles whose thrust at rest does', () => {
    const seen = { lifts: 0, never: 0, slips: 0 }
    const high = evenly(0.1, 1.5)
    const ahead = evenly(0.02, 0.6)
    fc.assert(
      fc.property(machines, high, ahead, (drawn, centreHeight, centreAhead) => {
        const machine = { ...drawn, vehicle: { ...drawn.vehicle, centreHeight, centreAhead } }
        const e = new Evaluation()
        evaluate(e, machine)
        if (e.lifted.gripThrust < e.frontLiftThrust) {
          seen.slips += 1
          expect(e.frontLiftDuty).toBeNaN()
          return
        }
        const slow = slowThrottle(machine, e.frontLiftThrust)
        if (Number.isNaN(slow)) {
          seen.never += 1
          // a peak between two tries is the engine's alone to see: 1e-4 of the thrust
          if (mostThrust(machine) < e.frontLiftThrust * (1 - 1e-4)) expect(e.frontLiftDuty).toBeNaN()
          return
        }
        seen.lifts += 1
        if (slow <= 1e-9) expect(e.frontLiftDuty).toBeLessThanOrEqual(1e-9)
        // 1e-6: a root by the contract; near the peak of a weak pack thrust hardly changes with throttle
        else expect(apart(slow, e.frontLiftDuty)).toBeLessThan(1e-6)
      }),
      { numRuns: 250 },
    )
    expect(Math.min(seen.lifts, seen.never, seen.slips)).toBeGreaterThan(10)
  })
})
