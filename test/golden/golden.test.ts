import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
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
  return check(read.value)
}

const owedBy = (number: string) =>
  JSON.parse(readFileSync(new URL(`${number}.expected.json`, here), 'utf8')) as Golden

it('there are twenty golden builds', () => {
  expect(numbers).toHaveLength(20)
})

describe.each(numbers)('golden build %s', (number) => {
  const owed = owedBy(number)

  it('gives every figure', () => {
    const { figures } = checked(number)
    expect(Object.keys(figures).sort()).toEqual(Object.keys(owed.figures).sort())
    const found: Readonly<Record<string, number | null>> = figures
    const wrong = Object.entries(owed.figures)
      .filter(([name, value]) => !isClose(found[name], value, closenessOfFigure(name, owed)))
      .map(([name, value]) => `${name}: ${found[name]} instead of ${value}`)
    expect(wrong).toEqual([])
  })

  it('gives the ledger, in order of the margins: version 1 knew no groups', () => {
    const limits = checked(number).limits.toSorted((one, other) => {
      const [first, second] = [one.margin ?? -Infinity, other.margin ?? -Infinity]
      if (first !== second) return first < second ? -1 : 1
      return one.id < other.id ? -1 : 1
    })
    expect(limits.map(({ id, standing, case: at, unit }) => `${id} ${standing} ${at} ${unit}`)).toEqual(
      owed.limits.map(({ id, standing, case: at, unit }) => `${id} ${standing} ${at} ${unit}`),
    )
    const wrong = owed.limits.flatMap((limit, place) => {
      const found = limits[place]
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
