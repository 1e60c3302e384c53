import { expect, it } from 'vitest'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { chemistryOf } from '../../../shared-engine/reference/chemistry.ts'
import { coolantOf, coolantViscosity } from '../../../shared-engine/reference/coolants.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { solvedByOdex } from '../numeric/odex.ts'

// What `ode.test.ts` leaves out: a speed held up and down hill, turns, brakes of motor and wheel, a shut throttle, a motor
// of two nodes, a jacket in turbulent flow, switching losses, cells that shed heat. Its equations are written here anew
// from the text of `docs/model.md` §§2, 3, 5 and 7 and solved by odex; nothing of the engine but its tables.

/** Demo data: two motors of two nodes that charge while they brake, on the coefficients of firm snow. */
const stored: StoredBuild = {
  format: 'pitchline-build',
  version: 2,
  name: 'demo: up, round and down',
  pack: {
    chemistry: 'lipo',
    series: 12,
    parallel: 2,
    capacityMah: 9000,
    cellResistanceMilliohm: 6,
    wiringResistanceMilliohm: 3,
    massKg: 3,
    thermalResistanceKPerW: 2,
  },
  controller: {
    resistanceMilliohm: 3,
    heatCapacityJPerK: 80,
    thermalResistanceKPerW: 1.2,
    pwmKhz: 24,
    switchingNs: 120,
    deadTimeNs: 300,
    diodeVolts: 0.8,
    brakeAmps: 9,
  },
  motor: {
    count: 2,
    kvRpmPerVolt: 150,
    resistanceMilliohm: 60,
    noLoadAmps: 1.2,
    noLoadVolts: 50,
    viscousPercent: 40,
    poleCount: 28,
    ratedMaxRpm: 9000,
    magnet: 'ferrite',
    rotorInertiaGcm2: 800,
    windingHeatCapacityJPerK: 40,
    caseHeatCapacityJPerK: 260,
    windingToCaseKPerW: 0.5,
    caseToSinkKPerW: 0.7,
    maxTemperatureC: 200,
  },
  stages: [{ kind: 'fixed', ratio: 5, efficiencyPercent: 94, drivenInertiaGcm2: 2000 }],
  track: {
    count: 2,
    pitchMm: 30,
    sprocketTeeth: 14,
    loopPitches: 60,
    massGPerM: 1500,
    internalDragN: 12,
    internalDragNPerMps: 3,
  },
  vehicle: {
    massKg: 60,
    loadKg: 15,
    frontalAreaM2: 0.4,
    dragCoefficient: 0.9,
    brakeForceN: 25,
    gaugeMm: 700,
    contactLengthMm: 900,
    contactWidthMm: 200,
  },
  ground: {
    model: 'coefficient',
    rollingCoefficient: 0.06,
    gripCoefficient: 1.5,
    slipPercent: 6,
    turnFriction: 0.4,
    airTemperatureC: -5,
    altitudeM: 1200,
  },
  cooling: {
    kind: 'liquid',
    flowLPerMin: 3,
    coolant: 'glycol30',
    radiatorWPerK: 8,
    airWPerK: 30,
    testFlowLPerMin: 6,
    tankLitres: 0.5,
  },
  accessories: [{ name: 'lamps', watts: 45, converterEfficiencyPercent: 90 }],
  service: { packTemperatureC: 5, stateOfChargePercent: 97 },
}

interface Row {
  readonly seconds: number
  /** m/s, or the share of all brakes. */
  readonly speed?: number
  readonly brake?: number
  readonly grade: number
  readonly turn: number
  readonly resistance: number
}

// No row comes to a stop, which is an event and no equation; no wheels lock.
const rows: readonly Row[] = [
  { seconds: 40, speed: 2.2, grade: 0.06, turn: 0, resistance: 1 },
  { seconds: 25, speed: 1.6, grade: 0, turn: 0.25, resistance: 1.4 },
  { seconds: 30, speed: 3.4, grade: -0.25, turn: 0, resistance: 1 },
  { seconds: 0.9, brake: 0.5, grade: 0, turn: 0, resistance: 1 },
  { seconds: 2.4, brake: 0, grade: -0.05, turn: 0, resistance: 1 },
]

const { charge, volts } = chemistryOf('lipo')
function restingVolts(share: number): number {
  const at = charge.findIndex((point) => point >= share)
  const [low, high] = [charge[at - 1] ?? 0, charge[at] ?? 1]
  const [under, over] = [volts[at - 1] ?? 0, volts[at] ?? 0]
  return 12 * (under + ((over - under) * (share - low)) / (high - low))
}

const radius = (14 * 0.03) / (2 * Math.PI)
const cellsOhm = (celsius: number) => ((12 * 0.006) / 2) * 2 ** ((25 - celsius) / 20)
const coldConstant = 60 / (2 * Math.PI * 150)
const testSpeed = (50 - 1.2 * 0.06) / coldConstant
const gravity = 9.80665
const airDensity = (101_325 * (1 - 2.25577e-5 * 1200) ** 5.25588) / (287.05287 * 268.15)
const turningMass = (2 * 1.5 * 60 * 0.03 + (2 * (8e-5 * 25 + 2e-4)) / radius ** 2) / 0.94
const mass = 75 + turningMass
const coolant = coolantOf('glycol30')
const volumetricHeat = coolant.density * coolant.specificHeat
const toInlet = (resistance: number, rate: number) => 2 / (rate * (1 - Math.exp(-2 / (resistance * rate))))
/** J/(kg·K) of lithium polymer cells, the engine's table. */
const cellsCapacity = 3 * 1040

/** What one motor does for a force at the track, and what it takes from the pack. */
interface Draw {
  readonly amps: number
  readonly turning: number
  readonly idle: number
  readonly drawn: number
  /** N by which the motors hold less back than is asked: the wheel brake's. */
  readonly short: number
}

interface Electrics {
  readonly constant: number
  readonly motorOhm: number
  readonly packOhm: number
  /** V at the leads with the lamps alone. */
  readonly left: number
}

const idleAt = (turning: number) => 1.2 * (0.6 + (0.4 * turning) / testSpeed)

/** δ of δ (V − 2 δ I R_b) = ω K + I R, either sign of I, times 2 I. */
function drawnBy(e: Electrics, amps: number, turning: number): number {
  if (amps === 0) return 0
  const needed = turning * e.constant + amps * (e.motorOhm + 0.003)
  const duty = (e.left - Math.sqrt(e.left ** 2 - 8 * amps * e.packOhm * needed)) / (4 * amps * e.packOhm)
  return 2 * duty * amps
}

function chargingAmps(e: Electrics, turning: number): number {
  return Math.min(9, (turning * e.constant) / (e.motorOhm + 0.003))
}

/** T = (F + D) r/(G η M), η on top where the track drives; I = T/K + I_0, at least −b I_br where F < 0, else 0. */
function drawFor(e: Electrics, force: number, belt: number, share: number): Draw {
  const turning = (belt * 5) / radius
  const drag = 12 + 3 * belt
  const perTorque = (2 * 5 * 0.94) / radius
  const torque = ((force + drag) / perTorque) * (force + drag < 0 ? 0.94 ** 2 : 1)
  const wanted = torque / e.constant + idleAt(turning)
  const least = force < 0 ? -share * chargingAmps(e, turning) : 0
  const amps = Math.max(wanted, least)
  const given = e.constant * (amps - idleAt(turning)) * perTorque * (amps > idleAt(turning) ? 1 : 0.94 ** -2)
  return {
    amps,
    turning,
    idle: idleAt(turning),
    drawn: drawnBy(e, amps, turning),
    short: amps === wanted ? 0 : given - drag - force,
  }
}

/** A turn on the spot: belts at half the speed, T = (F_p + D/2) r/(G η) · 2/M. */
function drawInTurn(e: Electrics, speed: number, resistance: number): Draw {
  const turning = ((speed / 2) * 5) / radius
  const weight = 75 * gravity
  const push = (0.4 * weight * 0.9) / (4 * 0.7) + (resistance * 0.06 * weight) / 2 + (12 + 1.5 * speed) / 2
  const amps = (push * radius) / (5 * 0.94) / e.constant + idleAt(turning)
  return { amps, turning, idle: idleAt(turning), drawn: drawnBy(e, amps, turning), short: 0 }
}

function slopesAt(row: Row, state: readonly number[]): number[] {
  const [drawn = 0, speed = 0, , winding = 0, shell = 0, controller = 0, feed = 0, cells = 0] = state
  const packOhm = cellsOhm(cells) + 0.003
  const open = restingVolts(0.97 - drawn / 32_400)
  const lamps = (open - Math.sqrt(open ** 2 - 4 * packOhm * 50)) / (2 * packOhm)
  const e = {
    constant: coldConstant * (1 - 0.002 * (winding - 20)),
    motorOhm: 0.06 * (1 + 0.00393 * (winding - 20)),
    packOhm,
    left: open - lamps * packOhm,
  }
  const slope = Math.atan(row.grade)
  const weight = 75 * gravity
  const air = 0.5 * airDensity * 0.9 * 0.4 * speed ** 2
  const resistance = row.resistance * 0.06 * weight * Math.cos(slope) + weight * Math.sin(slope) + air
  let belt = speed
  let faster = 0
  if (row.speed === undefined) {
    const share = row.brake ?? 0
    const turning = (speed * 5) / radius
    const charged = share * chargingAmps(e, turning) + idleAt(turning)
    const back = (2 * e.constant * charged * 5) / (radius * 0.94) + 12 + 3 * speed + share * 25
    faster = -(back + resistance) / mass
  } else {
    faster = row.speed - speed
    if (resistance + 75 * faster > 0) belt = speed / 0.94
  }
  const straight = drawFor(e, resistance + mass * faster, belt, row.brake ?? 1)
  const turn = row.turn > 0 ? drawInTurn(e, speed, row.resistance) : straight
  const means = { copper: 0, iron: 0, controller: 0, amps: 0, pack: 0, packSquared: 0 }
  for (const [draw, share] of [[straight, 1 - row.turn] as const, [turn, row.turn] as const]) {
    const packAmps = draw.drawn + lamps
    const packVolts = open - packAmps * packOhm
    means.copper += share * draw.amps ** 2 * e.motorOhm
    means.iron += share * draw.turning * e.constant * draw.idle
    means.controller +=
      share *
      (draw.amps ** 2 * 0.003 + Math.abs(draw.amps) * 24e3 * (0.5 * packVolts * 120e-9 + 2 * 300e-9 * 0.8))
    means.amps += share * draw.amps ** 2
    means.pack += share * packAmps
    means.packSquared += share * packAmps ** 2
  }
  const thinner = coolantViscosity('glycol30', 20) / coolantViscosity('glycol30', feed)
  const flow = 3 * Math.min(1, thinner)
  const rate = (volumetricHeat * 1e-3 * flow) / 60
  const toCase = (winding - shell) / 0.5
  const fromMotor = (shell - feed) / toInlet(0.7 * Math.max(1, 6 / flow) ** 0.8, rate)
  const second = feed + (2 * fromMotor) / rate
  const fromController = (controller - second) / toInlet(1.2, rate)
  const hot = second + (2 * fromController) / rate
  const felt = 30 * (1 - Math.exp(-8 / 30))
  return [
    means.pack,
    faster,
    speed * (1 - row.turn),
    (means.copper - toCase) / 40,
    (means.iron + toCase - fromMotor) / 260,
    (means.controller - fromController) / 80,
    (2 * (fromMotor + fromController) - rate * (1 - Math.exp(-felt / rate)) * (hot + 5)) /
      (volumetricHeat * 5e-4),
    (means.packSquared * cellsOhm(cells) - (cells + 5) / 2) / cellsCapacity,
    means.amps,
    means.packSquared,
    (1 - row.turn) * straight.short * speed,
  ]
}

it('a drive that climbs, turns, is held back downhill, brakes and coasts is what odex makes of the contract’s equations', () => {
  let state: readonly number[] = [0, 0, 0, -5, -5, -5, -5, 5, 0, 0, 0]
  const braked: number[] = []
  for (const row of rows) {
    state = solvedByOdex((_time, at) => slopesAt(row, at), 0, state, row.seconds, 1e-10)
    braked.push(state[10] ?? NaN)
  }
  const run = runDrive(readBuildOf(stored), {
    name: 'demo: up, round and down',
    notes: '',
    rows: rows.map(({ seconds, speed, brake, grade, turn, resistance }) => ({
      ...plainRow(speed === undefined ? 'brake' : 'speed', speed ?? brake ?? 0, seconds, grade),
      turnShare: turn,
      resistanceShare: resistance,
    })),
  })
  const end = run.series.at(-1)
  const lumps = [run.windingEndC, run.caseEndC, run.controllerEndC, run.coolantEndC, run.packEndC]
  const squares = [run.motorAmpsRms, run.packAmpsRms].map((amps) => amps ** 2 * run.seconds)
  const found = [run.chargeDrawn, end?.speed, end?.distance, ...lumps, ...squares, run.brakeJoules]
  // It went through all that it is there for: it charged, the wheel brake held downhill and in the braking row, it turned.
  expect(run.backJoules).toBeGreaterThan(100)
  expect(braked[2]).toBeGreaterThan(100)
  expect((braked[3] ?? NaN) - (braked[2] ?? NaN)).toBeGreaterThan(1)
  expect(run.turnSeconds).toBeCloseTo(0.25 * 25, 9)
  expect(state[1]).toBeGreaterThan(0.3)
  expect(run.spinSeconds).toBe(0)
  for (const [place, value] of state.entries()) {
    // 1e-6: both cross the kinks of brakes and charge curve with small steps; temperatures in kelvin from the air's
    const offset = place > 2 && place < 8 ? 5 : 0
    expect(Math.abs(((found[place] ?? NaN) - value) / (value + offset)), `state ${place}`).toBeLessThan(1e-6)
  }
})
