import { describe, expect, it } from 'vitest'
import { withEntry, withItem } from '../../../shared-engine/entries/edit.ts'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import { check } from '../../../shared-engine/check.ts'
import { compare, comparedCurves, entryLabelOf } from '../../../shared-engine/compare/compare.ts'
import { demo } from '../search/support.ts'

const stoat = demo('quick-sled-puller')
const newt = demo('culvert-crawler')
const ibex = demo('hut-hauler')

const lighter = withEntry(withEntry(stoat, 'vehicle.massKg', 30), 'track.sprocketTeeth', 10)

describe('builds side by side', () => {
  const { figures, entries, limits, checked } = compare([stoat, lighter])
  const [one, other] = [stoat, lighter].map((build) => check(completeBuild(build)))

  it('have the figures of check and their differences from the first', () => {
    const speed = figures.find(({ figure }) => figure.name === 'topSpeedMps')
    const [first, second] = [one?.figures.topSpeedMps ?? NaN, other?.figures.topSpeedMps ?? NaN]
    expect(speed?.values).toEqual([first, second])
    expect(speed?.differences).toEqual([null, { by: second - first, share: (second - first) / first }])
    const sinkage = figures.find(({ figure }) => figure.name === 'sinkageM')
    expect(sinkage).toMatchObject({ values: [null, null], differences: [null, null] })
    expect(checked.map(({ name }) => name)).toEqual([stoat.name, stoat.name])
  })

  it('name the entries that differ, and those alone', () => {
    expect(entries).toEqual([
      {
        path: 'track.sprocketTeeth',
        label: 'Track: Teeth of the drive sprocket',
        kind: 'count',
        values: [stoat.track.sprocketTeeth, 10],
        entered: [true, true],
      },
      {
        path: 'vehicle.massKg',
        label: expect.stringMatching(/^Machine: /) as string,
        kind: 'mass',
        values: [stoat.vehicle.massKg, 30],
        entered: [true, true],
      },
    ])
  })

  it('have their ledgers in one, worst first', () => {
    const ids = limits.map(({ id }) => id)
    expect(new Set(ids)).toEqual(
      new Set([one, other].flatMap((build) => build?.limits.map(({ id }) => id) ?? [])),
    )
    for (const { id, rows } of limits) {
      expect(rows).toEqual(
        [one, other].map((build) => build?.limits.find((limit) => limit.id === id) ?? null),
      )
    }
    const worst = limits.map(({ rows }) => Math.min(...rows.map((row) => row?.margin ?? Infinity)))
    expect(worst).toEqual(worst.toSorted((a, b) => a - b))
  })

  it('may be four of different kinds; what one has not is null or undefined', () => {
    const longer = withItem(stoat, 'stages', { kind: 'fixed', ratio: 2 })
    const comparison = compare([stoat, newt, ibex, longer])
    const ratio = comparison.entries.find(({ path }) => path === 'stages.2.ratio')
    expect(ratio).toMatchObject({
      label: 'Reduction 3: Ratio',
      values: [undefined, undefined, undefined, 2],
      entered: [false, false, false, true],
    })
    const lift = comparison.limits.find(({ id }) => id === 'vehicle.pivot-turn')
    expect(lift?.rows.map((row) => row === null)).toEqual([true, false, false, true])
    expect(comparison.figures).toHaveLength(Object.keys(one?.figures ?? {}).length)
  })

  it('tell a default from an entry with the same value', () => {
    const plain = withEntry(stoat, 'vehicle.loadKg', undefined)
    const [load] = compare([plain, withEntry(stoat, 'vehicle.loadKg', 3)]).entries
    expect(load).toMatchObject({ path: 'vehicle.loadKg', values: [0, 3], entered: [false, true] })
    expect(compare([plain, withEntry(stoat, 'vehicle.loadKg', 0)]).entries).toEqual([])
  })

  it('have curves that end at each one’s top speed', () => {
    const curves = comparedCurves(checked)
    curves.forEach(({ thrust, run }, at) => {
      const top = checked[at]?.figures.topSpeedMps ?? NaN
      expect(thrust.top?.groundSpeed).toBeCloseTo(top, 9) // the same equilibrium, found twice
      expect(run?.speed.at(-1)).toBeCloseTo(0.98 * top, 9)
    })
  })
})

it('entries are called by their part, places counted from 1', () => {
  expect(entryLabelOf('stages.0.ratio')).toBe('Reduction 1: Ratio')
  expect(entryLabelOf('accessories.2.watts')).toMatch(/^Accessory 3: /)
  expect(entryLabelOf('pack.series')).toBe('Pack: Cells in series')
})
