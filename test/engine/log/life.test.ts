import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { patternPartOf } from '../../../shared-engine/machine/pattern.ts'
import { completeBuild, readBuild, readStoredBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { lifeUsedOf, type LifeUsed } from '../../../shared-engine/log/life/used.ts'
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

const stored = storedOf(readFileSync('examples/quick-sled-puller.build.json'))

function storedOf(bytes: Uint8Array): StoredBuild {
  const one = readStoredBuild(bytes)
  if (!one.ok) throw new Error('the demo cannot be read')
  return one.value
}

const steady = readingOf([
  { seconds: 3, throttle: 0 },
  { seconds: 40, throttle: 0.5 },
])

describe('life that a run uses up', () => {
  it('counts a pass a turn: a tooth of the loop as often as the loop goes round, a wheel’s as often as its shaft', () => {
    const used = atOnce(lifeUsedOf(steady.log, steady.episodes))
    const { track, train } = steady.log.model.machine
    const metres = (steady.facts.distanceM ?? NaN) / (1 - steady.log.model.slip)
    const tooth = used.find(({ limit }) => limit === 'track.tooth-shear')
    // Distance by the trapezoid, passes by the turns after each sample: to a hundredth.
    expect((tooth?.count ?? NaN) / (metres / track.length)).toBeCloseTo(1, 2)
    // Of the first pair the plastic wheel loses more: it is met 17/56 as often as the pinion, which turns with the motor.
    const wheel = used.find(({ limit }) => limit === 'stage.1.bending')
    expect((wheel?.count ?? NaN) / ((metres / track.advance) * train.ratio)).toBeCloseTo(17 / 56, 2)
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

/** A run of exact rows: seconds, rpm, A of the motor; and what it took of lives. */
function livesOfRows(
  rows: readonly (readonly [number, number, number])[],
  changed: (stored: StoredBuild) => StoredBuild = (stored) => stored,
) {
  const changedBuild = completeBuild(changed(structuredClone(stored)))
  const text = rows.map(([t, rpm, amps]) => `${t};${rpm};${amps};${volts(t)}`)
  const bytes = new TextEncoder().encode(
    `Time [s];Motor rpm;Motor current [A];Pack volts [V]\n${text.join('\n')}\n`,
  )
  const log = new LogReading({ build: changedBuild, bytes, choice: {}, alarms: null })
  while (!log.done) log.step()
  const [found, result] = [log.read(), log.result()]
  if (found === null || result?.ok !== true) throw new Error('the rows cannot be read')
  return atOnce(lifeUsedOf(found, result.value.episodes))
}

/** Volts that go up and down a little: a reading that stands still would be taken for a stuck one. */
const volts = (t: number) => 41 + 0.01 * (Math.round(2 * t) % 3)

/** 2 rows a second of one rpm and current, but for what stands still nothing is. */
const evenRows = (rpm: number, amps: number) =>
  Array.from({ length: 121 }, (_, at) => [at / 2, rpm + (at % 2), amps] as const)

const usedOf = (lives: readonly LifeUsed[], limit: LifeUsed['limit']) => {
  const found = lives.find((one) => one.limit === limit)
  if (found === undefined) throw new Error(`${limit} is not told`)
  return found
}

describe('each pass bears what the moment of it bears', () => {
  it('adds passes up by trapezoids, as all integrals of a log', () => {
    // 0 to 12,000 rpm evenly over 60 s: 6,000 turns of the motor; the loop of 98 pitches goes round once in 61.49 of them.
    const rising = Array.from({ length: 61 }, (_, at) => [at, 200 * at, 60 + (at % 2)] as const)
    const turns = 98 * (1 / 14) * (56 / 17) * (64 / 24)
    expect(usedOf(livesOfRows(rising), 'track.tooth-shear').count * turns).toBeCloseTo(6000, 6)
  })

  it('counts a turn backwards as a turn', () => {
    const [on, back] = [evenRows(9000, 60), evenRows(-9000, 60)].map((rows) =>
      usedOf(livesOfRows(rows), 'track.tension'),
    )
    expect(back?.count ?? NaN).toBeCloseTo(on?.count ?? NaN, -1)
  })

  it('holds what was logged against strengths without the factor for shocks: they are in the log', () => {
    const rows = evenRows(9000, 60)
    const withFactor = (factor: number) =>
      livesOfRows(rows, (one) => ({ ...one, service: { ...one.service, factor } }))
    expect(withFactor(3)).toEqual(withFactor(1.5))
  })
})

describe('shafts', () => {
  // The driven shaft of the first pair with 100 mm between its bearings: 12 mm of silver steel, S_ut 700, endurance 350 MPa.
  const spanned = (one: StoredBuild) => ({
    ...one,
    stages: one.stages?.map((stage, at) => (at === 0 ? { ...stage, shaftSpanMm: 100 } : stage)),
  })

  it('are told only where the distance of their bearings is known, as the limit for long', () => {
    const rows = evenRows(9000, 60)
    expect(livesOfRows(rows).filter(({ limit }) => limit.endsWith('.shaft'))).toEqual([])
    expect(usedOf(livesOfRows(rows, spanned), 'stage.1.shaft').by).toBe('cycles')
  })

  it('are bent once a turn under a torque that does not change', () => {
    const life = usedOf(livesOfRows(evenRows(9000, 60), spanned), 'stage.1.shaft')
    // 9,000.5 rpm for 60 s, less by 17/56; the torque's own few cycles, of half an rpm of drag, are too small to count.
    expect(life.count).toBeGreaterThan((9000.5 * 17) / 56)
    expect(life.count).toBeLessThan((9000.5 * 17) / 56 + 61)
    // By hand: 60 A are 0.7384 N·m of the motor (K_t 0.013642 at 20 °C, magnets at 70 °C 5.5 % weaker, I_0 2.82 A at 9,000 rpm).
    const torque = 0.013642 * 0.945 * (60 - 4.2 * (0.55 + (0.45 * 9000.5) / 25872))
    const into = torque
    const out = torque * (56 / 17) * 0.96
    const pull = Math.hypot(
      into / (0.0085 * Math.cos(Math.PI / 9)),
      (1.5 * out) / ((24 * 0.0127) / (2 * Math.PI)),
    )
    const cube = Math.PI * 0.012 ** 3
    const [amplitude, mean] = [(1.7 * 32 * pull * 0.025) / cube, (1.5 * Math.sqrt(3) * 16 * out) / cube]
    const endurance = 4.51 * 700 ** -0.265 * 1.24 * 12 ** -0.107 * 0.814 * 350e6
    const stress = amplitude / (1 - mean / 700e6)
    expect(life.most / (stress / endurance)).toBeCloseTo(1, 2)
    const slope = 3 / Math.log10((0.9 * 700e6) / endurance)
    expect((life.used * 1e6) / (((9000.5 * 17) / 56) * (stress / endurance) ** slope)).toBeCloseTo(1, 1)
  })

  it('are twisted by each cycle of the torque', () => {
    const ups = (amps: number) =>
      Array.from({ length: 121 }, (_, at) => [at / 2, 9000 + (at % 3), at % 2 === 0 ? amps : 5] as const)
    const [soft, hard] = [100, 160].map((amps) => usedOf(livesOfRows(ups(amps), spanned), 'stage.1.shaft'))
    // 120 reversals are 60 cycles, beside the turns of a minute.
    expect(hard?.count ?? NaN).toBeCloseTo(60 + (9001 * 17) / 56, -1)
    expect((hard?.used ?? 0) / (soft?.used ?? Infinity)).toBeGreaterThan(2)
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

  /** Rows of a run read from seconds and rpm. */
  const rowsOf = (samples: readonly (readonly [number, number])[]) => {
    const text = samples.map(([t, rpm]) => `${t};${rpm};${volts(t)}`).join('\n')
    const bytes = new TextEncoder().encode(`Time [s];Motor rpm;Pack volts [V]\n${text}\n`)
    const log = new LogReading({ build, bytes, choice: {}, alarms: null })
    while (!log.done) log.step()
    const found = log.read()
    if (found === null) throw new Error('the run cannot be read')
    return runPattern(found, [], 'run')?.rows ?? null
  }

  it('ends a row where its speed ends: a cruise is not slowed by the stop after it', () => {
    const cruise = rowsOf(Array.from({ length: 81 }, (_, at) => [at, at <= 40 ? 9000 : at % 2] as const))
    const [first, second] = cruise ?? []
    expect(first?.seconds).toBe(40)
    const advance = (20 * 14) / 1000 / ((56 / 17) * (64 / 24))
    expect(first?.value).toBeCloseTo((9000 / 60) * advance * 0.95, 9)
    // One second from the one speed to the other, by the trapezoid.
    expect(second?.seconds).toBe(1)
    expect(second?.value).toBeCloseTo((9001 / 2 / 60) * advance * 0.95, 9)
  })

  it('has no row shorter than a build keeps: what is left is added to the one before', () => {
    const rows = rowsOf([[0, 9000], [1, 9000], [2, 9001], [3, 0], [4, 1], [4.004, 9000]]) // prettier-ignore
    expect(rows?.map(({ seconds }) => Number(seconds.toPrecision(9)))).toEqual([2, 1, 1.004])
  })

  it('is told of a night at rest too, in longer rows', () => {
    const rows = rowsOf(Array.from({ length: 3000 }, (_, at) => [10 * at, 0] as const))
    expect(rows?.reduce((sum, { seconds }) => sum + seconds, 0)).toBeCloseTo(29_990, 6)
    expect(rows?.length).toBeLessThanOrEqual(200)
  })
})
