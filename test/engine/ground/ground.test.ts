import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Machine } from '../../../shared-engine/machine/parts.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { Footing, setFooting, setLevelFooting, soilModulusOf } from '../../../shared-engine/ground/footing.ts'
import { airDragFactorOf, resistanceAt } from '../../../shared-engine/ground/resistance.ts'
import { shearShareGuess, shearShareInverse, shearShare } from '../../../shared-engine/ground/soil-shear.ts'
import { integrate } from '../../../shared-engine/numeric/quadrature.ts'
import { plainBuild, soilBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored } from '../../fixtures/build/machine.ts'
import { machines } from '../../laws/machines.ts'

const plain = plainBuild()
const weight = 9.80665 * 100

/** 100 kg, 80 % of it on the track, on a slope of 3 in 4: sine 0.6, cosine 0.8. */
function onSlope(ground: Partial<StoredBuild['ground']> = {}): Machine {
  return machineOfStored({
    ...plain,
    vehicle: { massKg: 70, loadKg: 30, onTrackPercent: 80, towForceN: 50 },
    ground: { ...plain.ground, gradePercent: 75, skiFriction: 0.1, ...ground } as StoredBuild['ground'],
  })
}

function footingOf(machine: Machine): Footing {
  const footing = new Footing()
  setFooting(footing, machine, machine.ground.sinSlope, machine.ground.cosSlope)
  return footing
}

describe('ground by two coefficients', () => {
  const footing = footingOf(onSlope())

  it('bears m g cos θ, the tracks their share', () => {
    // 9 digits: closed form
    expect(footing.weight).toBeCloseTo(0.8 * weight, 9)
    expect(footing.trackWeight).toBeCloseTo(0.64 * weight, 9)
  })

  it('rolls under the tracks and slides under the skis: 0.08 · 0.64 + 0.1 · 0.16 of the weight', () => {
    expect(footing.groundResistance).toBeCloseTo((0.0512 + 0.016) * weight, 9)
  })

  it('holds back with slope and tow besides', () => {
    expect(footing.standingResistance).toBeCloseTo((0.0672 + 0.6) * weight + 50, 9)
  })

  it('grips the tracks alone: 0.6 · 0.64 of the weight', () => {
    expect(footing.gripThrust).toBeCloseTo(0.384 * weight, 9)
  })

  it('knows neither sinkage nor pressure', () => {
    expect(footing.sinkage).toBeNaN()
    expect(footing.groundPressure).toBeNaN()
  })
})

describe('the same ground without its slope', () => {
  it('is what a footing without slope says, steep or flat before', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const [level, direct] = [new Footing(), new Footing()]
        setLevelFooting(level, machine)
        setFooting(direct, machine, 0, 1)
        expect(level).toEqual(direct)
      }),
      { numRuns: 100 },
    )
  })
})

describe('soil', () => {
  it('takes the smaller side of the patch for its cohesive modulus', () => {
    const soil = { cohesiveModulus: 1000, frictionalModulus: 50_000 }
    expect(soilModulusOf(soil, 0.9, 0.1)).toBe(60_000)
    expect(soilModulusOf(soil, 0.1, 0.9)).toBe(60_000)
  })

  it('is compacted by the work of sinking: ∫ p dz over the width, for each loop', () => {
    const machine = machineOfStored({
      ...soilBuild(),
      ground: { ...soilBuild().ground, skiFriction: 0 } as StoredBuild['ground'],
    })
    if (machine.ground.model !== 'soil') throw new Error('not soil')
    const { exponent } = machine.ground
    const footing = footingOf(machine)
    const { contactLength, contactWidth } = machine.vehicle
    const modulus = soilModulusOf(machine.ground, contactLength ?? NaN, contactWidth ?? NaN)
    const work = integrate((depth) => modulus * depth ** exponent, 0, footing.sinkage).value
    // 1e-8: quadrature of a power that is not whole
    expect(Math.abs(footing.groundResistance / (2 * (contactWidth ?? NaN) * work) - 1)).toBeLessThan(1e-8)
  })

  it('shears by e^−1 at x = 1, nothing at 0 and all at the end', () => {
    // 1 − (1 − 1/e)/1
    expect(shearShare(1)).toBeCloseTo(Math.exp(-1), 15)
    expect(shearShare(0)).toBe(0)
    expect(shearShare(1e12)).toBeCloseTo(1, 11)
  })

  it('takes no x for no share and endless x for all', () => {
    expect(shearShareInverse(0)).toBe(0)
    expect(shearShareInverse(-1)).toBe(0)
    expect(shearShareInverse(1)).toBe(Infinity)
  })

  it('is guessed to 1 % before it is solved', () => {
    for (let share = 0.001; share < 1; share += 0.001) {
      expect(Math.abs(shearShareGuess(share) / shearShareInverse(share) - 1)).toBeLessThan(0.0105)
    }
  })
})

describe('resistance', () => {
  it('of the air is ½ ρ C_d A v²: 0.5 · 1.225 · 0.6 · 100, 36.75 N at 10 m/s', () => {
    const machine = machineOfStored({
      ...plain,
      vehicle: { massKg: 12, frontalAreaM2: 0.5, dragCoefficient: 1.2 },
      ground: { ...plain.ground, rollingCoefficient: 0 } as StoredBuild['ground'],
    })
    // 1e-5: the table's 1.2250 kg/m³ at sea level and 15 °C, ISO 2533
    const drag = resistanceAt(footingOf(machine), airDragFactorOf(machine), 10)
    expect(Math.abs(drag / 36.75 - 1)).toBeLessThan(1e-5)
  })
})
