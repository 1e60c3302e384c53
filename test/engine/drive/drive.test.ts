import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { machineOf } from '../../../shared-engine/machine/machine.ts'
import { completeBuild, readBuildValue } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { check } from '../../../shared-engine/check.ts'
import { chemistryOf } from '../../../shared-engine/reference/chemistry.ts'
import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { peakNames } from '../../../shared-engine/drive/reading.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import type { PatternRowPart } from '../../../shared-engine/machine/parts.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { plausibleBuild } from '../../fixtures/build/random.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'
import { solvedByOdex } from '../numeric/odex.ts'
import { evenly } from '../../fixtures/evenly.ts'

function buildOf(stored: StoredBuild): Build {
  const read = readBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return read.value
}

const pattern = (...rows: PatternRowPart[]): Pattern => ({ name: 'demo: test', notes: '', rows })
const throttle = (seconds: number, share: number, grade: number | null = null) =>
  plainRow('throttle', share, seconds, grade)
const speed = (seconds: number, metresPerSecond: number, grade: number | null = null) =>
  plainRow('speed', metresPerSecond, seconds, grade)
const last = (run: DriveRun) => run.series.at(-1) ?? run.series[0]

/** Demo data: a big pack, so that charge hardly moves, and a geared machine. */
function steadyBuild(changes: Partial<StoredBuild> = {}): StoredBuild {
  const plain = simpleBuild()
  return {
    ...plain,
    pack: { ...plain.pack, capacityMah: 200_000 },
    motor: { ...plain.motor, viscousPercent: 0 },
    service: { packTemperatureC: 25 },
    stages: [{ kind: 'fixed', ratio: 6, efficiencyPercent: 95 }],
    vehicle: { massKg: 12, frontalAreaM2: 0.1, dragCoefficient: 0.9 },
    ground: { ...plain.ground, model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 3 },
    ...changes,
  }
}

test('a pack that empties until it cannot feed its pump has numbers to the end', () => {
  const plain = simpleBuild()
  const asked = (cellResistanceMilliohm: number) =>
    readBuildValue({
      ...plain,
      pack: { ...plain.pack, capacityMah: 4000, cellResistanceMilliohm },
      service: { ...plain.service, packTemperatureC: 55 },
      accessories: [{ name: 'pump', watts: 400, volts: 12, converterEfficiencyPercent: 100 }],
    })
  // As much resistance as the rules let pass at the charge that it starts with.
  const read = Array.from({ length: 195 }, (_, down) => asked(200 - down)).find(({ ok }) => ok)
  if (read?.ok !== true) throw new Error('no such build')
  const { series } = runDrive(read.value, pattern(throttle(3000, 0.02)))
  // It came to no number, and the drive to its end, in the third second.
  expect(series.at(-1)?.seconds).toBeGreaterThan(300)
  const wrong = series.flatMap((moment) =>
    Object.entries(moment).filter(([, value]) => typeof value === 'number' && !Number.isFinite(value)),
  )
  expect(wrong).toEqual([])
})

describe('closed forms', () => {
  test('a stalled motor at its current limit warms as the linear equation says', () => {
    const stored = steadyBuild({
      controller: { currentLimitAmps: 20 },
      vehicle: { massKg: 12, towForceN: 5000 },
    })
    const motor = { ...stored.motor, heatCapacityJPerK: 90, thermalResistanceKPerW: 1.5, maxTemperatureC: 60 }
    const build = buildOf({ ...stored, motor })
    const run = runDrive(build, pattern(throttle(300, 1)))
    // C dT/dt = I² R_20 (1 + α (T − 20)) − (T − T_s)/R_th with α = 0.00393 (IEC 60028), from 15 °C: an exponential.
    const copper = 20 ** 2 * 0.025
    const rate = (1 / 1.5 - copper * 0.00393) / 90
    const steady = (15 / 1.5 + copper * (1 - 20 * 0.00393)) / (1 / 1.5 - copper * 0.00393)
    const expected = steady + (15 - steady) * Math.exp(-rate * 300)
    // 1e-7: steps of 1e-9 each, some hundred of them.
    expect(Math.abs((last(run)?.winding ?? NaN) / expected - 1)).toBeLessThan(1e-7)
    expect(run.motorAmpsRms).toBeCloseTo(20, 9)
    expect(run.metres).toBe(0)
  })

  test('the moment a limit is passed', () => {
    const stored = steadyBuild({
      controller: { currentLimitAmps: 40 },
      vehicle: { massKg: 12, towForceN: 5000 },
    })
    const motor = { ...stored.motor, heatCapacityJPerK: 90, thermalResistanceKPerW: 1.5, maxTemperatureC: 45 }
    const run = runDrive(buildOf({ ...stored, motor }), pattern(throttle(300, 1)))
    const passed = run.watched.find(({ id }) => id === 'motor.temperature')?.passedAt ?? NaN
    // C dT/dt = p + a (T − 15), p the loss at 15 °C and a what each kelvin adds: t = (C/a) ln(1 + a · 30/p).
    const copper = 40 ** 2 * 0.025
    const [loss, growth] = [copper * (1 - 5 * 0.00393), copper * 0.00393 - 1 / 1.5]
    const expected = (90 / growth) * Math.log1p((30 * growth) / loss)
    // 1e-6: the continuous extension between steps is of order 4.
    expect(Math.abs(passed / expected - 1)).toBeLessThan(1e-6)
  })

  test('constant power empties a pack by its energy: ∫ V_oc dq = P t where nothing is lost', () => {
    const stored = steadyBuild({ accessories: [{ name: 'heater', watts: 50 }] })
    const pack = { ...stored.pack, capacityMah: 2000, cellResistanceMilliohm: 0.05 }
    const run = runDrive(buildOf({ ...stored, pack }), pattern(throttle(1200, 0)))
    const { charge, volts } = chemistryOf('lipo')
    // The curve is piecewise linear (reference/chemistry.json): its integral from full down is a sum of trapezia.
    let energy = 0
    for (let at = charge.length - 1; at > 0; at -= 1) {
      const [low, high] = [Math.max(charge[at - 1] ?? 0, run.chargeLeft), charge[at] ?? 1]
      if (low >= high) continue
      const slope = ((volts[at] ?? 0) - (volts[at - 1] ?? 0)) / ((charge[at] ?? 0) - (charge[at - 1] ?? 0))
      const middle = (volts[at - 1] ?? 0) + slope * ((low + high) / 2 - (charge[at - 1] ?? 0))
      energy += 6 * middle * (high - low) * 7200
    }
    // 1e-6: steps over the corners of the charge curve; the pack's own loss, I² R, is in the book.
    expect(Math.abs(energy / (50 * 1200 + run.energy.sinks.packLoss) - 1)).toBeLessThan(1e-6)
    expect(run.energy.sinks.packLoss).toBeLessThan(1e-3 * energy)
  })

  test('a wanted speed within reach is approached exponentially in 1 s', () => {
    const run = runDrive(buildOf(steadyBuild()), pattern(speed(4, 0.3)))
    const sample = last(run)
    // v = v* (1 − e^(−t/τ)), s = v* (t − τ (1 − e^(−t/τ))). 1e-7: steps of 1e-9.
    expect(Math.abs((sample?.speed ?? NaN) / (0.3 * (1 - Math.exp(-4))) - 1)).toBeLessThan(1e-7)
    expect(Math.abs((sample?.distance ?? NaN) / (0.3 * (4 - 1 + Math.exp(-4))) - 1)).toBeLessThan(1e-7)
  })

  test('coasting on rolling resistance alone stops after v²/(2 c_rr g) and stays', () => {
    const plain = simpleBuild()
    // No motor drag to speed of, no air, no loop: what is left is rolling resistance, not quite alone.
    const motor = { ...plain.motor, noLoadAmps: 0 }
    const track = { ...plain.track, massGPerM: 100 }
    const build = buildOf({ ...plain, motor, track, pack: { ...plain.pack, capacityMah: 200_000 } })
    const run = runDrive(build, pattern(throttle(3, 1), throttle(60, 0)))
    const release = run.series.find(({ seconds }) => seconds >= 3)
    const from = release?.speed ?? NaN
    const mass = 12 + 0.1 * 60 * 0.02
    // ½ m_e v² = c_rr m g s with the loop counted once more. 1e-6: 1e-9 a step, and the stop is an event.
    const distance = (mass * from ** 2) / (2 * 0.08 * 12 * 9.80665)
    expect(Math.abs(((last(run)?.distance ?? NaN) - (release?.distance ?? NaN)) / distance - 1)).toBeLessThan(
      1e-6,
    )
    expect(last(run)?.speed).toBe(0)
    expect(last(run)?.packAmps).toBe(0)
  })
})

describe('beside what check gives', () => {
  test('the run from rest takes the time of secondsTo80Top, and ends at top speed', () => {
    const build = buildOf(steadyBuild({ controller: { currentLimitAmps: 100 } }))
    const { secondsTo80Top, topSpeedMps, topPackAmps, metresTo80Top } = check(build).figures
    const run = runDrive(build, pattern(throttle(secondsTo80Top ?? NaN, 1)))
    // 1e-4: 200 Ah lose some 1e-5 of their charge on the way, and the volts with it.
    expect(Math.abs((last(run)?.speed ?? NaN) / (0.8 * (topSpeedMps ?? NaN)) - 1)).toBeLessThan(1e-4)
    expect(Math.abs(run.metres / (metresTo80Top ?? NaN) - 1)).toBeLessThan(1e-4)
    const long = last(runDrive(build, pattern(throttle(60, 1))))
    // 1e-3: after a minute at full throttle 0.1 % of the charge is gone.
    expect(Math.abs((long?.speed ?? NaN) / (topSpeedMps ?? NaN) - 1)).toBeLessThan(2e-3)
    expect(Math.abs((long?.packAmps ?? NaN) / (topPackAmps ?? NaN) - 1)).toBeLessThan(5e-3)
  })

  test('half of top speed on the level draws the cruise figure', () => {
    const build = buildOf(steadyBuild())
    const { topSpeedMps, cruiseHalfTopPackAmps } = check(build).figures
    const run = runDrive(build, pattern(speed(30, (topSpeedMps ?? NaN) / 2, 0)))
    // 1e-3: charge, as above.
    expect(Math.abs((last(run)?.packAmps ?? NaN) / (cruiseHalfTopPackAmps ?? NaN) - 1)).toBeLessThan(1e-3)
  })
})

test('odex agrees on the same drive, its equations written here anew', () => {
  const stored = steadyBuild()
  const motor = {
    ...stored.motor,
    heatCapacityJPerK: 60,
    thermalResistanceKPerW: 2,
    magnet: 'ferrite' as const,
  }
  const build = buildOf({ ...stored, motor, pack: { ...simpleBuild().pack, capacityMah: 1500 } })
  const { pack, ground } = machineOf(build)
  // Part throttle on the level: below the grip, charge in the upper straight piece of the curve.
  const duty = 0.12
  const seconds = 20
  const { charge, volts } = chemistryOf('lipo')
  const ocv = (soc: number) => {
    const at = charge.findIndex((point) => point >= soc)
    const [c0, c1] = [charge[at - 1] ?? 0, charge[at] ?? 1]
    return (volts[at - 1] ?? 0) + (((volts[at] ?? 0) - (volts[at - 1] ?? 0)) * (soc - c0)) / (c1 - c0)
  }
  const radius = (0.02 * 12) / (2 * Math.PI)
  const weight = 12 * 9.80665
  const slopes = (_: number, [drawn = 0, winding = 0, v = 0]: readonly number[]) => {
    const kt = (60 / (2 * Math.PI * 500)) * (1 - 0.002 * (winding - 20))
    const rm = 0.025 * (1 + 0.00393 * (winding - 20))
    const omega = (v * 6) / radius
    const amps = (duty * 6 * ocv(1 - drawn / 5400) - omega * kt) / (rm + duty ** 2 * pack.resistance)
    const thrust = (kt * (amps - 1.5) * 6 * 0.95) / radius
    const resistance = 0.08 * weight + 0.5 * ground.airDensity * 0.09 * v ** 2
    const loss = amps ** 2 * rm + omega * kt * 1.5 - (winding - 15) / 2
    return [duty * amps, loss / 60, (thrust - resistance) / (12 + 0.6 * 1.2)]
  }
  const [drawn = NaN, winding = NaN, v = NaN] = solvedByOdex(slopes, 0, [0, 15, 0], seconds)
  const run = runDrive(build, pattern(throttle(seconds, duty)))
  expect(run.series.every(({ slip }) => slip === 0)).toBe(true)
  // 1e-6: both follow the kinks of the charge curve with small steps.
  expect(Math.abs(run.chargeDrawn / drawn - 1)).toBeLessThan(1e-6)
  expect(Math.abs((last(run)?.winding ?? NaN) / winding - 1)).toBeLessThan(1e-6)
  expect(Math.abs((last(run)?.speed ?? NaN) / v - 1)).toBeLessThan(1e-6)
})

describe('the book of energy', () => {
  const anyRow = fc.record({
    seconds: evenly(0.5, 40),
    asked: fc.oneof(
      fc.tuple(fc.constant('throttle' as const), fc.constantFrom(0, 0.1, 0.4, 1)),
      fc.tuple(fc.constant('speed' as const), fc.constantFrom(0, 0.5, 2, 6)),
      fc.tuple(fc.constant('topShare' as const), fc.constantFrom(0.5, 1.1)),
      fc.tuple(fc.constant('brake' as const), fc.constantFrom(0, 0.3, 1)),
    ),
    grade: fc.constantFrom(null, 0, 0.1, 0.3, -0.05, -0.3),
    load: fc.constantFrom(null, 0, 5),
    tow: fc.constantFrom(null, 0, 10),
    gripShare: fc.constantFrom(1, 0.4, 1.5),
    resistanceShare: fc.constantFrom(1, 2),
    turnShare: fc.constantFrom(0, 0, 0.2),
    brakeAmps: fc.constantFrom(0, 20),
    brakeForceN: fc.constantFrom(0, 15),
  })

  test('balances to 1e-6 over any drive of any machine, braking, turning and spinning with it', () => {
    fc.assert(
      fc.property(plausibleBuild, fc.array(anyRow, { minLength: 1, maxLength: 5 }), (stored, drawn) => {
        const rows = drawn.map(({ asked: [kind, value], seconds, grade, ...rest }) => {
          const { load, tow, gripShare, resistanceShare, turnShare } = rest
          return { seconds, kind, value, grade, load, tow, gripShare, resistanceShare, turnShare }
        })
        const [{ brakeAmps = 0, brakeForceN = 0 } = {}] = drawn
        const build = completeBuild({
          ...stored,
          controller: { ...stored.controller, brakeAmps },
          vehicle: { ...stored.vehicle, brakeForceN },
        })
        const run = runDrive(build, pattern(...rows))
        expect(run.end).not.toBe('too-stiff')
        const { pack, sinks, motion, missing, rest } = run.energy
        const { steps, ...others } = rest
        const all = [pack, motion, ...Object.values(sinks), ...Object.values(others)]
        const turnedOver = all.reduce((sum, one) => sum + Math.abs(one), 0)
        expect(Math.abs(steps)).toBeLessThanOrEqual(1e-6 * turnedOver + 1e-3)
        const left = Object.values(others).reduce((sum, one) => sum + one, steps)
        expect(Math.abs(missing - left)).toBeLessThanOrEqual(1e-9 * turnedOver)
        // Losses are losses: nothing that only wears or warms gives energy back. 1 mJ: the steps' floor.
        // Slip is thrust times (belt less ground): where the ground turns a heavy rotor downhill, thrust is below zero.
        const { climb: _climb, slip: _slip, ...losses } = sinks
        for (const loss of Object.values(losses)) expect(loss).toBeGreaterThan(-1e-3 - 1e-6 * turnedOver)
        expect(rest.wheelBrake).toBeGreaterThan(-1e-3 - 1e-6 * turnedOver)
        for (const sample of run.series) {
          expect(sample.speed).toBeGreaterThanOrEqual(0)
          expect(sample.motorAmps).toBeGreaterThanOrEqual(-brakeAmps)
        }
      }),
      { numRuns: 40, seed: 4, endOnFailure: true },
    )
  })

  test('and so does the heat: made is stored or given to the air', () => {
    const stored = steadyBuild({
      cooling: { kind: 'liquid', flowLPerMin: 3, coolant: 'glycol30', radiatorWPerK: 8 },
    })
    const motor = { ...stored.motor, heatCapacityJPerK: 60, thermalResistanceKPerW: 0.5 }
    const controller = { resistanceMilliohm: 4, heatCapacityJPerK: 40, thermalResistanceKPerW: 0.7 }
    const build = buildOf({ ...stored, motor, controller })
    const run = runDrive(build, pattern(throttle(120, 0.6), throttle(60, 0)))
    const { cooling, pack } = machineOf(build)
    const end = last(run)
    // 0.2 l of coolant where nothing else is said.
    const coolant = (cooling?.density ?? 0) * (cooling?.specificHeat ?? 0) * 2e-4
    const stored60 =
      60 * ((end?.winding ?? NaN) - 15) +
      40 * ((end?.controller ?? NaN) - 15) +
      coolant * ((end?.coolant ?? NaN) - 15) +
      pack.heatCapacity * ((end?.pack ?? NaN) - 25)
    // 1e-6: steps of 1e-9.
    expect(Math.abs((run.heatMade - run.heatToAir) / stored60 - 1)).toBeLessThan(1e-6)
  })
})

test('it climbs by the sine of the slope: 3 in 4 for 0.6 of the way', () => {
  const run = runDrive(buildOf(steadyBuild()), pattern(speed(20, 0.5, 0.75), speed(5, 0.5, 0)))
  const at = run.series.find(({ seconds }) => seconds >= 20)
  // 1e-9: one integral over the other.
  expect(Math.abs((at?.height ?? NaN) / (0.6 * (at?.distance ?? NaN)) - 1)).toBeLessThan(1e-9)
  expect(last(run)?.height).toBeCloseTo(at?.height ?? NaN, 9)
})

describe('how it ends and what it keeps', () => {
  test('a winding past 300 °C ends the drive: nothing after that is told', () => {
    const stored = steadyBuild({ vehicle: { massKg: 12, towForceN: 5000 } })
    const motor = { ...stored.motor, heatCapacityJPerK: 20, thermalResistanceKPerW: 5 }
    const run = runDrive(buildOf({ ...stored, motor }), pattern(throttle(60, 1)))
    expect(run.end).toBe('too-hot')
    // 1e-6: the event is found as a root of the continuous extension.
    expect(Math.abs((last(run)?.winding ?? NaN) / 300 - 1)).toBeLessThan(1e-6)
  })

  test('the drive ends where the charge reaches the reserve', () => {
    const stored = steadyBuild({ service: { reservePercent: 90, packTemperatureC: 25 } })
    const run = runDrive(
      buildOf({ ...stored, pack: simpleBuild().pack }),
      pattern(speed(7200, 2), throttle(10, 1)),
    )
    expect(run.end).toBe('reserve')
    // 1e-9: the event is found as a root.
    expect(Math.abs(run.chargeLeft - 0.9)).toBeLessThan(1e-9)
    expect(run.seconds).toBeLessThan(7200)
  })

  test('a hill too steep holds it at rest, a hill down lets it roll, and it never rolls back', () => {
    const build = buildOf(steadyBuild())
    const up = runDrive(build, pattern(throttle(5, 0.02, 0.5)))
    expect(up.metres).toBe(0)
    expect(up.energy.sinks.copper).toBeGreaterThan(0)
    expect(runDrive(build, pattern(throttle(5, 0.02, -0.6))).metres).toBeGreaterThan(0)
    expect(runDrive(build, pattern(throttle(5, 0.0001, -0.02))).metres).toBe(0)
    // A shut throttle holds at rest: brakes and friction are the driver's matter there.
    expect(runDrive(build, pattern(throttle(5, 0, -0.6))).metres).toBe(0)
  })

  test('peaks are in the thinned series', () => {
    const build = buildOf(steadyBuild())
    const rows = Array.from({ length: 60 }, (_, at) => throttle(3, at % 3 === 0 ? 0.9 : 0))
    const run = runDrive(build, pattern(...rows))
    for (const name of peakNames) {
      const peak = run.peaks[name]
      if (name === 'spinUpMotorAmps' || peak === null) continue
      expect(run.series.map((sample) => sample[name])).toContain(peak.value)
    }
  })
})
