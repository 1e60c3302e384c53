import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBuildForReadings } from '../../shared-engine/measure/build.ts'
import { measure, type MeasuredNumber, type Measurement } from '../../shared-engine/measure/measure.ts'
import { readReadings } from '../../shared-engine/measure/read.ts'
import { isTestId } from '../../shared-engine/reference/measurements.ts'

// Readings of invented machines with what another implementation of the same contract makes of them. Agreement: values
// to 1e-9 of the larger of value and standard uncertainty (a warm-up's to 1e-6: it is a root), uncertainties, factors and
// degrees of freedom to 1e-4, budget parts to 1e-3 where they are over 1e-4 of the whole, notes as a set.

interface Expected {
  readonly test: string
  readonly verdict: string
  readonly origin: string
  readonly results: readonly (MeasuredNumber & { path: string; verdict: string })[]
  readonly figures: Readonly<Record<string, MeasuredNumber>>
  readonly notes: readonly { readonly code: string; readonly about: string }[]
}

const here = new URL('measure/', import.meta.url)
const numbers = readdirSync(here).flatMap((name) => /^(\d\d)\.readings\.json$/.exec(name)?.[1] ?? [])
const fileOf = (name: string) => readFileSync(new URL(name, here))

function measured(number: string, expected: Expected): Measurement {
  if (!isTestId(expected.test)) throw new Error(expected.test)
  const withBuild = existsSync(new URL(`${number}.build.json`, here))
  const build = withBuild ? readBuildForReadings(fileOf(`${number}.build.json`)) : null
  if (build?.ok === false) throw new Error(JSON.stringify(build.mistakes))
  const readings = readReadings(expected.test, fileOf(`${number}.readings.json`), build?.value ?? null)
  if (!readings.ok) throw new Error(JSON.stringify(readings.mistakes))
  const result = measure(readings.value, build?.value ?? null)
  if (!result.ok) throw new Error(JSON.stringify(result.mistakes))
  return result.value
}

function near(found: number | null | undefined, owed: number | null, share: number, floor = 0): boolean {
  if (found === null || found === undefined || owed === null) return found === owed
  return Math.abs(found - owed) <= share * Math.max(Math.abs(owed), floor)
}

function differences(found: MeasuredNumber | undefined, owed: MeasuredNumber, closeness: number): string[] {
  const wrong: string[] = []
  const say = (what: string, one: unknown, other: unknown) =>
    wrong.push(`${owed.name} ${what}: ${String(one)} instead of ${String(other)}`)
  if (found === undefined) return [`${owed.name} is not there`]
  if (!near(found.value, owed.value, closeness, owed.standardUncertainty ?? 0)) say('value', found.value, owed.value)
  for (const key of ['standardUncertainty', 'degreesOfFreedom', 'coverageFactor', 'plusMinus'] as const)
    if (!near(found[key], owed[key], 1e-4)) say(key, found[key], owed[key])
  const weighty = (number: MeasuredNumber) =>
    number.budget.filter((part) => part.standardUncertainty > 1e-4 * (number.standardUncertainty ?? 0))
  const parts = new Map(weighty(found).map((part) => [`${part.input} ${part.kind}`, part]))
  const asked = weighty(owed)
  if (parts.size !== asked.length) say('parts', [...parts.keys()], asked.map((part) => `${part.input} ${part.kind}`))
  for (const part of asked) {
    const own = parts.get(`${part.input} ${part.kind}`)
    if (!near(own?.standardUncertainty, part.standardUncertainty, 1e-3) || own?.degreesOfFreedom !== part.degreesOfFreedom)
      say(`${part.input} ${part.kind}`, JSON.stringify(own), JSON.stringify(part))
  }
  return wrong
}

it('there are 72 examples, two or more of each test', () => {
  expect(numbers).toHaveLength(72)
})

describe.each(numbers)('readings %s', (number) => {
  const expected = JSON.parse(fileOf(`${number}.expected.json`).toString()) as Expected
  const closeness = expected.test === 'warm-up' ? 1e-6 : 1e-9

  it(`of ${expected.test} give what is owed`, () => {
    const found = measured(number, expected)
    expect([found.verdict, found.origin]).toEqual([expected.verdict, expected.origin])
    const names = (results: readonly { name: string; path: string; unit: string; verdict: string }[]) =>
      results.map(({ name, path, unit, verdict }) => [name, path, unit, verdict])
    expect(names(found.results)).toEqual(names(expected.results))
    expect(Object.keys(found.figures).sort()).toEqual(Object.keys(expected.figures).sort())
    const wrong = [
      ...expected.results.flatMap((owed, at) => differences(found.results[at], owed, closeness)),
      ...Object.values(expected.figures).flatMap((owed) => differences(found.figures[owed.name], owed, closeness)),
    ]
    expect(wrong).toEqual([])
    const notes = (list: readonly { code: string; about: string }[]) => list.map(({ code, about }) => `${code} ${about}`).sort()
    expect(notes(found.notes)).toEqual(notes(expected.notes))
    for (const { about, sentence } of found.notes) expect(sentence).toContain(about)
  })
})
