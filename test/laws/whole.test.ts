import fc from 'fast-check'
import { expect, test } from 'vitest'
import { alarmRows } from '../../shared-engine/alarms/rows.ts'
import { alarmsOf } from '../../shared-engine/alarms/alarms.ts'
import { alarmWords } from '../../shared-engine/alarms/words.ts'
import { check, type Checked } from '../../shared-engine/check.ts'
import { changesFor, passedOf, passedWords } from '../../shared-engine/drive/passed.ts'
import { demoPatterns } from '../../shared-engine/drive/demos.ts'
import type { Pattern } from '../../shared-engine/drive/drive.ts'
import { runDrive } from '../../shared-engine/drive/run.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { fieldOf } from '../../shared-engine/entries/fields.ts'
import type { Build, StoredBuild } from '../../shared-engine/entries/schema.ts'
import { mishapsOf, mishapSentence } from '../../shared-engine/explain/mishaps.ts'
import { orderOf } from '../../shared-engine/explain/order.ts'
import { leversOf } from '../../shared-engine/remedy/levers.ts'
import { sweep } from '../../shared-engine/sweep/sweep.ts'
import { wrongIn } from '../engine/explain/wrong.ts'
import { wholeBuild } from '../fixtures/build/whole.ts'

// Whatever a builder may enter has an answer: numbers or a word why there is none, workings that come to the same, no
// sentence with a hole in it. `PITCHLINE_WHOLE=2000 PITCHLINE_SEED=random` hunts for longer.

const runs = Number(process.env['PITCHLINE_WHOLE'] ?? 15)

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

function expectAnswered(stored: StoredBuild): void {
  const checked = check(completeBuild(stored))
  const { figures, limits, stages } = checked
  expect(notFinite({ figures, limits, stages, alarms: alarmRows(checked) })).toEqual([])
  expect(sentencesOf(checked).filter((text) => hole.test(text))).toEqual([])
  expect(wrongIn(checked)).toEqual([])
}

test('check, its alarms, sentences and workings', () => {
  fc.assert(fc.property(wholeBuild, expectAnswered), { numRuns: runs })
})

test('a sweep of an entry over a part of its range', () => {
  fc.assert(
    fc.property(wholeBuild, fc.nat(), fc.constantFrom(0.5, 0.9, 1.1, 2), (stored, pick, times) => {
      const levers = leversOf(completeBuild(stored)).filter(
        ({ path }) => typeof fieldOf(path)?.low === 'number',
      )
      const { path } = levers[pick % levers.length] ?? { path: 'vehicle.massKg' }
      const { low = 0, high = 1, whole } = fieldOf(path) ?? {}
      const from = whole === true ? low : low + (high - low) * 0.01
      const to = whole === true ? Math.min(high, low + 12) : Math.min(high, from * (1 + times))
      if (!(to > from)) return
      const figures = ['topSpeedMps', 'jamForceN', 'steadyMotorC', 'worstMargin']
      const swept = sweep(stored, { path, from, to, steps: 6, figures })
      if (!swept.ok) throw new Error(`${path}: ${JSON.stringify(swept.mistakes)}`)
      expect(notFinite(swept.value.points.map(({ gap: _gap, ...point }) => point))).toEqual([])
    }),
    { numRuns: runs },
  )
})

/** A part of a drive that ships: a whole winter's day is too long here. */
function patternOf(pick: number): Pattern {
  const demo = demoPatterns[pick % demoPatterns.length] as Pattern
  const rows = demo.rows.slice(0, 4).map((row) => ({ ...row, seconds: Math.min(row.seconds, 60) }))
  return { ...demo, rows }
}

/** The build's own drive, each row a minute at most. */
function ownPattern(build: Build): Pattern {
  const rows = machineOf(build).service.pattern.rows.slice(0, 4)
  return { name: 'own', notes: '', rows: rows.map((row) => ({ ...row, seconds: Math.min(row.seconds, 60) })) }
}

test('a drive, what it passes and what to change', () => {
  fc.assert(
    fc.property(wholeBuild, fc.nat(), (stored, pick) => {
      const build = completeBuild(stored)
      for (const pattern of [patternOf(pick), ownPattern(build)]) {
        const run = runDrive(build, pattern)
        // A pack that cannot feed its own pump and lamps has no volts: its moments are gaps.
        const { series, ...whole } = run
        expect(series.length).toBeGreaterThan(0)
        expect(notFinite(whole)).toEqual([])
        // 1e-6: the energy books of `docs/model.md` §7
        expect(Math.abs(run.energy.rest.steps)).toBeLessThanOrEqual(1e-6 * Math.max(1, run.energy.pack))
        for (const passed of passedOf(run, pattern.rows)) {
          expect(passedWords(passed, 'metric')).not.toMatch(hole)
          for (const { path } of changesFor(passed.id, build)) expect(fieldOf(path)).toBeDefined()
        }
        expect(run.notes.filter((text) => hole.test(text))).toEqual([])
      }
    }),
    { numRuns: runs },
  )
})
