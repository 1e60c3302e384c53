import { beforeAll, describe, expect, it } from 'vitest'
import { validationPlot } from '../../../shared-engine/draw/plots/validation.ts'
import { fitChannels } from '../../../shared-engine/draw/plots/fit-channels.ts'
import { plotTable } from '../../../shared-engine/draw/table.ts'
import type { Scene } from '../../../shared-engine/draw/scene.ts'
import type { Build } from '../../../shared-engine/entries/schema.ts'
import type { FitAnswer } from '../../../shared-engine/fit/answer.ts'
import { fitOf } from '../../../shared-engine/fit/fit.ts'
import { fitLogOf } from '../../../shared-engine/fit/from-log.ts'
import type { ChannelName, FitLog } from '../../../shared-engine/fit/log.ts'
import { changesFromBuild } from '../../../shared-engine/log/changes/from-build.ts'
import { LogReading } from '../../../shared-engine/log/log.ts'
import { buildSetter } from '../../../shared-engine/uncertainty/build.ts'
import { channelsOfFit } from '../../../shared-engine/validate/fitted.ts'
import { runOfLog } from '../../../shared-engine/validate/run.ts'
import { validationOf } from '../../../shared-engine/validate/validate.ts'
import { burstsOf, logOf, machine, randomOf } from './drives.ts'

// What a builder sees after Take: in every plot that shows a run beside what the build says, the build's line lies nearer
// to the run. The drives are of known truth, by formulas of their own (drives.ts); another drive is fitted than is shown too.

const truth = {
  'ground.rollingCoefficient': 0.08,
  'motor.kvRpmPerVolt': 150,
  'motor.resistanceMilliohm': 45,
  'ground.slipPercent': 9,
}
const truths = new Map(Object.entries(truth))
const entries = [...truths.keys()]
const look = { size: { width: 900, height: 500 }, system: 'metric' } as const

/** The drive as a recorder's table: fitted, validated and compared as a file that was opened is. */
function tableOf({ segments: [segment] }: FitLog): Uint8Array {
  const { seconds = [], channels = {} } = segment ?? {}
  const of = (name: ChannelName, at: number) => channels[name]?.[at] ?? ''
  const rows = seconds.map((now, at) =>
    [
      now,
      ...(['motorRpm', 'packVolts', 'packAmps', 'motorAmps'] as const).map((name) => of(name, at)),
      Number(of('duty', at)) * 100,
      of('groundMps', at),
    ].join(','),
  )
  const heading =
    'time (s),motor rpm,pack voltage (V),battery current (A),motor current (A),duty (%),gps speed (m/s)'
  return new TextEncoder().encode([heading, ...rows, ''].join('\n'))
}

function readBy(build: Build, bytes: Uint8Array) {
  const reading = new LogReading({ build, bytes, choice: {}, alarms: null })
  while (!reading.done) reading.step()
  const [log, result] = [reading.read(), reading.result()]
  if (log === null || result?.ok !== true || !('episodes' in result.value)) throw new Error('not read')
  return { log, episodes: result.value.episodes, result: result.value }
}

const driven = (seed: number) => {
  const random = randomOf(seed)
  return tableOf(logOf(machine(), { duty: burstsOf(random, 200), seconds: 200, truth, random }))
}

/** Root of the mean square of how far one column of a plot's table lies from another, by panel. */
function apart(scene: Scene, of: RegExp, from: RegExp): readonly number[] {
  if (scene.plot === null || scene.plot === undefined) throw new Error('nothing is drawn')
  const { columns, rows } = plotTable(scene.plot)
  const places = (label: RegExp) => columns.flatMap((column, at) => (label.test(column.label) ? [at] : []))
  const pairs = places(of).map((one, at) => [one, places(from)[at] ?? -1] as const)
  return pairs.map(([one, other]) => {
    const squares = rows.flatMap((row) => {
      const [a, b] = [row[one], row[other]]
      return typeof a === 'number' && typeof b === 'number' ? [(a - b) ** 2] : []
    })
    return Math.sqrt(squares.reduce((sum, value) => sum + value, 0) / squares.length)
  })
}

describe('a fit that is taken', () => {
  const before = machine()
  const [own, other] = [driven(3), driven(4)]
  let answer: FitAnswer
  let after: Build

  beforeAll(() => {
    answer = fitOf(before, fitLogOf(readBy(before, own).log), entries)
    const told = answer.entries.filter(({ value }) => value !== null)
    after = buildSetter(
      before,
      told.map(({ path }) => path),
    )(Float64Array.from(told.map(({ value }) => value ?? NaN)))
  })

  it('was of entries that were wrong, and told them', () => {
    expect(answer.entries.map(({ verdict }) => verdict)).toEqual(['told', 'told', 'told', 'told'])
    for (const { path, value, plusMinus } of answer.entries)
      expect(Math.abs((value ?? NaN) - (truths.get(path) ?? NaN))).toBeLessThan(3 * (plusMinus ?? NaN))
  })

  it('lies on the run that it was fitted to, in the plot of the fit', () => {
    const log = fitLogOf(readBy(before, own).log)
    const scene = fitChannels(channelsOfFit(before, log, answer), 0, look)
    const [first, last] = [apart(scene, /before/i, /measured/i), apart(scene, /after/i, /measured/i)]
    // The pack's volts hang on none of the entries: they stay where they were.
    const moved = last.flatMap((value, at) => (value === first[at] ? [] : [value / (first[at] ?? NaN)]))
    expect(moved.length).toBeGreaterThan(2)
    for (const part of moved) expect(part).toBeLessThan(0.7)
  })

  it.each([
    ['the same run', own],
    ['another run of the machine', other],
  ])('lies nearer in the plot of Validate, over %s', (_, bytes) => {
    const [first = [], last = []] = [before, after].map((build) => {
      const { log, episodes } = readBy(build, bytes)
      return apart(
        validationPlot(validationOf(build, runOfLog(log, episodes)).series, 0, look),
        /^Predicted/,
        /^Measured/,
      )
    })
    expect(last.length).toBeGreaterThan(1)
    last.forEach((value, at) => expect(value).toBeLessThan(0.5 * (first[at] ?? NaN)))
  })

  it('leaves no difference between the run and its build, in the plot of differences', () => {
    const [first, last] = [before, after].map((build) => changesFromBuild(readBy(build, other)).changes)
    const off = (first ?? []).filter(({ difference, within }) => Math.abs(difference) > within)
    expect(off.map(({ id }) => id)).toContain('motor-amps')
    for (const { id, difference } of off) {
      const now = last?.find((one) => one.id === id)
      expect(Math.abs(now?.difference ?? NaN), id).toBeLessThan(0.5 * Math.abs(difference))
      expect(Math.abs(now?.difference ?? NaN), id).toBeLessThan(now?.within ?? NaN)
    }
  })
})
