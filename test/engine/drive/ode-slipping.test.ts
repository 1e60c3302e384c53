import { expect, it } from 'vitest'
import { Footing, setLevelFooting } from '../../../shared-engine/ground/footing.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import { terrains } from '../../../shared-engine/reference/ground.ts'
import { machineOfStored, readBuildOf } from '../../fixtures/build/machine.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { solvedByOdex } from '../numeric/odex.ts'

// Tracks that spin on the spot, and tracks that slip in soil, through time: the equations of `docs/model.md` §7 written here
// anew and solved by odex. Charge and cells are held, so that the volts stand still.

const plain = plainBuild()
const build = (ground: StoredBuild['ground']): StoredBuild => ({
  ...plain,
  pack: { chemistry: 'lifepo4', series: 8, capacityMah: 20_000, cellResistanceMilliohm: 0.05 },
  controller: { resistanceMilliohm: 4 },
  motor: {
    ...plain.motor,
    kvRpmPerVolt: 180,
    resistanceMilliohm: 80,
    noLoadAmps: 1,
    noLoadVolts: 24,
    viscousPercent: 50,
    magnet: 'ignore',
    rotorInertiaGcm2: 3000,
  },
  stages: [{ kind: 'fixed', ratio: 6, efficiencyPercent: 92, drivenInertiaGcm2: 4000 }],
  track: {
    count: 1,
    pitchMm: 30,
    sprocketTeeth: 12,
    loopPitches: 60,
    massGPerM: 1200,
    internalDragN: 6,
    internalDragNPerMps: 2,
  },
  vehicle: { massKg: 35, contactLengthMm: 800, contactWidthMm: 250, frontalAreaM2: 0.5, dragCoefficient: 1 },
  ground,
  service: { stateOfChargePercent: 50, packTemperatureC: 25 },
})

const radius = (12 * 0.03) / (2 * Math.PI)
const constant = 60 / (2 * Math.PI * 180)
const testSpeed = (24 - 1 * 0.08) / constant
const motors = plain.motor.count ?? 1
const spun = 1.2 * 60 * 0.03 + (motors * 3e-4 * 36 + motors * 4e-4) / radius ** 2

const driven = (stored: StoredBuild, throttle: number, seconds: number, tow = 0): DriveRun =>
  runDrive(
    readBuildOf(stored),
    { name: 'demo', notes: '', rows: [{ ...plainRow('throttle', throttle, seconds), tow }] },
    { held: { charge: true, packTemperature: true } },
  )

/** Amps of one motor and the force of all at the belt; the winding is not followed: 20 °C entered, magnets left out. */
function pushAt(open: number, packOhm: number, duty: number, belt: number, motorOhm: number) {
  const turning = (belt * 6) / radius
  const amps = (duty * open - turning * constant) / (motorOhm + 0.004 + motors * duty ** 2 * packOhm)
  const idle = 1 * (0.5 + (0.5 * turning) / testSpeed)
  return { amps, force: (motors * constant * (amps - idle) * 6 * 0.92) / radius - 6 - 2 * belt }
}

/** What both runs share: the pack at rest, and the warm winding’s ohms. */
function electrics(stored: StoredBuild) {
  const machine = machineOfStored(stored)
  const ohm = 0.08 * (1 + 0.00393 * (machine.service.windingTemperature - 20))
  return { machine, open: machine.pack.openVolts, packOhm: machine.pack.resistance, motorOhm: ohm }
}

it('on ice the belt spins up while the machine creeps off: m v̇ = F_max − R, m_r v̇_b = F_m(v_b) − F_max', () => {
  const stored = build({ model: 'coefficient', rollingCoefficient: 0.03, gripCoefficient: 0.08 })
  const { machine, open, packOhm, motorOhm } = electrics(stored)
  const weight = 35 * 9.80665
  const air = 0.5 * machine.ground.airDensity * 0.5
  const slopes = (_time: number, [speed = 0, belt = 0]: readonly number[]) => {
    const { amps, force } = pushAt(open, packOhm, 0.8, belt, motorOhm)
    return [
      ((0.08 - 0.03) * weight - air * speed ** 2) / 35,
      (force - 0.08 * weight) / spun,
      speed,
      amps ** 2,
    ]
  }
  for (const seconds of [0.15, 4]) {
    const run = driven(stored, 0.8, seconds)
    const [speed = NaN, belt = NaN, metres = NaN, squares = NaN] = solvedByOdex(
      slopes,
      0,
      [0, 0, 0, 0],
      seconds,
    )
    const end = run.series.at(-1)
    expect(run.spinSeconds).toBeCloseTo(seconds, 6)
    expect(belt).toBeGreaterThan(1.5 * speed)
    const found = [end?.speed, ((end?.motorRpm ?? NaN) * Math.PI * radius) / 30 / 6, end?.distance]
    for (const [place, value] of [speed, belt, metres].entries())
      // 1e-6: what is owed of integrals
      expect(Math.abs((found[place] ?? NaN) / value - 1), `state ${place}`).toBeLessThan(1e-6)
    expect(Math.abs((run.motorAmpsRms ** 2 * seconds) / squares - 1)).toBeLessThan(1e-6)
  }
})

it('in soil the slip is the root of F_s(i) = F_m(v/(1 − i)) at every instant: m_g v̇ = F_s − R', () => {
  /** N of a sled. */
  const tow = 60
  const loam = [...terrains.values()].find(({ soil }) => !(soil.snow ?? false) && soil.cohesionKpa > 1)
  if (loam === undefined) throw new Error('no soil')
  const stored = build({ model: 'soil', soil: loam.soil })
  const { machine, open, packOhm, motorOhm } = electrics(stored)
  const footing = new Footing()
  setLevelFooting(footing, machine)
  const air = 0.5 * machine.ground.airDensity * 0.5
  /** Janosi and Hanamoto, 1961, over the patch. */
  const held = (slip: number) => {
    const x = slip * footing.fullShear
    return x === 0 ? 0 : footing.shearStrength * (1 - -Math.expm1(-x) / x)
  }
  const slopes = (_time: number, [speed = 0]: readonly number[]) => {
    // The solver looks at rest too, where the belt’s own speed is the unknown: the limit of small speeds.
    const at = Math.max(speed, 1e-9)
    let [low, high] = [0, 1]
    for (let halved = 0; halved < 60; halved += 1) {
      const slip = (low + high) / 2
      const { force } = pushAt(open, packOhm, 0.8, at / (1 - slip), motorOhm)
      if (held(slip) < force) low = slip
      else high = slip
    }
    const thrust = held((low + high) / 2)
    return [(thrust - footing.groundResistance - tow - air * speed ** 2) / (35 + spun), speed]
  }
  for (const seconds of [0.5, 3]) {
    const run = driven(stored, 0.8, seconds, tow)
    const [speed = NaN, metres = NaN] = solvedByOdex(slopes, 0, [0, 0], seconds, 1e-10)
    const end = run.series.at(-1)
    expect(end?.slip).toBeGreaterThan(0.001)
    // 1e-6: as above
    expect(Math.abs((end?.speed ?? NaN) / speed - 1)).toBeLessThan(1e-6)
    expect(Math.abs((end?.distance ?? NaN) / metres - 1)).toBeLessThan(1e-6)
  }
})
