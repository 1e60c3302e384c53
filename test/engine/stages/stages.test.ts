import { describe, expect, it } from 'vitest'
import { stagePartOf } from '../../../shared-engine/machine/stage.ts'
import type { Machine } from '../../../shared-engine/machine/parts.ts'
import type { BeltStage } from '../../../shared-engine/stages/belt/machine.ts'
import type { GearStage } from '../../../shared-engine/stages/gear/machine.ts'
import type { Stage, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { pulleyRadius } from '../../../shared-engine/stages/belt/geometry.ts'
import { allowedBeltPull } from '../../../shared-engine/stages/belt/physics.ts'
import { allowedChainTension, chainRipple } from '../../../shared-engine/stages/chain/physics.ts'
import {
  lewisStress,
  stageDynamicFactor,
  tangentialForce,
} from '../../../shared-engine/stages/gear/physics.ts'
import { lewisFormFactor } from '../../../shared-engine/reference/gears.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored, readBuildOf } from '../../fixtures/build/machine.ts'

type StoredStage = NonNullable<StoredBuild['stages']>[number]

const plain = plainBuild()
const machineWith = (...stages: StoredStage[]): Machine =>
  machineOfStored({ ...plain, motor: { ...plain.motor, rotorInertiaGcm2: 1000 }, stages })

/** A stage with its defaults, as a build holds it. */
function completeStage(stage: StoredStage): Stage {
  const [complete] = readBuildOf({ ...plain, stages: [stage] }).stages
  if (complete === undefined) throw new Error('no stage')
  return complete
}

const gear: StoredStage = {
  kind: 'gear',
  driverTeeth: 20,
  drivenTeeth: 60,
  moduleMm: 1.5,
  faceWidthMm: 10,
  driverMaterial: 'steel-c45',
  drivenMaterial: 'pom',
}
const fixed: StoredStage = { kind: 'fixed', ratio: 2, efficiencyPercent: 90, drivenInertiaGcm2: 3600 }

describe('a train of reductions', () => {
  it('multiplies ratios and efficiencies: 3 · 2, 97 % · 90 %', () => {
    const { ratio, efficiency } = machineWith(gear, fixed).train
    expect(ratio).toBe(6)
    expect(efficiency).toBeCloseTo(0.873, 12)
  })

  it('reflects inertia by the square of the ratio: 1000 + 3600/6² = 1100 g·cm²', () => {
    expect(machineWith(gear, fixed).train.inertiaAtMotor * 1e7).toBeCloseTo(1100, 9)
    // before the gear the same wheel turns three times as fast
    expect(machineWith(fixed, gear).train.inertiaAtMotor * 1e7).toBeCloseTo(1900, 9)
  })

  it('is 1 and loses nothing where there is none', () => {
    expect(machineWith().train).toMatchObject({ ratio: 1, efficiency: 1 })
  })
})

describe('a pair of gears', () => {
  const stage = stagePartOf(completeStage(gear)) as GearStage

  it('is pushed by T/r: 3 N·m over 15 mm, 200 N', () => {
    expect(tangentialForce(stage, 3)).toBeCloseTo(200, 10)
  })

  it('meets at ω r: 400 rad/s at 15 mm, 6 m/s; milled, (6.1 + 6)/6.1', () => {
    expect(stageDynamicFactor(stage, 400)).toBeCloseTo(12.1 / 6.1, 12)
    expect(stageDynamicFactor(stage, 0)).toBe(1)
  })

  it('is stressed by K W/(b m Y): 200 N on 10 · 1.5 mm² · 0.322, 41.4 MPa', () => {
    expect(lewisStress(200, stage.faceWidth, stage.module, stage.driverForm, 1) / 1e6).toBeCloseTo(
      200 / 15 / 0.322,
      9,
    )
  })

  it('below 10 teeth follows the line through 10 and 11 [assumption], above 400 the row of 400', () => {
    // 0.201 − 0.025 for each tooth less
    expect(lewisFormFactor(9)).toBeCloseTo(0.176, 12)
    expect(lewisFormFactor(7)).toBeCloseTo(0.126, 12)
    expect(lewisFormFactor(1000)).toBe(0.48)
  })
})

describe('a belt', () => {
  const belt: StoredStage = {
    kind: 'belt',
    driverTeeth: 20,
    drivenTeeth: 80,
    profile: 'XL',
    widthMm: 19,
    centreMm: 102,
  }
  const rated = stagePartOf(completeStage(belt)) as BeltStage
  const given = stagePartOf(completeStage({ ...belt, allowableTensionN: 150 })) as BeltStage

  it('of 5.08 mm on 20 teeth has a pitch radius of 16.17 mm', () => {
    expect(pulleyRadius(0.00508, 20) * 1000).toBeCloseTo(101.6 / (2 * Math.PI), 12)
  })

  it('twice as wide as its reference carries 2^1.14 and weighs twice as much', () => {
    expect(rated.ratedPull / 50.17).toBeCloseTo(2 ** 1.14, 9)
    expect(rated.massPerMetre).toBeCloseTo(0.044, 12)
  })

  it('carries what the builder says instead, mass by width all the same', () => {
    expect(given.ratedPull).toBe(150)
    expect(given.massPerMetre).toBe(rated.massPerMetre)
  })

  it('keeps 0.6 of it with four teeth in mesh, less its own centrifugal pull', () => {
    // sin θ = 0.00508 · 60/2π/0.06, θ = 0.9414 rad: 20 (½ − 0.29965) = 4.007, four teeth: 0.6
    const close = stagePartOf({
      ...completeStage({ ...belt, allowableTensionN: 150 }),
      centreMm: 60,
    } as Stage) as BeltStage
    expect(allowedBeltPull(close, 0)).toBeCloseTo(90, 9)
    // 0.044 kg/m at 20 m/s: 17.6 N
    expect(allowedBeltPull(close, 20)).toBeCloseTo(90 - 17.6, 9)
  })
})

describe('a chain', () => {
  const stage = stagePartOf(
    completeStage({ kind: 'chain', driverTeeth: 10, drivenTeeth: 30, size: '08B', strands: 2 }),
  )
  if (stage.kind !== 'chain') throw new Error('not a chain')

  it('of two strands may pull an eighth of their 17.8 kN each: common practice, no source', () => {
    expect(allowedChainTension(stage)).toBeCloseTo((2 * 17_800) / 8, 9)
  })

  it('runs unevenly by 1 − cos(π/z): 4.9 % on 10 teeth, whichever wheel has them', () => {
    // 5e-5: three figures by hand, 1 − cos 18°
    expect(Math.abs(chainRipple(stage) - 0.0489)).toBeLessThan(5e-5)
    expect(chainRipple({ driverTeeth: 30, drivenTeeth: 10 })).toBe(chainRipple(stage))
  })
})
