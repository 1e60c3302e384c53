import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { patternPartOf } from '../../../shared-engine/machine/pattern.ts'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import { lifeUsedOf } from '../../../shared-engine/log/life/used.ts'
import { LogReading } from '../../../shared-engine/log/log.ts'
import { runPattern } from '../../../shared-engine/log/run-pattern.ts'
import { atOnce } from './reading.ts'
import { loggedCsv, simulatedRun, type Stretch } from './simulated-run.ts'

// Invented runs of a demo machine. What is counted is held against what the run was: turns of its loop, metres, seconds.

const read = readBuild(readFileSync('examples/quick-sled-puller.build.json'))
if (!read.ok) throw new Error('the demo cannot be read')
const build = read.value

function readingOf(stretches: readonly Stretch[]) {
  const run = simulatedRun(build, stretches, 10)
  const bytes = new TextEncoder().encode(loggedCsv(run, 4, { amps: true, throttle: false }))
  const reading = new LogReading({ build, bytes, choice: {}, alarms: null })
  while (!reading.done) reading.step()
  const [log, result] = [reading.read(), reading.result()]
  if (log === null || result?.ok !== true) throw new Error('the run cannot be read')
  return { log, episodes: result.value.episodes, facts: result.value.facts, run }
}

const steady = readingOf([
  { seconds: 3, throttle: 0 },
  { seconds: 40, throttle: 0.5 },
])

describe('life that a run uses up', () => {
  it('counts a pass a turn: a tooth of the loop as often as the loop goes round, a pinion’s as often as its shaft', () => {
    const used = atOnce(lifeUsedOf(steady.log, steady.episodes))
    const { track, train } = steady.log.model.machine
    const metres = (steady.facts.distanceM ?? NaN) / (1 - steady.log.model.slip)
    const tooth = used.find(({ limit }) => limit === 'track.tooth-shear')
    // Distance by the trapezoid, passes by the turns after each sample: to a hundredth.
    expect((tooth?.count ?? NaN) / (metres / track.length)).toBeCloseTo(1, 2)
    const pinion = used.find(({ limit }) => limit === 'stage.1.bending')
    expect((pinion?.count ?? NaN) / ((metres / track.advance) * train.ratio)).toBeCloseTo(1, 2)
    expect(used.every(({ used: part }) => part >= 0 && Number.isFinite(part))).toBe(true)
  })

  it('adds up: a run twice as long at the same load takes twice as much; a harder one takes more for each pass', () => {
    const partOf = (throttle: number, seconds: number) => {
      const { log, episodes } = readingOf([
        { seconds: 3, throttle: 0 },
        { seconds: 30, throttle },
        { seconds, throttle },
      ])
      const found = atOnce(lifeUsedOf(log, episodes)).find(({ limit }) => limit === 'track.tooth-shear')
      if (found === undefined) throw new Error('not counted')
      return found
    }
    const [one, two, hard] = [partOf(0.5, 1), partOf(0.5, 32), partOf(0.8, 1)]
    expect(two.used / one.used).toBeGreaterThan(1.4)
    expect(two.used / one.used).toBeLessThan(2.2)
    expect(hard.used / hard.count).toBeGreaterThan(one.used / one.count)
  })
})

describe('a run as a drive', () => {
  const pattern = runPattern(steady.log, steady.episodes, 'run')
  const rows = pattern?.rows ?? []

  it('lasts as long and goes as far as the run', () => {
    const seconds = rows.reduce((sum, row) => sum + row.seconds, 0)
    const metres = rows.reduce((sum, row) => sum + row.seconds * row.value, 0)
    expect(seconds).toBeCloseTo(steady.facts.seconds, 6)
    expect(metres).toBeCloseTo(steady.facts.distanceM ?? NaN, 6)
    expect(rows.every(({ kind, grade }) => kind === 'speed' && grade === null)).toBe(true)
  })

  it('is one that a build keeps, however restless the run', () => {
    const restless = Array.from({ length: 150 }, (_, at): Stretch => ({
      seconds: 3,
      throttle: at % 2 === 0 ? 0.8 : 0,
    }))
    const { log, episodes } = readingOf(restless)
    const found = runPattern(log, episodes, 'run')
    expect(found?.rows.length).toBeLessThanOrEqual(200)
    expect(found?.rows.length).toBeGreaterThan(10)
    expect(patternPartOf(build.service.pattern).rows.length).toBeGreaterThan(0)
  })
})
