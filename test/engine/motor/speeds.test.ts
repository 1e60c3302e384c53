import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestPointsOf } from '../../../shared-engine/motor/best-points.ts'
import {
  busRippleOf,
  dutyNearest,
  motorRippleOf,
  rippleShare,
  worstDuty,
} from '../../../shared-engine/motor/bus-ripple.ts'
import { ampsAt, DriveLine, setDriveLine, torqueAt } from '../../../shared-engine/motor/drive-line.ts'
import { freeSpeedAt, throttleForFreeSpeed, worstFreeSpeed } from '../../../shared-engine/motor/free-speed.ts'
import { stallAmpsOf, strongestDuty } from '../../../shared-engine/motor/standstill.ts'
import { apart, machines } from '../../laws/machines.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { evaluationOf, machineOfStored } from '../../fixtures/build/machine.ts'
import { evenly } from '../../fixtures/evenly.ts'

const plain = plainBuild()

describe('free running', () => {
  it('is at its worst hot where magnets weaken with heat, cold where they don’t', () => {
    const withMagnet = (magnet: 'ndfeb' | 'ignore') =>
      machineOfStored({ ...plain, motor: { ...plain.motor, magnet, maxTemperatureC: 140 } })
    const hot = withMagnet('ndfeb')
    expect(worstFreeSpeed(hot)).toBe(freeSpeedAt(hot, hot.pack.fullVolts, 140, 1))
    const cold = withMagnet('ignore')
    expect(worstFreeSpeed(cold)).toBe(freeSpeedAt(cold, cold.pack.fullVolts, 20, 1))
    expect(worstFreeSpeed(hot)).toBeGreaterThan(worstFreeSpeed(cold))
  })

  it('counts a full pack, whatever the charge given, and no accessories', () => {
    const full = evaluationOf(machineOfStored(plain))
    const half = evaluationOf(
      machineOfStored({
        ...plain,
        accessories: [{ name: 'lamps', watts: 60 }],
        service: { stateOfChargePercent: 50 },
      }),
    )
    expect(half.worstFreeSpeed).toBe(full.worstFreeSpeed)
    expect(half.drive.volts).toBeLessThan(full.drive.volts)
  })

  it('is 0 where friction holds the motor: never negative', () => {
    const stuck = { ...plain, motor: { ...plain.motor, resistanceMilliohm: 9000, noLoadAmps: 2 } }
    const machine = machineOfStored(stuck)
    expect(freeSpeedAt(machine, machine.pack.fullVolts, 20, 0.3)).toBe(0)
  })

  it('is the rated speed at the throttle that keeps it there', () => {
    let found = 0
    fc.assert(
      fc.property(machines, evenly(0.05, 1.2), (machine, share) => {
        const fastest = Math.max(
          freeSpeedAt(machine, machine.pack.fullVolts, 20, 1),
          freeSpeedAt(machine, machine.pack.fullVolts, machine.motor.maxTemperature, 1),
        )
        const wanted = share * fastest
        const duty = throttleForFreeSpeed(machine, wanted)
        if (Number.isNaN(duty)) {
          // full throttle reaches all up to its own free speed
          expect(share).toBeGreaterThan(1 - 1e-9)
          return
        }
        found += 1
        const capped = { ...machine, controller: { ...machine.controller, throttleCap: duty } }
        // 1e-9: closed form put back into the free speed
        expect(apart(worstFreeSpeed(capped), wanted)).toBeLessThan(1e-9)
        // the smallest such throttle: a little less is slower
        const less = { ...machine, controller: { ...machine.controller, throttleCap: duty * 0.99 } }
        expect(worstFreeSpeed(less)).toBeLessThan(wanted)
      }),
      { numRuns: 200 },
    )
    expect(found).toBeGreaterThan(50)
  })
})

describe('standing', () => {
  it('draws most at δ = √(R_s/(M R_b)) from a weak pack: 30 mΩ beside 120 mΩ, half throttle', () => {
    const machine = machineOfStored({
      ...plain,
      pack: { ...plain.pack, cellResistanceMilliohm: 20 },
      controller: { resistanceMilliohm: 5 },
      service: { packTemperatureC: 25 },
    })
    const line = new DriveLine()
    setDriveLine(line, machine, 24, 20, 1)
    expect(strongestDuty(line)).toBeCloseTo(0.5, 12)
    // 12 V over 30 mΩ + 0.25 · 120 mΩ
    expect(stallAmpsOf(line)).toBeCloseTo(200, 9)
    expect(ampsAt(line, 0)).toBeCloseTo(160, 9)
  })

  it('draws most at the cap from a stiff one', () => {
    const line = new DriveLine()
    setDriveLine(line, machineOfStored(plain), 24, 20, 0.7)
    expect(strongestDuty(line)).toBe(0.7)
    expect(stallAmpsOf(line)).toBeCloseTo(ampsAt(line, 0), 9)
  })
})

describe('best points of the curve', () => {
  it('are no worse than any other speed', () => {
    fc.assert(
      fc.property(machines, evenly(0.001, 0.999), (machine, share) => {
        const line = new DriveLine()
        setDriveLine(line, machine, machine.pack.fullVolts, 20, 1)
        const best = bestPointsOf(line)
        if (best === null) return
        const free = freeSpeedAt(machine, machine.pack.fullVolts, 20, 1)
        const speed = share * free
        // 1e-9: a search for a flat top
        expect(torqueAt(line, speed) * speed).toBeLessThanOrEqual(best.power.shaftPower * (1 + 1e-9))
        const amps = ampsAt(line, speed)
        const shaft = torqueAt(line, speed) * speed
        // all that goes into the motor: volts at its leads times amps
        const input = amps * (amps * line.motorResistance + speed * line.torqueConstant)
        expect(shaft / input).toBeLessThanOrEqual(best.efficiency.efficiency * (1 + 1e-9))
      }),
      { numRuns: 200 },
    )
  })
})

describe('ripple of the bus', () => {
  it('is half of the current at half duty, and 0.3 of it at a tenth: √(δ(1 − δ))', () => {
    expect(rippleShare('block', 0.5)).toBe(0.5)
    expect(rippleShare('block', 0.1)).toBeCloseTo(0.3, 12)
  })

  it('is 1.5625 V of 1 mF at 16 kHz, and 0.6 V more of 6 mΩ: I [δ(1 − δ)/(f C) + ESR]', () => {
    expect(busRippleOf(100, 0.5, 16_000, 0.001, 0)).toBeCloseTo(1.5625, 12)
    expect(busRippleOf(100, 0.5, 16_000, 0.001, 0.006)).toBeCloseTo(2.1625, 12)
  })

  it('follows from the square wave itself: charge summed over a period', () => {
    // on for δ with (1 − δ) I into the capacitor, off with δ I out of it
    const [amps, duty, frequency, capacitance] = [80, 0.3, 24_000, 0.0005]
    const charge = (1 - duty) * amps * (duty / frequency)
    expect(busRippleOf(amps, duty, frequency, capacitance, 0)).toBeCloseTo(charge / capacitance, 12)
    const square = duty * ((1 - duty) * amps) ** 2 + (1 - duty) * (duty * amps) ** 2
    expect(amps * rippleShare('block', duty)).toBeCloseTo(Math.sqrt(square), 12)
  })

  /** RMS about its mean of what three sines draw from the bus, from the switches' own states over a turn and a carrier. */
  function switchedRipple(depth: number): number {
    const [turns, carriers] = [720, 2000]
    let [sum, squares] = [0, 0]
    for (let turn = 0; turn < turns; turn += 1) {
      const sines = [0, 1, 2].map((phase) => Math.cos(2 * Math.PI * (turn / turns - phase / 3)))
      for (let carrier = 0; carrier < carriers; carrier += 1) {
        const height = (2 * (carrier + 0.5)) / carriers - 1
        const drawn = sines.reduce((all, sine) => all + (depth * sine > height ? sine : 0), 0)
        sum += drawn
        squares += drawn * drawn
      }
    }
    const count = turns * carriers
    return Math.sqrt(squares / count - (sum / count) ** 2)
  }

  it.each([0.2, 0.6126, 1])('of three sines of depth %s is what the switches draw, one by one', (depth) => {
    // A motor current of √(3/2) · 1/√2 has a phase of amplitude 1; 1e-3: 720 by 2000 points.
    const share = rippleShare('sine', (depth * Math.sqrt(3)) / 2) * (Math.sqrt(3) / 2)
    expect(Math.abs(share / switchedRipple(depth) - 1)).toBeLessThan(1e-3)
  })

  it('of three sines is at most 0.65 of the phase’s RMS: Kolar and Round, 2006, from memory', () => {
    const most = rippleShare('sine', worstDuty.sine) / Math.sqrt(2 / 3)
    expect(most).toBeCloseTo(0.65, 2)
    for (const other of [0.4, 0.5, 0.56, 0.7]) {
      expect(rippleShare('sine', other) / Math.sqrt(2 / 3)).toBeLessThanOrEqual(most)
    }
  })

  it('in the motor is 3.75 A of 24 V on 0.1 mH at 16 kHz: V δ(1 − δ)/(L f)', () => {
    expect(motorRippleOf(24, 0.5, 16_000, 1e-4)).toBeCloseTo(3.75, 12)
  })

  it('is worst at the duty nearest to the worst that standstill and cap leave', () => {
    expect(dutyNearest(0.5, 0.1, 1)).toBe(0.5)
    expect(dutyNearest(0.5, 0.1, 0.4)).toBe(0.4)
    expect(dutyNearest(0.5, 0.7, 1)).toBe(0.7)
    expect(dutyNearest(0.5, 0.7, 0.6)).toBe(0.6)
  })
})
