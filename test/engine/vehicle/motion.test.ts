import { describe, expect, it } from 'vitest'
import type { Machine } from '../../../shared-engine/machine/parts.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { setTravel } from '../../../shared-engine/cases/travel.ts'
import { cruiseAt, cruiseCurve, turnBackDistance } from '../../../shared-engine/vehicle/cruise-curve.ts'
import { curveSettingOf } from '../../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed, thrustCurve } from '../../../shared-engine/vehicle/curves.ts'
import { equivalentMassOf } from '../../../shared-engine/vehicle/inertia.ts'
import {
  groundSpeedOfRpm,
  ratioForSpeedAtRpm,
  rpmOfGroundSpeed,
} from '../../../shared-engine/vehicle/logged-speed.ts'
import { runFromRest } from '../../../shared-engine/vehicle/run-curve.ts'
import { steepestGrade } from '../../../shared-engine/vehicle/slope.ts'
import { beltSpeedForThrust, motorThrustAt } from '../../../shared-engine/vehicle/thrust-line.ts'
import { evaluationOf, machineOfStored } from '../../fixtures/build/machine.ts'
import { fullBuild, plainBuild, soilBuild } from '../../fixtures/build/plain.ts'

const plain = plainBuild()

/** The plain machine with a 6 to 1 gearbox and entries of choice. */
function geared(changes: Partial<StoredBuild> = {}): Machine {
  return machineOfStored({ ...plain, stages: [{ kind: 'fixed', ratio: 6 }], ...changes })
}

describe('speed of a logged rpm', () => {
  const machine = geared()

  it('is teeth × pitch × turns: 6000 rpm through 6 to 1, 12 teeth of 20 mm, 4 m/s; 3.6 m/s with 10 % slip', () => {
    // 12 digits: closed form
    expect(groundSpeedOfRpm(machine, 6000, 0)).toBeCloseTo(4, 12)
    expect(groundSpeedOfRpm(machine, 6000, 0.1)).toBeCloseTo(3.6, 12)
  })

  it('is turned round, for the rpm and for the ratio', () => {
    expect(rpmOfGroundSpeed(machine, 3.6, 0.1)).toBeCloseTo(6000, 9)
    expect(ratioForSpeedAtRpm(machine, 3.6, 6000, 0.1)).toBeCloseTo(6, 12)
  })
})

describe('mass to accelerate', () => {
  it('is the machine, its loop once more, and rotors by (G/r)²', () => {
    const machine = geared({ motor: { ...plain.motor, rotorInertiaGcm2: 500 } })
    const { radius } = machine.track
    // 12 kg + 0.72 kg + 5e-5 · 36/r²: kinetic energy of each at 1 m/s, twice
    expect(equivalentMassOf(machine)).toBeCloseTo(12.72 + (5e-5 * 36) / radius ** 2, 9)
  })
})

describe('thrust against belt speed', () => {
  it('is turned round on both sides of the corner', () => {
    const { line } = curveSettingOf(machineOfStored(fullBuild()))
    expect(line.cornerSpeed).toBeGreaterThan(0)
    for (const speed of [0.1, 0.5, 0.9, 1.1, 1.5].map((share) => share * line.cornerSpeed)) {
      expect(beltSpeedForThrust(line, motorThrustAt(line, speed))).toBeCloseTo(speed, 9)
    }
  })

  it('ends in the curve where thrust is the resistance', () => {
    for (const stored of [fullBuild(), soilBuild()]) {
      const { states, top, corner } = thrustCurve(machineOfStored(stored), undefined, 41)
      expect(states).toHaveLength(41)
      expect(states[0]?.groundSpeed).toBe(0)
      // 1e-6: a root on soil
      expect(Math.abs((top?.thrust ?? NaN) / (top?.resistance ?? NaN) - 1)).toBeLessThan(1e-6)
      expect(corner === null || corner.motorThrust <= corner.gripThrust).toBe(true)
    }
  })

  it('has neither top nor corner on a machine that cannot move', () => {
    const stuck = geared({ vehicle: { massKg: 12, towForceN: 90_000 } })
    expect(thrustCurve(stuck).top).toBeNull()
    expect(runFromRest(stuck)).toBeNull()
    expect(steepestGrade(stuck)).toBeNull()
  })
})

describe('a track that spins at its top speed', () => {
  // grip of 0.3 against 0.08 of rolling and the air: v² = 0.22 W/k
  const machine = geared({
    pack: { ...plain.pack, series: 14 },
    vehicle: { massKg: 12, frontalAreaM2: 2, dragCoefficient: 1.2 },
    ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 0.3, slipPercent: 5 },
  })
  const { top, airDragFactor, line } = evaluationOf(machine)

  it('runs at √((F_max − R_g)/k)', () => {
    expect(top.spinning).toBe(true)
    expect(top.groundSpeed).toBeCloseTo(Math.sqrt((0.22 * 12 * 9.80665) / airDragFactor), 9)
  })

  it('with its belt where the motors push as much as the ground takes', () => {
    expect(motorThrustAt(line, top.beltSpeed)).toBeCloseTo(0.3 * 12 * 9.80665, 9)
    expect(top.slip).toBeCloseTo(1 - top.groundSpeed / top.beltSpeed, 12)
    expect(top.slip).toBeGreaterThan(0.05)
  })
})

describe('the steepest grade', () => {
  it('that grip holds is tan⁻¹ of grip less rolling: 0.6 − 0.08 of a rise', () => {
    const steepest = steepestGrade(geared({ pack: { ...plain.pack, series: 14 } }))
    expect(steepest?.heldBy).toBe('grip')
    expect(steepest?.grade).toBeCloseTo(0.52, 9)
  })

  it('that the motor holds is where its thrust is the resistance', () => {
    const weak = geared({ controller: { currentLimitAmps: 8 } })
    const steepest = steepestGrade(weak)
    expect(steepest?.heldBy).toBe('motor')
    const grade = steepest?.grade ?? NaN
    const angle = Math.atan(grade)
    const thrust = motorThrustAt(curveSettingOf(weak).line, 0)
    expect(thrust).toBeCloseTo(12 * 9.80665 * (Math.sin(angle) + 0.08 * Math.cos(angle)), 6)
  })
})

describe('level cruise', () => {
  const machine = machineOfStored(fullBuild())
  const setting = curveSettingOf(machine)

  it('draws the power of its losses and its push: nothing is made on the way', () => {
    for (const speed of [0.5, 1, 2]) {
      const cruise = cruiseAt(setting, speed)
      const beltSpeed = speed / (1 - 0.06)
      expect(cruise.beltSpeed).toBeCloseTo(beltSpeed, 12)
      const { motorAmps, duty, thrust } = cruise
      const drive = setting.drive
      const motorSpeed = beltSpeed * setting.line.motorPerBelt
      const shaft = ((thrust + 25 + 4 * beltSpeed) * beltSpeed) / machine.train.efficiency
      const noLoad = drive.noLoadBase + drive.noLoadSlope * motorSpeed
      const losses =
        2 * (motorAmps ** 2 * drive.seriesResistance + motorSpeed * drive.torqueConstant * noLoad)
      const driveAmps = 2 * duty * motorAmps
      const packVolts = drive.volts - driveAmps * drive.packResistance
      // 1e-9: closed form, the duty's root put back
      expect(Math.abs((packVolts * driveAmps) / (shaft + losses) - 1)).toBeLessThan(1e-9)
    }
  })

  it('is on the level, tow and all, where the build stands on a slope', () => {
    const flat = machineOfStored({
      ...fullBuild(),
      ground: { ...fullBuild().ground, gradePercent: 0 } as StoredBuild['ground'],
    })
    expect(cruiseAt(setting, 1).packAmps).toBeCloseTo(cruiseAt(curveSettingOf(flat), 1).packAmps, 9)
    expect(cruiseAt(setting, 1).thrust).toBeGreaterThan(50)
  })

  it('lasts for the charge above the reserve: 20 Ah · (0.9 − 0.15), 0.89 of it from cells at 5 °C', () => {
    const { packAmps, seconds, metres } = cruiseAt(setting, 1)
    expect(seconds * packAmps).toBeCloseTo(20 * 3600 * 0.75 * 0.89, 6)
    expect(metres).toBeCloseTo(seconds, 9)
    expect(turnBackDistance(machine, 1)).toBeCloseTo(metres / 2, 9)
  })

  it('is not held past the throttle, the current limit or the grip', () => {
    expect(turnBackDistance(machine, 1000)).toBeNull()
    const weak = geared({ controller: { currentLimitAmps: 1 } })
    expect(turnBackDistance(weak, 1)).toBeNull()
    const ice = geared({ ground: { model: 'coefficient', rollingCoefficient: 0.08, gripCoefficient: 0.07 } })
    expect(turnBackDistance(ice, 1)).toBeNull()
  })

  it('has a best speed that no other of its curve goes further at', () => {
    const { metres, best } = cruiseCurve(machine)
    expect(Math.max(...metres.map((at) => at ?? 0))).toBe(best?.metres)
  })

  it('of half of the top speed draws what the figures say', () => {
    const evaluation = evaluationOf(machine)
    setTravel(evaluation, machine)
    const { cruise, top } = evaluation
    expect(cruise.packAmps).toBeCloseTo(cruiseAt(setting, 0.5 * top.groundSpeed).packAmps, 9)
  })
})

describe('the drive at one ground speed', () => {
  const setting = curveSettingOf(machineOfStored(fullBuild()))

  it('accounts for slip where it grips: the belt is faster than the ground by the slip given', () => {
    const state = driveStateAtGroundSpeed(setting, setting.top.groundSpeed)
    expect(state.thrust).toBeLessThan(state.gripThrust)
    expect(state.slip).toBeCloseTo(0.06, 12)
    expect(state.beltSpeed * 0.94).toBeCloseTo(state.groundSpeed, 12)
  })

  it('spins where the motors push more than the ground takes, its belt as fast as that leaves it', () => {
    const state = driveStateAtGroundSpeed(setting, 1)
    expect(state.thrust).toBeCloseTo(state.gripThrust, 9)
    expect(state.motorThrust).toBeCloseTo(state.gripThrust, 9)
    expect(state.beltSpeed * (1 - state.slip)).toBeCloseTo(1, 12)
    expect(state.slip).toBeGreaterThan(0.06)
  })
})
