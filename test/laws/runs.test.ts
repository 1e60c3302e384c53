import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { integrate, type Integral } from '../../shared-engine/numeric/quadrature.ts'
import { bracketedRoot } from '../../shared-engine/numeric/root.ts'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { setTravel } from '../../shared-engine/cases/travel.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import { curveSettingOf, type CurveSetting } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAt } from '../../shared-engine/vehicle/drive-state.ts'
import { isFlat } from '../../shared-engine/vehicle/flat-limit.ts'
import { motorThrustAt } from '../../shared-engine/vehicle/thrust-line.ts'
import { apart, machines } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

// Fixed rules beside adaptive Gauss-Kronrod along a thrust found anew, by root from the contract's equations, for each ground and each way a current limit may slope.
// How little it slopes is drawn down to nothing: just there the engine changes its variable.

type Slope = 'none' | 'flat' | 'nearly flat' | 'sloped'

/** A machine whose current limit acts for a part of the run. */
function limited(machine: Machine, slope: Slope, share: number, tilt: number): Machine {
  const open = { ...machine, controller: { ...machine.controller, currentLimit: Infinity } }
  if (slope === 'none') return open
  const { drive } = curveSettingOf(open)
  const stall = (drive.duty * drive.volts) / drive.loopResistance
  const viscousShare = slope === 'flat' ? 0 : slope === 'nearly flat' ? tilt : Math.max(0.05, tilt)
  return {
    ...machine,
    motor: { ...machine.motor, viscousShare },
    track: { ...machine.track, internalDragPerSpeed: slope === 'sloped' ? 2 : 0 },
    controller: { ...machine.controller, currentLimit: share * stall },
  }
}

/** F_s/(A c + W_t tan φ) at x = i L/K, as written: 1 − (1 − e^(−x))/x, by its series where that loses digits. */
function shareAt(x: number): number {
  return x < 1e-3 ? x / 2 - (x * x) / 6 + (x * x * x) / 24 : 1 + Math.expm1(-x) / x
}

/**
 * Thrust at a ground speed above 0, N: on soil by the root over belt speed of F_s(1 − v/v_b) = F_m(v_b), whatever the
 * limit's slope; on `coefficient` ground by the contract's sentence.
 */
function slowThrust({ machine, line, footing }: CurveSetting, speed: number): number {
  if (machine.ground.model === 'coefficient') {
    return Math.min(motorThrustAt(line, speed / (1 - machine.ground.slip)), footing.gripThrust)
  }
  const missing = (belt: number): number =>
    footing.shearStrength * shareAt(((belt - speed) / belt) * footing.fullShear) - motorThrustAt(line, belt)
  const found = bracketedRoot(missing, speed, line.openStart / line.openSlope)
  return found === null ? NaN : motorThrustAt(line, found)
}

/** m_e/(F − R) and its product with v, integrated from rest. */
function slowRun(setting: CurveSetting, end: number): { seconds: Integral; metres: Integral } {
  const slow = (speed: number): number => {
    const resistance = setting.footing.standingResistance + setting.airDragFactor * speed * speed
    return setting.equivalentMass / (slowThrust(setting, speed) - resistance)
  }
  // the corner, and marks that keep the first look from missing anything narrow
  const corner =
    setting.line.cornerSpeed > 0 ? driveStateAt(setting, setting.line.cornerSpeed).groundSpeed : 0
  const marks = Array.from({ length: 15 }, (_, index) => (end * (index + 1)) / 16)
  const options = { relative: 1e-9, kinks: [corner, ...marks].sort((one, other) => one - other) }
  return {
    seconds: integrate(slow, 0, end, options),
    metres: integrate((speed) => speed * slow(speed), 0, end, options),
  }
}

const tilts = evenly(-12, -1).map((at) => 10 ** at)

describe('the run from rest', () => {
  for (const model of ['coefficient', 'soil'] as const) {
    for (const slope of ['none', 'flat', 'nearly flat', 'sloped'] as const) {
      it(`on ${model}, current limit ${slope}`, () => {
        let acted = 0
        let ran = 0
        const ground = machines.filter((machine) => machine.ground.model === model)
        const share = evenly(0.05, 0.95)
        fc.assert(
          fc.property(ground, share, tilts, (drawn, part, tilt) => {
            const machine = limited(drawn, slope, part, tilt)
            const setting = curveSettingOf(machine)
            if (!setting.top.exists) return
            ran += 1
            if (setting.line.cornerSpeed > 0) acted += 1
            if (slope === 'flat') expect(isFlat(setting.line)).toBe(setting.line.cornerSpeed > 0)
            const evaluation = new Evaluation()
            evaluate(evaluation, machine)
            setTravel(evaluation, machine)
            const { run, top } = evaluation
            const half = slowRun(setting, 0.5 * top.groundSpeed)
            const most = slowRun(setting, 0.8 * top.groundSpeed)
            expect(most.seconds.reached && most.metres.reached).toBe(true)
            // 1e-6: integrals, by the contract
            expect(apart(half.seconds.value, run.secondsToHalf)).toBeLessThan(1e-6)
            expect(apart(most.seconds.value, run.secondsTo80)).toBeLessThan(1e-6)
            expect(apart(most.metres.value, run.metresTo80)).toBeLessThan(1e-6)
          }),
          { numRuns: 60 },
        )
        expect(ran).toBeGreaterThan(5)
        if (slope !== 'none') expect(acted).toBeGreaterThan(5)
      })
    }
  }
})
