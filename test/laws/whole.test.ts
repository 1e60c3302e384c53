import fc from 'fast-check'
import { expect, test } from 'vitest'
import { alarmRows } from '../../shared-engine/alarms/rows.ts'
import { alarmsOf } from '../../shared-engine/alarms/alarms.ts'
import { alarmWords } from '../../shared-engine/alarms/words.ts'
import { check, type Checked } from '../../shared-engine/check.ts'
import { changesFor, passedOf, passedWords } from '../../shared-engine/drive/passed.ts'
import { demoPatterns } from '../../shared-engine/drive/demos.ts'
import type { Pattern } from '../../shared-engine/drive/drive.ts'
import type { DriveRun } from '../../shared-engine/drive/result.ts'
import { runDrive } from '../../shared-engine/drive/run.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { completeBuild, readBuildValue } from '../../shared-engine/entries/read.ts'
import { fieldOf } from '../../shared-engine/entries/fields.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { sentenceOf } from '../../shared-engine/mistakes/catalogue.ts'
import { mishapsOf, mishapSentence } from '../../shared-engine/explain/mishaps.ts'
import { orderOf } from '../../shared-engine/explain/order.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'
import { wholeBuild } from '../fixtures/build/whole.ts'

// Whatever a builder may enter within the ranges has an answer: numbers, or a word why there is none; books that balance;
// no sentence with a hole in it. To hunt for longer: `PITCHLINE_WHOLE=3000 PITCHLINE_SEED=random PITCHLINE_PATIENCE=3600`,
// and `--testTimeout`. A counterexample is printed as a file that `pitchline check` reads.

const runs = Number(process.env['PITCHLINE_WHOLE'] ?? 30)

/** Sentences must not show what JavaScript shows for nothing. */
const hole = /NaN|Infinity|undefined|null|\[object/

/** Where numbers of a result are not finite. */
function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} = ${value}`]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`))
}

function sentencesOf(checked: Checked): string[] {
  const alarms = alarmsOf(checked)
  return [
    ...checked.notes,
    ...mishapsOf(checked).map((one) => mishapSentence(one, 'metric')),
    ...orderOf(checked, 'metric').map((one) => JSON.stringify(one).replaceAll(':null', '')),
    ...alarms.flatMap((alarm) => Object.values(alarmWords(alarm, alarms, 'metric') ?? {})),
  ]
}

const groupOrder = ['holds', 'lasts', 'mishap']

/** Rows that stand before one that belongs before them: by group, then no margin at all first, then the least. */
function outOfOrder(rows: readonly LimitRow[]): string[] {
  return rows.slice(1).flatMap((row, at) => {
    const before = rows[at]
    if (before === undefined) return []
    const [one, other] = [groupOrder.indexOf(before.group), groupOrder.indexOf(row.group)]
    const fits = one === other ? (before.margin ?? -Infinity) <= (row.margin ?? -Infinity) : one < other
    return fits ? [] : [`${before.id} (${before.group}) before ${row.id} (${row.group})`]
  })
}

function expectAnswered(stored: StoredBuild): void {
  const checked = check(completeBuild(stored))
  const { figures, limits, stages } = checked
  expect(notFinite({ figures, limits, stages, alarms: alarmRows(checked) })).toEqual([])
  expect(outOfOrder(limits)).toEqual([])
  expect(sentencesOf(checked).filter((text) => hole.test(text))).toEqual([])
}

test('check, its alarms and sentences: numbers or nothing, margins in order, no hole in a sentence', () => {
  fc.assert(fc.property(wholeBuild, expectAnswered), { numRuns: runs, endOnFailure: true })
})

test('what is refused is refused by a sentence, whatever is put in place of an entry', () => {
  const odd = fc.constantFrom<unknown>(null, '', -1, 0, 1e300, -1e300, true, [], {}, 'none')
  let refused = 0
  fc.assert(
    fc.property(wholeBuild, fc.nat(), odd, (stored, pick, value) => {
      const leaves = leavesOf(stored)
      const read = readBuildValue(withLeaf(stored, leaves[pick % leaves.length] ?? [], value))
      if (read.ok) return
      refused += 1
      for (const sentence of read.mistakes.map(sentenceOf)) {
        expect(sentence).toMatch(/\w{3}.*\w/)
        expect(sentence).not.toMatch(/undefined|\[object/)
      }
    }),
    { numRuns: 2 * runs },
  )
  expect(refused).toBeGreaterThan(runs / 2)
})

/** Keys that lead to each value of a build. */
function leavesOf(value: unknown, keys: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return [keys]
  return Object.entries(value).flatMap(([key, inner]) => leavesOf(inner, [...keys, key]))
}

function withLeaf(value: unknown, [key, ...rest]: readonly string[], leaf: unknown): unknown {
  if (key === undefined || typeof value !== 'object' || value === null) return leaf
  if (Array.isArray(value))
    return value.map((one, at) => (String(at) === key ? withLeaf(one, rest, leaf) : one))
  return { ...value, [key]: withLeaf((value as Record<string, unknown>)[key], rest, leaf) }
}

/** Rows of a pattern, each half a minute at most: what a drive does is done by then. */
function shortened({ rows, ...pattern }: Pattern): Pattern {
  return { ...pattern, rows: rows.slice(0, 6).map((row) => ({ ...row, seconds: Math.min(row.seconds, 30) })) }
}

/** J that the lumps of a drive hold at its end more than at its start; null where one is not followed. */
function heatKept(machine: Machine, run: DriveRun): number | null {
  const { motor, controller, cooling, pack, ground, service } = machine
  const two = motor.windingToCase !== null && motor.caseToSink !== null
  const air = ground.airTemperature
  const kept = (capacity: number | null, end: number | null, from = air) =>
    capacity === null || end === null ? NaN : capacity * (end - from)
  const winding = kept(two ? motor.windingHeatCapacity : motor.heatCapacity, run.windingEndC)
  const shell = two ? kept(motor.caseHeatCapacity, run.caseEndC) : 0
  const ofController = kept(controller.heatCapacity, run.controllerEndC)
  const coolant =
    cooling === null ? 0 : kept(cooling.density * cooling.specificHeat * cooling.volume, run.coolantEndC)
  const cells = kept(pack.heatCapacity, run.packEndC, service.packTemperature)
  const all = motor.count * (winding + shell + ofController) + coolant + cells
  return Number.isNaN(all) ? null : all
}

test('a drive: numbers at every moment, books of energy and heat that balance to 1e-6, what it passes in words', () => {
  let books = 0
  let ended = 0
  fc.assert(
    fc.property(wholeBuild, fc.nat(), (stored, pick) => {
      const build = completeBuild(stored)
      const machine = machineOf(build)
      const own = { name: 'own', notes: '', rows: machine.service.pattern.rows }
      const demo = demoPatterns[pick % demoPatterns.length] as Pattern
      for (const pattern of [shortened(own), shortened(demo)]) {
        const run = runDrive(build, pattern, { steps: 20_000 })
        expect(notFinite(run)).toEqual([])
        expect(run.series.length).toBeGreaterThan(0)
        expect(run.end).not.toBe('too-stiff')
        if (run.end !== 'too-long') ended += 1
        const { pack, sinks, motion, rest } = run.energy
        const turnedOver = [pack, motion, ...Object.values(sinks), ...Object.values(rest)].reduce(
          (sum, one) => sum + Math.abs(one),
          0,
        )
        // 1e-6: the contract's; 1 mJ: the floor of the steps
        expect(Math.abs(rest.steps)).toBeLessThanOrEqual(1e-6 * turnedOver + 1e-3)
        const kept = heatKept(machine, run)
        if (kept !== null) {
          books += 1
          const heat = Math.abs(run.heatMade) + Math.abs(run.heatToAir) + Math.abs(kept)
          expect(Math.abs(run.heatMade - run.heatToAir - kept)).toBeLessThanOrEqual(1e-6 * heat + 1e-3)
        }
        for (const passed of passedOf(run, pattern.rows)) {
          expect(passedWords(passed, 'metric')).not.toMatch(hole)
          for (const { path } of changesFor(passed.id, build)) expect(fieldOf(path)).toBeDefined()
        }
        expect(run.notes.filter((text) => hole.test(text))).toEqual([])
      }
    }),
    { numRuns: Math.ceil(runs / 2), endOnFailure: true },
  )
  expect(books).toBeGreaterThan(runs / 20)
  expect(ended).toBeGreaterThan(runs / 2)
})
