import { describe, expect, it } from 'vitest'
import { withEntry } from '../../../shared-engine/entries/edit.ts'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { worstRow } from '../../../shared-engine/limits/worst.ts'
import { check } from '../../../shared-engine/check.ts'
import { crossingsOf } from '../../../shared-engine/sweep/crossings.ts'
import { sweep, type Sweep, type SweepRequest } from '../../../shared-engine/sweep/sweep.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import { demo } from '../search/support.ts'

const stoat = demo('quick-sled-puller')
const newt = demo('culvert-crawler')

const usual = { figures: ['topSpeedMps', 'toothForceN', 'worstMargin'], steps: 20 }

function swept(
  stored: StoredBuild,
  request: Pick<SweepRequest, 'path' | 'from' | 'to'> & Partial<SweepRequest>,
): Sweep {
  const result = sweep(stored, { ...usual, ...request })
  if (!result.ok) throw new Error(result.mistakes.map(sentenceOf).join('\n'))
  return result.value
}

const refusalsOf = (stored: StoredBuild, request: Partial<SweepRequest>) => {
  const result = sweep(stored, { path: 'vehicle.massKg', from: 10, to: 50, ...usual, ...request })
  return result.ok ? [] : result.mistakes.map(sentenceOf)
}

const checkedAt = (stored: StoredBuild, path: string, value: number) =>
  check(completeBuild(withEntry(stored, path, value)))

describe('points of a sweep', () => {
  it.each([
    [stoat, 'vehicle.massKg', 20, 60],
    [stoat, 'track.sprocketTeeth', 8, 16],
    [newt, 'stages.0.driverTeeth', 12, 24],
    [newt, 'motor.kvRpmPerVolt', 150, 500],
  ])('have the figures of check: %#', (stored, path, from, to) => {
    const { points, today } = swept(stored, { path, from, to })
    for (const point of [...points, ...(today === null ? [] : [today])]) {
      const { figures, limits } = checkedAt(stored, path, point.value)
      // The same code on the same build.
      expect(point.figures).toEqual([figures.topSpeedMps, figures.toothForceN, worstRow(limits)?.margin])
      expect(point.worstLimit).toBe(worstRow(limits)?.id)
    }
    expect([points[0]?.value, points.at(-1)?.value]).toEqual([from, to])
    expect(today?.value).toBe(path === 'vehicle.massKg' ? stoat.vehicle.massKg : today?.value)
  })

  it('of a whole-number entry are whole, each once', () => {
    const { points } = swept(stoat, { path: 'pack.series', from: 5, to: 10, steps: 100 })
    expect(points.map(({ value }) => value)).toEqual([5, 6, 7, 8, 9, 10])
  })

  it('are gaps with their reason where there is no such build', () => {
    // XL belt, pitch 5.08 mm, centres 95 mm apart: r₁ + r₂ = 5.08 (18 + z)/2π < 95 up to z = 99.
    const { points } = swept(newt, { path: 'stages.0.drivenTeeth', from: 90, to: 110 })
    const gaps = points.filter(({ gap }) => gap !== null)
    expect(gaps.map(({ value }) => value)).toEqual(Array.from({ length: 11 }, (_, at) => 100 + at))
    expect(gaps[0]?.figures).toEqual([null, null, null])
    expect(gaps[0]?.gap && sentenceOf(gaps[0].gap)).toContain('stages.0.centreMm is 95 mm; allowed: above')
  })

  it('tell an entry that is not there and has no default by no point of today', () => {
    const bare = withEntry(stoat, 'controller.currentLimitAmps', undefined)
    expect(swept(bare, { path: 'controller.currentLimitAmps', from: 50, to: 200 }).today).toBeNull()
    expect(swept(newt, { path: 'vehicle.loadKg', from: 0, to: 5 }).today?.value).toBe(newt.vehicle.loadKg)
  })
})

describe('limits crossed', () => {
  const crossing = (found: Sweep, id: string) => found.crossings.filter((one) => one.id === id)

  it('of the free rpm at the throttle that the over-rev check solves for', () => {
    // Solved in closed form by another part of the engine (`docs/model.md` §3). 1e-9: the crossing's own closeness.
    const throttle = check(completeBuild(stoat)).figures.throttleForRatedRpmPercent ?? NaN
    expect(throttle).toBeLessThan(100)
    const [found, ...more] = crossing(
      swept(stoat, { path: 'controller.throttleCapPercent', from: 40, to: 100 }),
      'motor.free-rpm',
    )
    expect(more).toEqual([])
    expect(found).toMatchObject({ goesOver: true, label: 'Motor rpm, running free at full charge' })
    expect(Math.abs((found?.value ?? NaN) / throttle - 1)).toBeLessThan(1e-9)
  })

  it('of a load that grows in proportion, where its share of the limit says', () => {
    // Bending of the gear is in proportion to the service factor (`docs/model.md` §4): it is crossed at factor · allowed/actual.
    const factor = stoat.service?.factor ?? 1.5
    const row = check(completeBuild(stoat)).limits.find(({ id }) => id === 'stage.1.shaft')
    const expected = (factor * (row?.allowed ?? NaN)) / (row?.actual ?? NaN)
    const weak = withEntry(stoat, 'stages.0.shaftDiameterMm', 12 * (expected / 3) ** (-1 / 3)) // d³: crossed at 3
    const [found] = crossing(swept(weak, { path: 'service.factor', from: 1, to: 5 }), 'stage.1.shaft')
    expect(Math.abs((found?.value ?? NaN) / 3 - 1)).toBeLessThan(1e-9)
  })

  it('of whole numbers at the first that is past it, between the points too', () => {
    // so much shock that the belt's pull, once, passes its limit within these teeth
    const strained = withEntry(newt, 'service.factor', 3.3)
    const found = crossing(
      swept(strained, { path: 'stages.0.drivenTeeth', from: 40, to: 90, steps: 3 }),
      'stage.1.peak',
    )
    const first = Array.from({ length: 51 }, (_, at) => 40 + at).find((teeth) =>
      checkedAt(strained, 'stages.0.drivenTeeth', teeth).limits.some(
        ({ id, standing }) => id === 'stage.1.peak' && standing === 'over',
      ),
    )
    expect(found).toEqual([
      { id: 'stage.1.peak', label: 'Belt or chain pull, once, stage 1', value: first, goesOver: true },
    ])
  })

  it('are found where they jump, and both ways', () => {
    const [a, b] = ['motor.free-rpm', 'pack.floor-voltage'] as const
    const over = (value: number) => new Set([...(value >= 0.3 ? [a] : []), ...(value < 0.7 ? [b] : [])])
    const points = [0, 0.25, 0.5, 0.75, 1].map((value) => ({ value }))
    const found = crossingsOf(points, false, over)
    expect(found.map(({ id, goesOver }) => [id, goesOver])).toEqual([
      [a, true],
      [b, false],
    ])
    // 1e-10 of the range: what bisection ends at.
    expect(found.map(({ value }) => value)).toEqual([expect.closeTo(0.3, 9), expect.closeTo(0.7, 9)])
  })

  it('are not told across a gap', () => {
    const free = ['motor.free-rpm'] as const
    const over = (value: number) => (value === 0.5 ? null : new Set(value > 0.5 ? free : []))
    expect(
      crossingsOf(
        [0, 0.5, 1].map((value) => ({ value })),
        false,
        over,
      ),
    ).toEqual([])
  })
})

describe('a request is refused', () => {
  it('with every mistake at once', () => {
    expect(refusalsOf(stoat, { from: -1, to: -2, steps: 0, figures: ['topSped'] })).toEqual([
      'vehicle.massKg is -1, out of range; allowed: 0.05 to 20,000 kg.',
      'vehicle.massKg is -2, out of range; allowed: 0.05 to 20,000 kg.',
      'to is -2, out of range; allowed: above -1.',
      'steps is 0, out of range; allowed: a whole number, 1 to 1,000.',
      expect.stringMatching(
        /^there is no figure or limit "topSped"; allowed: worstMargin, secondsTo, or a figure of check/,
      ),
    ])
  })

  it.each([
    'name',
    'pack.chemistry',
    'stages',
    'stages.7.driverTeeth',
    'stages.5.efficiencyPercent',
    'stages.0.centreMm',
    'no.such',
  ])('for %s, which cannot be varied', (path) => {
    expect(refusalsOf(stoat, { path, from: 20, to: 50 })[0]).toBe(
      `${path} cannot be varied here; allowed: a number that this build has or may have.`,
    )
  })
})
