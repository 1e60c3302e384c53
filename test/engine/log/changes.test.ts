import path from 'node:path'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { changesBetween } from '../../../shared-engine/log/changes/changes.ts'
import type { ToldRun } from '../../../shared-engine/log/changes/course.ts'
import { changesFromBuild } from '../../../shared-engine/log/changes/from-build.ts'
import type { ChangeId } from '../../../shared-engine/log/changes/quantity.ts'
import type { Change, Changes } from '../../../shared-engine/log/changes/result.ts'
import { changeSentence, notComparedSentence } from '../../../shared-engine/log/changes/sentences.ts'
import { changesPlot } from '../../../shared-engine/draw/plots/changes.ts'
import { LogReading } from '../../../shared-engine/log/log.ts'
import { changedRun, usualPut, type Put } from './changed-runs.ts'
import { buildFrom, demoBuild, logFolder } from './reading.ts'

// Differences of two runs against what was put into them: invented pairs, hills and driver drawn anew for each. An interval
// of 95 of 100 that is honest holds the truth about that often, and where nothing changed nothing is told.

const pairs = Number(process.env['PITCHLINE_RUNS'] ?? 5)

function told(text: string | Uint8Array, build = demoBuild): ToldRun {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text
  const reading = new LogReading({ build, bytes, choice: {}, alarms: null })
  while (!reading.done) reading.step()
  const [log, result] = [reading.read(), reading.result()]
  if (log === null || result?.ok !== true) throw new Error('a log of this test was refused')
  return { log, episodes: result.value.episodes }
}

const before = (seed: number) => told(changedRun(usualPut, seed, 1))
const after = (seed: number, put: Partial<Put>) => told(changedRun({ ...usualPut, ...put }, seed, 2))
const pairOf = (seed: number, put: Partial<Put>): Changes => changesBetween(before(seed), after(seed, put))

const changeOf = ({ changes }: Changes, id: ChangeId): Change => {
  const found = changes.find((one) => one.id === id)
  if (found === undefined) throw new Error(`${id} was not compared`)
  return found
}

describe('two runs of one machine', () => {
  it('where nothing changed nothing is told; what was put in lies within its interval', () => {
    let [held, looked, alarms, found] = [0, 0, 0, 0]
    for (let seed = 1; seed <= pairs; seed += 1) {
      const first = before(seed)
      const same = changesBetween(first, after(seed, {}))
      if (same.changes.some((one) => one.told)) alarms += 1
      const other = changesBetween(first, after(seed, { moreAmps: 4, moreOhm: 0.02 }))
      const truths = [
        [changeOf(same, 'pack-amps'), 0],
        [changeOf(same, 'pack-ohms'), 0],
        [changeOf(other, 'pack-amps'), 4],
        [changeOf(other, 'pack-ohms'), 0.02],
      ] as const
      for (const [{ difference, within }, truth] of truths) {
        looked += 1
        if (Math.abs(difference - truth) <= within) held += 1
      }
      expect(changeOf(other, 'pack-ohms').told).toBe(true)
      if (changeOf(other, 'pack-amps').told) found += 1
    }
    console.log(
      `${held} of ${looked} intervals hold the truth; of ${pairs} pairs ${alarms} told of nothing, ${found} of 4 A`,
    )
    expect(found).toBeGreaterThanOrEqual(0.8 * pairs)
    expect(held / looked).toBeGreaterThanOrEqual(0.9)
    expect(alarms).toBeLessThanOrEqual(Math.ceil(0.02 * pairs))
  })

  it('runs that do not overlap are refused with what they lack', () => {
    const fast = pairOf(1, { rpm: [3200, 4200] })
    const { notCompared } = fast
    const amps = notCompared.find(({ id }) => id === 'pack-amps')
    expect(amps?.condition).toBe('speed')
    expect(amps && notComparedSentence(amps, 'metric')).toMatch(
      /do not overlap in speed: .+ before, .+ after\./,
    )
    const hot = pairOf(1, { warm: 75 })
    expect(hot.notCompared.find(({ id }) => id === 'pack-amps')?.condition).toBe('motorC')
    expect(hot.changes.some(({ id }) => id === 'pack-amps')).toBe(false)
  })

  it('a run beside itself has no difference at all', () => {
    const run = told(changedRun(usualPut, 3, 1))
    const still = changesPlot(changesBetween(run, run), { system: 'metric', size: { width: 600, height: 0 } })
    expect(still.plot?.x.high).toBeGreaterThan(0)
    for (const one of changesBetween(run, run).changes) {
      expect(Math.abs(one.difference)).toBeLessThan(1e-9 * Math.abs(one.before))
      expect(one.told).toBe(false)
    }
  })

  it('are drawn as parts of what they were, a row for each; what is told is filled, what is not hatched', () => {
    const of = (id: ChangeId, told: boolean): Change => ({
      id,
      before: 20,
      after: 23,
      difference: 3,
      within: told ? 1 : 5,
      told,
      scatter: [0.8, null],
      stretches: [12, 14],
      stretchSeconds: 4,
      conditions: [],
    })
    const look = { system: 'metric', size: { width: 600, height: 0 } } as const
    const drawn = changesPlot(
      { against: 'log', changes: [of('pack-amps', true), of('motor-amps', false)] },
      look,
    )
    expect(drawn.summary).toMatch(/^1 of 2 differences are told/)
    const text = JSON.stringify(drawn.shapes)
    expect(text).toContain('Pack current at the same speed')
    expect(text.match(/"hatch"/g)).toHaveLength(1)
    // 15 % ± 5 % and 15 % ± 25 %: the axis goes from below nothing to 40 %.
    expect(drawn.plot?.x.low).toBeLessThan(-0.09)
    expect(drawn.plot?.x.high).toBeGreaterThanOrEqual(0.4)
    expect(changesPlot({ against: 'build', changes: [] }, look).plot).toBeNull()
  })
})

describe('a run beside its build', () => {
  // The golden log was simulated with this very build, in hills: a pack's resistance is what it says, and nothing else
  // can be said of hills than that the interval is wide.
  it('has the pack’s resistance that it was simulated with', () => {
    const build = buildFrom(path.join(logFolder, '07.build.json'))
    const run = told(new Uint8Array(readFileSync(path.join(logFolder, '07.csv'))), build)
    const found = changesFromBuild(run)
    const ohms = changeOf(found, 'pack-ohms')
    expect(ohms.before).toBe(run.log.model.machine.pack.resistance)
    expect(Math.abs(ohms.difference)).toBeLessThan(0.1 * ohms.before)
    expect(changeSentence(ohms, 'build', 'metric')).toMatch(
      /^Resistance of the pack: .+ by the build, .+ on this run/,
    )
  })
})
