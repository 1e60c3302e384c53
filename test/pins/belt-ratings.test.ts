import { expect, it } from 'vitest'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import type { BeltProfileId } from '../../shared-engine/reference/belts.ts'

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

// A pin: the table's own rows typed a second time, both from memory.

/**
 * *Source:* ISO 5295, first edition, as adopted in GB/T 11362: reference width mm, allowable tension N, mass kg/m.
 * From memory.
 */
it.each([
  ['MXL', 6.4, 27, 0.007],
  ['XL', 9.5, 50.17, 0.022],
  ['L', 25.4, 244.46, 0.095],
  ['H', 76.2, 2100.85, 0.448],
] as const)('%s at its reference width of %d mm: %d N, %d kg/m', (id, width, tension, mass) => {
  const stage = belt(id, width)
  // 12 digits: the row itself, brought to SI.
  expect(stage.ratedPull / tension).toBeCloseTo(1, 12)
  expect(stage.massPerMetre / mass).toBeCloseTo(1, 12)
})
