import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { compare } from '../../../shared-engine/compare/compare.ts'
import { placesOf } from '../../../shared-engine/entries/condition.ts'
import { entryTable, fieldOf, groups } from '../../../shared-engine/entries/fields.ts'
import { patternOf } from '../../../shared-engine/entries/path.ts'
import { completeBuild, readBuildValue } from '../../../shared-engine/entries/read.ts'
import { consequenceOf } from '../../../shared-engine/explain/consequences.ts'
import { breaksOf, mishapSentence } from '../../../shared-engine/explain/mishaps.ts'
import { entriesBehind } from '../../../shared-engine/explain/related.ts'
import { workingOf } from '../../../shared-engine/explain/table.ts'
import { figureTable } from '../../../shared-engine/figures/table.ts'
import type { LimitId } from '../../../shared-engine/limits/id.ts'
import { limitsOf } from '../../../shared-engine/limits/table.ts'
import { measureOf } from '../../../shared-engine/search/space-measure.ts'
import { sweep } from '../../../shared-engine/sweep/sweep.ts'
import { uncertaintyOf } from '../../../shared-engine/uncertainty/uncertainty.ts'
import { checkedJson } from '../../../src-main/cli/check/json.ts'
import { fullBuild } from '../../fixtures/build/plain.ts'
import { wholeBuild } from '../../fixtures/build/whole.ts'

// Every figure and every limit is had wherever a builder may ask for it: no list of names here but the program's own, so
// that one that is added is looked for in all of these places.

const read = readBuildValue(fullBuild())
if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
const full = check(read.value)
const names = figureTable.map(({ name }) => name)

/** Limits of builds with each part there or not, one of each kind: those of the second reduction are those of the first. */
const samples = fc.sample(wholeBuild, { numRuns: 90, seed: 11 }).map((stored) => check(completeBuild(stored)))
const byKind = new Map<string, { readonly id: LimitId; readonly in: (typeof samples)[number] }>()
for (const checked of [full, ...samples])
  for (const { id } of checked.limits) byKind.set(patternOf(id), { id, in: checked })
const judged = [...byKind.values()]
const possible = [full, ...samples].flatMap(({ machine }) => limitsOf(machine))

describe('every limit', () => {
  it('comes up in some build', () => {
    const missed = [...new Set(possible.map(({ id }) => patternOf(id)))].filter((kind) => !byKind.has(kind))
    expect(missed).toEqual([])
  })

  it('has a working with a source, and entries behind it that are fields with help', () => {
    for (const { id, in: checked } of judged) {
      const working = workingOf(checked, id)
      expect(working?.source, id).toMatch(/\w{3}/)
      for (const path of entriesBehind(checked, id).filter((one) => groups[patternOf(one)] === undefined))
        expect(fieldOf(path)?.help ?? '', `${id}: ${path}`).toMatch(/\w{4}.*[.?]$/)
    }
  })

  it('has an entry behind it that a remedy may move', () => {
    const stuck = judged.filter(({ id, in: checked }) => {
      const behind = entriesBehind(checked, id)
      return !behind.some((path) => fieldOf(path)?.lever !== undefined)
    })
    expect(stuck.map(({ id }) => id)).toEqual([])
  })

  it('says in a sentence what happens where it is passed', () => {
    for (const { id } of possible) {
      const said = consequenceOf(id)
      expect(said, id).toMatch(/^[A-Z].{8,}\.$/)
      expect(said, id).not.toMatch(/#|breaks something/)
    }
  })

  it('of a mishap has a sentence of its own', () => {
    const mishaps = possible.filter(({ group }) => group === 'mishap')
    expect(mishaps.length).toBeGreaterThan(10)
    for (const { id } of mishaps) {
      const free = { kind: 'free', aboveSpeed: null, limiterTorque: null, slipsInUse: false } as const
      const said = mishapSentence({ limit: id, breaks: breaksOf(id), ...free }, 'metric')
      expect(said, id).not.toMatch(/something/)
    }
  })

  it('needs entries that stand in a form', () => {
    for (const { id, needs } of possible)
      for (const path of needs) {
        const field = fieldOf(path)
        if (groups[patternOf(path)] !== undefined) continue
        expect(field?.help ?? '', `${id} needs ${path}`).toMatch(/\w{3}/)
        expect(field?.section, `${id} needs ${path}`).not.toBeNull()
      }
  })

  it('is told by the uncertainty, side by side and as JSON', () => {
    const uncertain = uncertaintyOf(read.value, { samples: 8, seed: 1 }).limits.map(({ id }) => id)
    const side = compare([fullBuild(), fullBuild()]).limits.map(({ id }) => id)
    const json = JSON.parse(checkedJson(full)) as { limits: { id: string }[] }
    const ids = full.limits.map(({ id }) => id).toSorted()
    expect(uncertain.toSorted()).toEqual(ids)
    expect(side.toSorted()).toEqual(ids)
    expect(json.limits.map(({ id }) => id).toSorted()).toEqual(ids)
  })
})

describe('every figure', () => {
  it('has a working with a source, whether it exists or not', () => {
    for (const name of names) expect(workingOf(full, name)?.source, name).toMatch(/\w{3}/)
  })

  it('can be aimed for, held and swept', () => {
    for (const figure of names) expect(measureOf({ figure }, 'aim').ok, figure).toBe(true)
    const swept = sweep(fullBuild(), { path: 'vehicle.massKg', from: 10, to: 20, steps: 1, figures: names })
    if (!swept.ok) throw new Error(JSON.stringify(swept.mistakes))
    expect(swept.value.measures.map(({ name }) => name)).toEqual(names)
    for (const [at, name] of names.entries()) {
      const [value] = [swept.value.points[0]?.figures[at]]
      expect(value === null || Number.isFinite(value), name).toBe(true)
    }
  })

  it('stands side by side and in JSON', () => {
    expect(compare([fullBuild()]).figures.map(({ figure }) => figure.name)).toEqual(names)
    const json = JSON.parse(checkedJson(full)) as { figures: object }
    expect(Object.keys(json.figures)).toEqual(expect.arrayContaining(names))
  })
})

describe('every entry', () => {
  it('has help and, where it has a form, a label', () => {
    for (const [pattern, field] of entryTable.fields) {
      expect(field.help, pattern).toMatch(/\w{3}/)
      expect(field.label, pattern).toMatch(/\w/)
    }
  })

  it('that a search can vary is a number of a build, or part of one', () => {
    const axes = [...entryTable.fields].filter(([, field]) => field.axis !== undefined)
    expect(axes.length).toBeGreaterThan(4)
    for (const [pattern, field] of axes)
      expect(placesOf(pattern, field, read.value).length, pattern).toBeGreaterThan(0)
  })
})
