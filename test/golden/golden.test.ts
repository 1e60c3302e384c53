import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
import {
  amendedCases,
  amendedFigures,
  amendedFiguresOnSoil,
  amendedInBuilds,
  amendedLimits,
  amendedLimitsOnSoil,
  newFigures,
  newLimits,
  withoutNumber,
} from './amended.ts'
import {
  closenessOfFigure,
  closenessOfLimit,
  closenessOfMargin,
  type Golden,
  isClose,
} from './tolerances.ts'

const here = new URL('.', import.meta.url)
const numbers = readdirSync(here)
  .map((name) => /^(\d\d)\.build\.json$/.exec(name)?.[1])
  .filter((number) => number !== undefined)

function checked(number: string) {
  const read = readBuild(readFileSync(new URL(`${number}.build.json`, here)))
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  // Version 1 kept every slack side at its pretension, as a sprung tensioner does; the default is now a fixed one.
  return check({ ...read.value, track: { ...read.value.track, tensioner: 'sprung' } })
}

const owedBy = (number: string) =>
  JSON.parse(readFileSync(new URL(`${number}.expected.json`, here), 'utf8')) as Golden

it('there are twenty golden builds', () => {
  expect(numbers).toHaveLength(20)
})

/** What version 2 changed for a build: more on soil. */
function changedFor(number: string) {
  const { ground } = JSON.parse(readFileSync(new URL(`${number}.build.json`, here), 'utf8')) as { ground: { model: string } }
  const soil = ground.model === 'soil'
  return {
    figures: soil ? { ...amendedFigures, ...amendedFiguresOnSoil } : amendedFigures,
    limits: soil ? { ...amendedLimits, ...amendedLimitsOnSoil } : amendedLimits,
  }
}

describe.each(numbers)('golden build %s', (number) => {
  const owed = owedBy(number)
  const changed = changedFor(number)

  it('gives every figure that version 2 has not changed', () => {
    const { figures } = checked(number)
    const names = Object.keys(owed.figures).filter((name) => !(name in changed.figures))
    const ours = Object.keys(figures).filter((name) => !(name in changed.figures) && !(name in newFigures))
    expect(ours.sort()).toEqual(names.sort())
    const found: Readonly<Record<string, number | null>> = figures
    const wrong = Object.entries(owed.figures)
      .filter(([name]) => !(name in changed.figures))
      .filter(([name, value]) => !isClose(found[name], value, closenessOfFigure(name, owed)))
      .map(([name, value]) => `${name}: ${found[name]} instead of ${value}`)
    expect(wrong).toEqual([])
  })

  it('gives every limit that version 2 has not changed', () => {
    const { limits } = checked(number)
    const moved = new Set(owed.limits
        .filter(({ id, case: at }) => `${id}:${at}` in amendedCases || `${number} ${id}` in amendedInBuilds)
        .map(({ id }) => id),
    )
    const isAmended = (id: string) => withoutNumber(id) in changed.limits || moved.has(id)
    const kept = owed.limits.filter(({ id }) => !isAmended(id))
    const isNew = ({ id }: { readonly id: string }) => withoutNumber(id) in newLimits || isAmended(id)
    const words = (rows: readonly { id: string; standing: string; case: string; unit: string }[]) =>
      rows.map(({ id, standing, case: at, unit }) => `${id} ${standing} ${at} ${unit}`).sort()
    expect(words(limits.filter((limit) => !isNew(limit)))).toEqual(words(kept))
    const wrong = kept.flatMap((limit) => {
      const found = limits.find(({ id }) => id === limit.id)
      const near = closenessOfLimit(limit)
      const parts: string[] = []
      if (!isClose(found?.actual, limit.actual, near)) parts.push(`actual ${found?.actual} instead of ${limit.actual}`)
      if (!isClose(found?.allowed, limit.allowed, near)) parts.push(`allowed ${found?.allowed} instead of ${limit.allowed}`)
      if (!isClose(found?.margin, limit.margin, closenessOfMargin(limit))) {
        parts.push(`margin ${found?.margin} instead of ${limit.margin}`)
      }
      return parts.map((part) => `${limit.id}: ${part}`)
    })
    expect(wrong).toEqual([])
  })
})

it('what is named as amended is there to be amended', () => {
  const figures = new Set(numbers.flatMap((number) => Object.keys(owedBy(number).figures)))
  const limits = new Set(numbers.flatMap((number) => owedBy(number).limits.map(({ id }) => withoutNumber(id))))
  expect(Object.keys({ ...amendedFigures, ...amendedFiguresOnSoil }).filter((name) => !figures.has(name))).toEqual([])
  expect(Object.keys({ ...amendedLimits, ...amendedLimitsOnSoil }).filter((id) => !limits.has(id))).toEqual([])
  const cases = new Set(numbers.flatMap((number) => owedBy(number).limits.map(({ id, case: at }) => `${id}:${at}`)))
  const inBuilds = new Set(numbers.flatMap((number) => owedBy(number).limits.map(({ id }) => `${number} ${id}`)))
  expect(Object.keys(amendedInBuilds).filter((one) => !inBuilds.has(one))).toEqual([])
  expect(Object.keys(amendedCases).filter((one) => !cases.has(one))).toEqual([])
})

it('the comparison notices what is off by more than its tolerance', () => {
  const owed = owedBy('01')
  const unnoticed = Object.entries(owed.figures).filter(([name, value]) => {
    if (value === null || value === 0) return false
    // 2e-6 of the value, or of a degree or a slip: just outside of the widest tolerance that is in use.
    const off = value + 2e-6 * Math.max(Math.abs(value), 1)
    return isClose(off, value, closenessOfFigure(name, owed)) || isClose(null, value, closenessOfFigure(name, owed))
  })
  expect(unnoticed).toEqual([])
})
