import { expect, it } from 'vitest'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { chemistryOf } from '../../../shared-engine/reference/chemistry.ts'
import { coolantOf, coolantViscosity } from '../../../shared-engine/reference/coolants.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { solvedByOdex } from '../numeric/odex.ts'

// A drive with everything that warms, drags and draws at once, its equations written here anew from the text of engine
// `docs/model.md` §§2, 3, 5 and 7 and solved by odex; nothing of the engine but its tables of cells and coolants.

/** Demo data: two motors that start at their current limit, a circuit of glycol, lamps, skis, tow, a slope, slip. */
const stored: StoredBuild = {
  format: 'pitchline-build',
  version: 2,
  name: 'demo: all that changes in time',
  pack: {
    chemistry: 'lipo',
    series: 12,
    parallel: 2,
    capacityMah: 9000,
    cellResistanceMilliohm: 6,
    wiringResistanceMilliohm: 3,
  },
  controller: {
    resistanceMilliohm: 3,
    currentLimitAmps: 45,
    heatCapacityJPerK: 80,
    thermalResistanceKPerW: 1.2,
    throttleCapPercent: 90,
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
    heatCapacityJPerK: 60,
    thermalResistanceKPerW: 0.9,
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
    towForceN: 20,
    onTrackPercent: 90,
    frontalAreaM2: 0.4,
    dragCoefficient: 0.9,
  },
  ground: {
    model: 'coefficient',
    rollingCoefficient: 0.09,
    gripCoefficient: 1.5,
    slipPercent: 6,
    skiFriction: 0.05,
    gradePercent: 5,
    airTemperatureC: -5,
    altitudeM: 1200,
  },
  cooling: { kind: 'liquid', flowLPerMin: 3, coolant: 'glycol30', radiatorWPerK: 8, tankLitres: 0.5 },
  accessories: [{ name: 'lamps', watts: 45, converterEfficiencyPercent: 90 }],
  service: { packTemperatureC: 5, stateOfChargePercent: 97 },
}

const { charge, volts } = chemistryOf('lipo')

function restingVolts(share: number): number {
  const at = charge.findIndex((point) => point >= share)
  const [low, high] = [charge[at - 1] ?? 0, charge[at] ?? 1]
  const [under, over] = [volts[at - 1] ?? 0, volts[at] ?? 0]
  return 12 * (under + ((over - under) * (share - low)) / (high - low))
}

const radius = (14 * 0.03) / (2 * Math.PI)
/** 12 cells of 6 mΩ at 25 °C, two side by side, twice that for 20 K less, and the wires. */
const cellsOhm = (celsius: number) => ((12 * 0.006) / 2) * 2 ** ((25 - celsius) / 20)
const coldConstant = 60 / (2 * Math.PI * 150)
const testSpeed = (50 - 1.2 * 0.06) / coldConstant
const slope = Math.atan(0.05)
const weight = 75 * 9.80665 * Math.cos(slope)
const airDensity = (101_325 * (1 - 2.25577e-5 * 1200) ** 5.25588) / (287.05287 * 268.15)
const held = 0.09 * 0.9 * weight + 0.05 * 0.1 * weight + 75 * 9.80665 * Math.sin(slope) + 20
// what circulates and turns does so a slip faster than the machine drives
const mass = 75 + (2 * 1.5 * 60 * 0.03 + (2 * (8e-5 * 25 + 2e-4)) / radius ** 2) / 0.94
const coolant = coolantOf('glycol30')
const volumetricHeat = coolant.density * coolant.specificHeat
const coolantCapacity = volumetricHeat * 5e-4
/** From a wall behind R to the inlet of half of a stream of C W/K. */
const toInlet = (resistance: number, rate: number) => 2 / (rate * (1 - Math.exp(-2 / (resistance * rate))))
// lipo: 150 Wh/kg, 1040 J/(kg K), both of the engine's table of cells; V_oc at half charge
const cellsCapacity = ((restingVolts(0.5) * 9) / 150) * 1040

/** Slopes of charge drawn, speed, way, winding, controller, coolant, squared amps of motor and pack, cells, at a throttle. */
function slopesAt(throttle: number, state: readonly number[]): number[] {
  const [drawn = 0, speed = 0, , winding = 0, controller = 0, feed = 0, , , cells = 0] = state
  const packOhm = cellsOhm(cells) + 0.003
  const open = restingVolts(0.97 - drawn / 32_400)
  // V I − I² R = 50 W
  const lamps = (open - Math.sqrt(open ** 2 - 4 * packOhm * 50)) / (2 * packOhm)
  const left = open - lamps * packOhm
  const constant = coldConstant * (1 - 0.002 * (winding - 20))
  const motorOhm = 0.06 * (1 + 0.00393 * (winding - 20))
  const beltSpeed = speed / 0.94
  const turning = (beltSpeed * 5) / radius
  const free = (throttle * left - turning * constant) / (motorOhm + 0.003 + 2 * throttle ** 2 * packOhm)
  const amps = Math.min(45, free)
  // δ (V − 2 δ I R_b) = ω K + I R: the smaller root
  const needed = turning * constant + amps * (motorOhm + 0.003)
  const limited = (left - Math.sqrt(left ** 2 - 8 * amps * packOhm * needed)) / (4 * amps * packOhm)
  const duty = free > 45 ? limited : throttle
  const idle = 1.2 * (0.6 + (0.4 * turning) / testSpeed)
  const thrust = (2 * constant * (amps - idle) * 5 * 0.94) / radius - 12 - 3 * beltSpeed
  const surplus = thrust - held - 0.5 * airDensity * 0.9 * 0.4 * speed ** 2
  const thinner = coolantViscosity('glycol30', 20) / coolantViscosity('glycol30', feed)
  const rate = (volumetricHeat * 3e-3 * Math.min(1, thinner)) / 60
  const fromMotor = (winding - feed) / toInlet(0.9, rate)
  const second = feed + (2 * fromMotor) / rate
  const fromController = (controller - second) / toInlet(1.2, rate)
  const hot = second + (2 * fromController) / rate
  const packAmps = 2 * duty * amps + lamps
  return [
    packAmps,
    surplus / mass,
    speed,
    (amps ** 2 * motorOhm + turning * constant * idle - fromMotor) / 60,
    (amps ** 2 * 0.003 - fromController) / 80,
    (2 * (fromMotor + fromController) - rate * (1 - Math.exp(-8 / rate)) * (hot + 5)) / coolantCapacity,
    amps ** 2,
    packAmps ** 2,
    (packAmps ** 2 * cellsOhm(cells)) / cellsCapacity,
  ]
}

it('a drive of two throttles, the second past the cap, is what odex makes of the contract’s equations', () => {
  const rows = [
    // rising: what happens while the belt drives the motors is another matter
    { seconds: 30, throttle: 0.5 },
    { seconds: 40, throttle: 1 },
  ]
  let state: readonly number[] = [0, 0, 0, -5, -5, -5, 0, 0, 5]
  for (const { seconds, throttle } of rows)
    state = solvedByOdex((_time, at) => slopesAt(Math.min(throttle, 0.9), at), 0, state, seconds, 1e-10)
  const run = runDrive(readBuildOf(stored), {
    name: 'demo: two throttles',
    notes: '',
    rows: rows.map(({ seconds, throttle }) => plainRow('throttle', throttle, seconds)),
  })
  const end = run.series.at(-1)
  const lumps = [end?.winding, end?.controller, end?.coolant]
  const squares = [run.motorAmpsRms, run.packAmpsRms].map((amps) => amps ** 2 * run.seconds)
  const found = [run.chargeDrawn, end?.speed, end?.distance, ...lumps, ...squares, end?.pack]
  // the limit acted and let go; the hot parts are hot
  expect(run.peaks.motorAmps?.value).toBeCloseTo(45, 6)
  expect(state[3]).toBeGreaterThan(15)
  for (const [place, value] of state.entries()) {
    // 1e-6: both cross the kinks of limit and charge curve with small steps; temperatures in kelvin from the air's
    const offset = place > 2 && place < 6 ? 5 : 0
    expect(Math.abs(((found[place] ?? NaN) - value) / (value + offset)), `state ${place}`).toBeLessThan(1e-6)
  }
  // what is left at the pack's leads, by Ohm's law from the charge and the current drawn there
  const [packAmps = NaN] = slopesAt(0.9, state)
  const left =
    restingVolts(0.97 - (state[0] ?? NaN) / 32_400) - packAmps * (cellsOhm(state[8] ?? NaN) + 0.003)
  expect(Math.abs((end?.packVolts ?? NaN) / left - 1)).toBeLessThan(1e-6)
})
