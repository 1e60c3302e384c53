import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { torqueConstantAt, windingResistanceAt } from '../../../shared-engine/motor/constants.ts'
import {
  ampsAt,
  DriveLine,
  dutyAt,
  dutyForAmps,
  noLoadAmpsAt,
  setDriveLine,
  torqueAt,
} from '../../../shared-engine/motor/drive-line.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored } from '../../fixtures/build/machine.ts'
import { machines } from '../../laws/machines.ts'
import { evenly } from '../../fixtures/evenly.ts'

const plain = plainBuild()

/** Two motors of 500 rpm/V, 25 mΩ, on 12 mΩ of cells; 5 mΩ of controller; 80 A limit; 40 % of 1.5 A grows with speed. */
const machine = machineOfStored({
  ...plain,
  controller: { resistanceMilliohm: 5, currentLimitAmps: 80 },
  motor: { ...plain.motor, count: 2, viscousPercent: 40, magnet: 'ignore' },
  service: { packTemperatureC: 25 },
})

function lineAt(duty: number, temperature = 20): DriveLine {
  const line = new DriveLine()
  setDriveLine(line, machine, 24, temperature, duty)
  return line
}

describe('constants of a motor with heat', () => {
  it('100 K weaken magnets by 0.11 %/K to 0.89', () => {
    // 12 digits: closed form
    expect(torqueConstantAt({ torqueConstant: 0.01, fluxCoefficient: -0.0011 }, 120)).toBeCloseTo(0.0089, 12)
  })

  it('100 K raise copper by 39.3 %: IEC 60028', () => {
    expect(windingResistanceAt(0.1, 120)).toBeCloseTo(0.1393, 12)
  })
})

describe('motors, controllers and pack at one throttle', () => {
  it('see R_s + M δ² R_b: 30 mΩ + 2 · 0.25 · 12 mΩ at half duty, 36 mΩ', () => {
    expect(lineAt(0.5).loopResistance).toBeCloseTo(0.036, 12)
  })

  it('draw 12 V/36 mΩ standing, 333 A, which the controller holds to 80 A', () => {
    const line = lineAt(0.5)
    expect(ampsAt({ ...line, cornerSpeed: -Infinity }, 0)).toBeCloseTo(333.333333333, 8)
    expect(ampsAt(line, 0)).toBe(80)
  })

  it('leave the limit where (δ V − ω K)/R is the limit: (12 − 2.88) V over K', () => {
    const { cornerSpeed, torqueConstant } = lineAt(0.5)
    expect(cornerSpeed * torqueConstant).toBeCloseTo(9.12, 12)
  })

  it('lose 1.5 A at the test’s speed, of which 0.9 A at rest', () => {
    const line = lineAt(1)
    expect(noLoadAmpsAt(line, 0)).toBeCloseTo(0.9, 12)
    // the free-run test: (22.2 V − 1.5 A · 25 mΩ)/K
    expect(noLoadAmpsAt(line, (22.2 - 1.5 * 0.025) / line.torqueConstant)).toBeCloseTo(1.5, 12)
  })

  it('push with K (I − I_0): 79.1 A at rest', () => {
    const line = lineAt(1)
    expect(torqueAt(line, 0) / line.torqueConstant).toBeCloseTo(79.1, 9)
  })

  it('are at full duty above the corner and at less below', () => {
    const line = lineAt(1)
    expect(dutyAt(line, line.cornerSpeed * 1.01)).toBe(1)
    expect(dutyAt(line, line.cornerSpeed * 0.5)).toBeLessThan(1)
  })
})

describe('the duty that passes a current', () => {
  it('brings back what it was asked for: Kirchhoff’s laws around motor and pack', () => {
    fc.assert(
      fc.property(machines, evenly(0.02, 0.9), evenly(0, 0.9), (any, part, share) => {
        const line = new DriveLine()
        setDriveLine(line, any, any.pack.fullVolts, 20, 1)
        const speed = (share * line.volts) / line.torqueConstant
        // up to what full throttle passes, or the pack's best where that is less
        const amps = part * ((line.volts - speed * line.torqueConstant) / line.loopResistance)
        const duty = dutyForAmps(line, amps, speed)
        if (Number.isNaN(duty)) return
        const packVolts = line.volts - line.count * duty * amps * line.packResistance
        const needed = amps * line.seriesResistance + speed * line.torqueConstant
        // 1e-9: where both roots meet half of the digits are lost, and they hardly do
        expect(Math.abs(duty * packVolts - needed)).toBeLessThan(1e-9 * line.volts)
        // the smaller root: the pack is not pulled below half
        expect(packVolts).toBeGreaterThanOrEqual(0.5 * line.volts * (1 - 1e-9))
      }),
      { numRuns: 300 },
    )
  })

  it('does not exist for a current that the pack cannot pass', () => {
    expect(dutyForAmps(lineAt(1), 5000, 1000)).toBeNaN()
  })
})
