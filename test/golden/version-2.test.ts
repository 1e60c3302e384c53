import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBuild } from '../../shared-engine/entries/read.ts'
import { check } from '../../shared-engine/check.ts'
import { checkedJson } from '../../src-main/cli/check/json.ts'
import { withoutNumber } from './amended.ts'
import { pending } from './pending.ts'
import { closenessOfFigure, closenessOfLimit, closenessOfMargin, isClose, type Golden, type GoldenLimit } from './tolerances.ts'

interface Row extends GoldenLimit {
  readonly group: string
  readonly unsure?: true
}

interface Owed extends Golden {
  readonly limits: readonly Row[]
  readonly stages: readonly Values[]
  readonly alarms: readonly Values[]
  readonly spreads: Readonly<Record<string, Values>>
  readonly notJudged: readonly { readonly id: string; readonly needs: readonly string[] }[]
}

type Values = Readonly<Record<string, unknown>>

const here = new URL('2/', import.meta.url)
const numbers = readdirSync(here)
  .map((name) => /^(\d\d)\.build\.json$/.exec(name)?.[1])
  .filter((number) => number !== undefined)

function given(number: string): Owed {
  const read = readBuild(readFileSync(new URL(`${number}.build.json`, here)))
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return JSON.parse(checkedJson(check(read.value))) as Owed
}

const owedBy = (number: string) => JSON.parse(readFileSync(new URL(`${number}.expected.json`, here), 'utf8')) as Owed

/** What the model's sections on heat and currents decide: other builds owe it. */
const ofHeat =
  /^(pack\.|cooling\.|wire\.|stepdown\.|accessory\.|motor\.(current|temperature|burst-heat)|controller\.(current|temperature|over-volts|ripple)|vehicle\.(brake-hold|park)$)/

const mechanics = (limits: readonly Row[]) => limits.filter(({ id }) => !ofHeat.test(id))
const known = (list: readonly string[], name: string) => list.includes(name)
const words = ({ id, group, standing, case: at, unit, unsure }: Row) =>
  [id, group, standing, at, unit, ...(unsure === true ? ['unsure'] : [])].join(' ')

/** Figures that are not as owed, by name. */
function wrongFigures(number: string): Map<string, string> {
  const [found, owed] = [given(number).figures, owedBy(number)]
  const wrong = Object.entries(owed.figures).filter(
    ([name, value]) => !(name in found) || !isClose(found[name], value, closenessOfFigure(name, owed)),
  )
  return new Map(wrong.map(([name, value]) => [name, `${name}: ${found[name]} instead of ${value}`]))
}

/** Limits that are not as owed, by id: absent, too many, or other in words or numbers. */
function wrongLimits(number: string): Map<string, string> {
  const [found, owed] = [mechanics(given(number).limits), owedBy(number).limits]
  const wrong = new Map<string, string>()
  for (const { id } of found) if (!owed.some((limit) => limit.id === id)) wrong.set(id, `${id} is not owed`)
  for (const limit of owed) {
    const ours = found.find(({ id }) => id === limit.id)
    if (ours === undefined) {
      wrong.set(limit.id, `${limit.id} is missing`)
      continue
    }
    const near = closenessOfLimit(limit)
    const parts = [
      ...(words(ours) === words(limit) ? [] : [`${words(ours)} instead of ${words(limit)}`]),
      ...(isClose(ours.actual, limit.actual, near) ? [] : [`actual ${ours.actual} instead of ${limit.actual}`]),
      ...(isClose(ours.allowed, limit.allowed, near) ? [] : [`allowed ${ours.allowed} instead of ${limit.allowed}`]),
      ...(isClose(ours.margin, limit.margin, closenessOfMargin(limit)) ? [] : [`margin ${ours.margin} instead of ${limit.margin}`]),
    ]
    if (parts.length > 0) wrong.set(limit.id, `${limit.id}: ${parts.join('; ')}`)
  }
  return wrong
}

/** 1e-6: alarms, stages and spreads hang on the equilibrium here and there; words and whole numbers are held exactly. */
const near = { relative: 1e-6, absolute: 0, reason: 'hangs on the equilibrium' }

function same(found: unknown, owed: unknown): boolean {
  if (typeof owed === 'number' || owed === null) return isClose(found as number | null | undefined, owed, near)
  if (typeof owed !== 'object') return found === owed
  if (typeof found !== 'object' || found === null) return false
  const [ours, theirs] = [found as Values, owed as Values]
  return (
    Array.isArray(ours) === Array.isArray(theirs) &&
    Object.keys(ours).sort().join() === Object.keys(theirs).sort().join() &&
    Object.keys(theirs).every((key) => same(ours[key], theirs[key]))
  )
}

/** A part of the answer as it is compared, what heat decides left out. */
function partOf(answer: Owed, part: 'stages' | 'alarms' | 'spreads' | 'notJudged'): unknown {
  if (part === 'alarms') return (answer.alarms ?? []).filter(({ id }) => ['rpm', 'signal-lost'].includes(String(id)))
  if (part === 'notJudged') return (answer.notJudged ?? []).filter(({ id }) => !ofHeat.test(id))
  return answer[part]
}

const parts = ['stages', 'alarms', 'spreads', 'notJudged'] as const

it('there are ten golden builds of version 2', () => {
  expect(numbers).toHaveLength(10)
})

describe.each(numbers)('golden build %s of version 2', (number) => {
  it('gives every figure', () => {
    const wrong = [...wrongFigures(number)].filter(([name]) => !known(pending.figures, name))
    expect(wrong.map(([, text]) => text)).toEqual([])
  })

  it('gives every limit', () => {
    const wrong = [...wrongLimits(number)].filter(([id]) => !known(pending.limits, withoutNumber(id)))
    expect(wrong.map(([, text]) => text)).toEqual([])
  })

  it('gives the ledger in order', () => {
    const ids = (rows: readonly Row[]) =>
      mechanics(rows)
        .map(({ id }) => id)
        .filter((id) => !known(pending.limits, withoutNumber(id)))
    expect(ids(given(number).limits)).toEqual(ids(owedBy(number).limits))
  })

  it.each(parts.filter((part) => !known(pending.parts, part)))('gives its %s', (part) => {
    const [found, owed] = [partOf(given(number), part), partOf(owedBy(number), part)]
    // Shown side by side where they differ; what is close enough is the same.
    expect(same(found, owed) ? owed : found).toEqual(owed)
  })
})

describe('what is pending', () => {
  it('is still wrong somewhere', () => {
    const figures = new Set(numbers.flatMap((number) => [...wrongFigures(number).keys()]))
    const limits = new Set(numbers.flatMap((number) => [...wrongLimits(number).keys()].map(withoutNumber)))
    const done = parts.filter((part) => numbers.every((number) => same(partOf(given(number), part), partOf(owedBy(number), part))))
    expect(pending.figures.filter((name) => !figures.has(name))).toEqual([])
    expect(pending.limits.filter((id) => !limits.has(id))).toEqual([])
    expect(pending.parts.filter((part) => known(done, part))).toEqual([])
  })
})
