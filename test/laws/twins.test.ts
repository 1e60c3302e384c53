import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { caseNumber } from '../../shared-engine/cases/case.ts'
import { setTravel } from '../../shared-engine/cases/travel.ts'
import { evaluate } from '../../shared-engine/cases/evaluate.ts'
import { Evaluation } from '../../shared-engine/cases/evaluation.ts'
import { DriveLine, dutyAt, ampsAt, setDriveLine, torqueAt } from '../../shared-engine/motor/drive-line.ts'
import { freeSpeedAt } from '../../shared-engine/motor/free-speed.ts'
import { bracketedRoot } from '../../shared-engine/numeric/root.ts'
import { integrate } from '../../shared-engine/numeric/quadrature.ts'
import { curveSettingOf } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed } from '../../shared-engine/vehicle/curves.ts'
import { beltSpeedForThrust, motorThrustAt } from '../../shared-engine/vehicle/thrust-line.ts'
import { apart, machines } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

// Fast closed forms beside slow ways to the same number, which share no formula with them.

function evaluated(machine: Machine): Evaluation {
  const e = new Evaluation()
  evaluate(e, machine)
  return e
}

describe('slow twins', () => {
  it('top speed: thrust less resistance, bisected along the curve', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const e = evaluated(machine)
        if (!e.top.exists) return
        const setting = curveSettingOf(machine)
        const surplus = (speed: number): number => {
          const state = driveStateAtGroundSpeed(setting, speed)
          return state.thrust - state.resistance
        }
        const free = setting.line.openStart / setting.line.openSlope
        // where next to nothing holds it back, it runs free: rounding leaves no change of sign
        const found = bracketedRoot(surplus, 0, free) ?? (Math.abs(surplus(free)) < 1e-9 ? free : NaN)
        // 1e-6: roots, by the contract; thrust may be as flat as the grip there
        expect(apart(found, e.top.groundSpeed)).toBeLessThan(1e-6)
      }),
      { numRuns: 200 },
    )
  })

  it('seconds and metres of the run: adaptive integration along the curve', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const e = evaluated(machine)
        if (!e.top.exists) return
        setTravel(e, machine)
        const setting = curveSettingOf(machine)
        const slow = (speed: number): number => {
          const state = driveStateAtGroundSpeed(setting, speed)
          return setting.equivalentMass / (state.thrust - state.resistance)
        }
        const end = 0.8 * e.top.groundSpeed
        const slip = machine.ground.model === 'coefficient' ? machine.ground.slip : 0
        const marks = Array.from({ length: 31 }, (_, index) => (end * (index + 1)) / 32)
        const kinks = [...marks, setting.line.cornerSpeed * (1 - slip)].sort((one, other) => one - other)
        const seconds = integrate(slow, 0, end, { relative: 1e-8, kinks }).value
        const metres = integrate((speed) => speed * slow(speed), 0, end, { relative: 1e-8, kinks }).value
        // 1e-6: integrals, by the contract
        expect(apart(seconds, e.run.secondsTo80)).toBeLessThan(1e-6)
        expect(apart(metres, e.run.metresTo80)).toBeLessThan(1e-6)
      }),
      { numRuns: 120 },
    )
  })

  it('free speed: where the torque of the line is nothing', () => {
    fc.assert(
      fc.property(machines, evenly(0.1, 1), (machine, duty) => {
        const line = new DriveLine()
        const open = { ...machine, controller: { ...machine.controller, currentLimit: Infinity } }
        setDriveLine(line, open, machine.pack.fullVolts, 20, duty)
        const free = freeSpeedAt(machine, machine.pack.fullVolts, 20, duty)
        const most = (2 * machine.pack.fullVolts) / machine.motor.torqueConstant
        const found = bracketedRoot((speed) => torqueAt(line, speed), 0, most) ?? 0
        // 1e-9: closed form against a root that rounding limits
        expect(apart(found, free)).toBeLessThan(1e-9)
      }),
      { numRuns: 200 },
    )
  })

  it('most standstill current: every throttle tried', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const e = evaluated(machine)
        let most = 0
        for (let step = 1; step <= 2000; step += 1) {
          const duty = (machine.controller.throttleCap * step) / 2000
          const line = new DriveLine()
          setDriveLine(line, machine, machine.pack.fullVolts, 20, duty)
          most = Math.max(most, ampsAt(line, 0))
        }
        // δ/(R_s + M δ² R_b) falls by the square of what the nearest try is off, in parts of the best duty
        const best = Math.sqrt(
          e.launchDrive.seriesResistance / (machine.motor.count * machine.pack.resistance),
        )
        const off = machine.controller.throttleCap / 4000 / Math.min(best, machine.controller.throttleCap)
        expect(apart(most, e.launchAmps)).toBeLessThan(off * off + 1e-12)
      }),
      { numRuns: 60 },
    )
  })

  it('worst pack current that the ground lets happen: every speed tried', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const e = evaluated(machine)
        if (!e.top.exists) return
        const { drive, top, line, footing, bursts } = e
        const spins = motorThrustAt(line, 0) > footing.gripThrust
        const from = spins ? beltSpeedForThrust(line, footing.gripThrust) * line.motorPerBelt : 0
        let most = 0
        for (let step = 0; step <= 4000; step += 1) {
          const speed = from + ((top.motorSpeed - from) * step) / 4000
          most = Math.max(most, drive.count * dutyAt(drive, speed) * ampsAt(drive, speed))
        }
        const pivot = bursts.packCase === caseNumber.pivot
        const found = bursts.packAmps - e.accessoryAmps
        expect(most).toBeLessThanOrEqual(found * (1 + 1e-9))
        // 0.5 %: the corner may lie between two of 4000 speeds; a weak pack's duty jumps there, so it is then higher only
        const jumps = dutyAt(drive, drive.cornerSpeed * (1 - 1e-9)) < drive.duty * 0.999
        if (!jumps && !pivot) expect(most).toBeGreaterThanOrEqual(found * 0.995)
      }),
      { numRuns: 100 },
    )
  })
})
