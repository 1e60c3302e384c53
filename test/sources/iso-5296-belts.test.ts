import { describe, expect, it } from 'vitest'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import {
  type BeltProfileId,
  beltMeshFactor,
  beltProfileIds,
  beltProfileOf,
} from '../../shared-engine/reference/belts.ts'

const belt = (profile: BeltProfileId, widthMm: number) => {
  const stage = stagePartOf({
    kind: 'belt',
    driverTeeth: 30,
    drivenTeeth: 30,
    profile,
    widthMm,
    centreMm: 1000,
    efficiencyPercent: 100,
    drivenInertiaGcm2: 0,
  })
  if (stage.kind !== 'belt') throw new Error('not a belt')
  return stage
}

describe('pitches', () => {
  /** *Source:* ISO 5296, pitches of the trapezoidal profiles, which are inch fractions: 0.080, 1/5, 3/8, 1/2 in. */
  it.each([
    ['MXL', 0.08],
    ['XL', 1 / 5],
    ['L', 3 / 8],
    ['H', 1 / 2],
  ] as const)('%s: %d in', (id, inches) => {
    expect(beltProfileOf(id).pitch).toBeCloseTo(inches * 0.0254, 12)
  })

  /** *Source:* DIN 7721 (T) and ISO 13050 (H): the number in the name is the pitch in millimetres. */
  it('of metric profiles are in their names', () => {
    const metric = beltProfileIds.filter((id) => /^T\d|^H\dM$/.test(id))
    expect(metric).toHaveLength(7)
    for (const id of metric)
      expect(beltProfileOf(id).pitch * 1000).toBeCloseTo(Number(/[\d.]+/.exec(id)?.[0]), 12)
  })
})

describe('ratings', () => {
  /** *Source:* ANSI/RMA IP-24, width factors of the same profiles, by widths in inches. From memory. */
  it.each([
    ['L', 1, 0.5, 0.45],
    ['L', 1, 0.75, 0.72],
    ['H', 3, 0.75, 0.21],
    ['H', 3, 1, 0.29],
    ['H', 3, 1.5, 0.45],
    ['H', 3, 2, 0.63],
  ] as const)('%s: of %d in, %d in carry %d', (id, reference, width, factor) => {
    const share = belt(id, width * 25.4).ratedPull / belt(id, reference * 25.4).ratedPull
    // 0.006: printed to two digits, half of the last; a hair for widths that are printed to two as well.
    expect(Math.abs(share - factor)).toBeLessThan(0.006)
  })

  /** *Source:* ISO 5295, first edition, and ANSI/RMA IP-24: teeth in mesh 6 and more, 5, 4, 3, 2. */
  it.each([
    [12, 1],
    [6, 1],
    [5, 0.8],
    [4, 0.6],
    [3, 0.4],
    [2, 0.2],
  ])('with %d teeth in mesh, %d of it', (teeth, factor) => {
    expect(beltMeshFactor(teeth)).toBeCloseTo(factor, 12)
  })
})
