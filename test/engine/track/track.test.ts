import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { TrackPart } from '../../../shared-engine/machine/parts.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { assumedRowShare, rowStiffnessOf } from '../../../shared-engine/geometry/drive-tooth.ts'
import { internalDragAt } from '../../../shared-engine/track/drag.ts'
import { toothBearing, toothBending, toothShear } from '../../../shared-engine/track/teeth.ts'
import { burstSpeedOf, centrifugalTension } from '../../../shared-engine/track/tension.ts'
import { solvedByOdex } from '../numeric/odex.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'
import { machineOfStored } from '../../fixtures/build/machine.ts'
import { evenly } from '../../fixtures/evenly.ts'

const plain = plainBuild()
const tooth = { heightMm: 8, rootMm: 10, widthMm: 50, material: 'pu-90a-cast' as const }

function trackOf(changes: Partial<StoredBuild['track']>): TrackPart {
  return machineOfStored({ ...plain, track: { ...plain.track, ...changes } }).track
}

function toothOf(changes: Partial<typeof tooth> & object) {
  const part = trackOf({ tooth: { ...tooth, ...changes } as StoredBuild['track']['tooth'] }).tooth
  if (part === null) throw new Error('no tooth')
  return part
}

describe('loop and sprocket', () => {
  it('advance by teeth × pitch: 12 · 20 mm a turn, and weigh 60 · 20 mm · 600 g/m', () => {
    const { advance, radius, loopMass } = trackOf({})
    expect(advance).toBeCloseTo(0.24, 14)
    expect(2 * Math.PI * radius).toBeCloseTo(0.24, 14)
    expect(loopMass).toBeCloseTo(0.72, 14)
  })

  it.each([
    [12, 180, 6],
    [12, 179, 5],
    [7, 180, 3],
    [8, 225, 5],
    [4, 100, 1],
  ])('%d teeth hold %d° of loop by %d', (sprocketTeeth, wrapDegrees, engaged) => {
    expect(trackOf({ sprocketTeeth, wrapDegrees }).engagedTeeth).toBe(engaged)
  })

  it('drag by a part that does not grow with speed and one that does', () => {
    expect(internalDragAt(trackOf({ internalDragN: 8, internalDragNPerMps: 3 }), 4)).toBe(20)
  })

  it('pull with m′ v²: 0.6 kg/m at 10 m/s, 60 N; have no burst speed without a strength', () => {
    expect(centrifugalTension(trackOf({}), 10)).toBeCloseTo(60, 12)
    expect(burstSpeedOf(trackOf({}))).toBeNaN()
    const weak = { breakingTensionN: 50, pretensionN: 60 }
    expect(burstSpeedOf(trackOf({ ...weak, tensioner: 'sprung' }))).toBe(0)
    // fixed: the pretension fades as the ring tightens, √(50/0.6)
    expect(burstSpeedOf(trackOf(weak))).toBeCloseTo(Math.sqrt(50 / 0.6), 12)
  })
})

describe('assumed sharing', () => {
  it('is even at 100 %, all on one row at 0 %, and between: 1/(1 + ½ · 5)', () => {
    expect(assumedRowShare(1, 6)).toBeCloseTo(1 / 6, 14)
    expect(assumedRowShare(0, 6)).toBe(1)
    expect(assumedRowShare(0.5, 6)).toBeCloseTo(1 / 3.5, 14)
    expect(assumedRowShare(0.5, 1)).toBe(1)
  })
})

describe('a drive tooth under 1000 N', () => {
  it('shears over its root: 10 · 50 mm², 2 MPa', () => {
    expect(toothShear(toothOf({}), 1000)).toBeCloseTo(2e6, 6)
  })

  it('bends by 6 F h/(w t²), at half height where nothing is said: 4.8 MPa', () => {
    expect(toothBending(toothOf({}), 1000)).toBeCloseTo(4.8e6, 6)
    expect(toothBending(toothOf({ loadHeightMm: 2 } as object), 1000)).toBeCloseTo(2.4e6, 6)
  })

  it('is pressed over twice the way from the load to the tip, at most over its height', () => {
    expect(toothBearing(toothOf({}), 1000)).toBeCloseTo(1000 / (0.05 * 0.008), 6)
    expect(toothBearing(toothOf({ loadHeightMm: 6 } as object), 1000)).toBeCloseTo(1000 / (0.05 * 0.004), 6)
    expect(toothBearing(toothOf({ loadHeightMm: 1 } as object), 1000)).toBeCloseTo(1000 / (0.05 * 0.008), 6)
  })

  it('may bear what printing or gluing left of its material', () => {
    const [whole, half] = [100, 50].map((knockdownPercent) => trackOf({ tooth, knockdownPercent }).tooth)
    expect(half?.allowedShear).toBeCloseTo(0.5 * (whole?.allowedShear ?? NaN), 6)
    expect(half?.allowedTensile).toBeCloseTo(0.5 * (whole?.allowedTensile ?? NaN), 6)
    expect(half?.allowedBearing).toBeCloseTo(0.5 * (whole?.allowedBearing ?? NaN), 6)
  })
})

describe('stiffness of a row of teeth', () => {
  it('is that of a short cantilever: bending and shear integrated along it', () => {
    const sizes = fc.record({
      heightMm: evenly(4, 30),
      rootMm: evenly(3, 30),
      widthMm: evenly(8, 200),
      modulusMpa: evenly(2, 5000),
    })
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 4 }), (size, teethAcross) => {
        const track = trackOf({ teethAcross, tooth: { ...tooth, ...size } })
        const part = track.tooth
        if (part === null || part.modulus === null) throw new Error('no tooth')
        const { width, root, modulus, poisson, loadHeight } = part
        // Timoshenko beam under a unit force at its end: rotation M/EI, deflection rotation + 6/5 V/(G A)
        const area = width * root
        const inertia = (width * root ** 3) / 12
        const shearModulus = modulus / (2 * (1 + poisson))
        const slopes = (at: number, [turn = 0]: readonly number[]) => [
          (loadHeight - at) / (modulus * inertia),
          turn + 1.2 / (shearModulus * area),
        ]
        const [, give = NaN] = solvedByOdex(slopes, 0, [0, 0], loadHeight)
        // 1e-9: the solver's tolerance
        expect(
          Math.abs((rowStiffnessOf({ ...part, modulus }, teethAcross) * give) / teethAcross - 1),
        ).toBeLessThan(1e-9)
      }),
      { numRuns: 100 },
    )
  })

  it('does not exist without a modulus', () => {
    const custom = {
      material: 'custom' as const,
      shearStrengthMpa: 5,
      tensileStrengthMpa: 8,
      bearingStrengthMpa: 9,
    }
    const soft = { heightMm: 8, rootMm: 10, widthMm: 50 }
    expect(trackOf({ loopStiffnessN: 1e5, tooth: { ...soft, ...custom } }).springs).toBeNull()
    expect(trackOf({ loopStiffnessN: 1e5 }).springs).toBeNull()
    expect(trackOf({ tooth }).springs).toBeNull()
    expect(trackOf({ loopStiffnessN: 1e5, tooth }).springs).not.toBeNull()
  })
})

describe('slope of a flank', () => {
  it.each([
    [30, 0, Math.tan(Math.PI / 6)],
    [45, 1, 0],
    [10, 0.3, 0],
    // tan(45° − atan 0.5) = (1 − 0.5)/(1 + 0.5)
    [45, 0.5, 1 / 3],
  ])('%d° with friction %d: %d', (flankDegrees, flankFriction, slope) => {
    expect(toothOf({ flankDegrees, flankFriction } as object).climbSlope).toBeCloseTo(slope, 12)
  })
})
