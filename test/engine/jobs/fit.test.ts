import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import { fitResiduals } from '../../../shared-engine/draw/plots/fit-residuals.ts'
import { fitOf, tracedFit } from '../../../shared-engine/fit/fit.ts'
import { fitChannels } from '../../../shared-engine/draw/plots/fit-channels.ts'
import { buildSetter } from '../../../shared-engine/uncertainty/build.ts'
import { channelsOfFit, errorOf, fittedSentence, isMoved } from '../../../shared-engine/validate/fitted.ts'
import { readChannels } from '../../../shared-engine/fit/read.ts'
import { fitJob } from '../../../shared-engine/jobs/fit.ts'

const golden = (name: string) => readFileSync(new URL(`../../golden/${name}`, import.meta.url))
const buildIn = (name: string) => {
  const read = readBuild(golden(name))
  if (!read.ok) throw new Error(`${name} is no build`)
  return read.value
}
const look = { system: 'metric', size: { width: 600, height: 400 } } as const
const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)

describe('a fit with what is left of the log', () => {
  const { entries: asked } = JSON.parse(golden('measure/fit-1.expected.json').toString()) as {
    entries: readonly string[]
  }
  const log = readChannels(golden('measure/fit-1.channels.json'))
  if (!log.ok) throw new Error('the example cannot be read')
  const build = buildIn('measure/fit-1.build.json')
  const { answer, traces } = tracedFit(build, log.value, asked)

  test('leaves less of each kind of residual than there was, a row for each of the block', () => {
    expect(traces.map(({ block }) => block)).toEqual(answer.blocks.map(({ name }) => name))
    for (const [at, { before, after, seconds, segments }] of traces.entries()) {
      expect(after.length).toBe(answer.blocks[at]?.rows)
      expect([before.length, seconds.length, segments.length]).toEqual([
        after.length,
        after.length,
        after.length,
      ])
      expect(rms(after)).toBeLessThan(rms(before) * 1.0001)
    }
  })

  test('moves the prediction onto the measurement, in every channel that hangs on what was fitted', () => {
    // Set well off what the log was made with, so that the eye would see it.
    const guessed = buildSetter(build, ['motor.kvRpmPerVolt', 'pack.cellResistanceMilliohm'])(
      Float64Array.of(1.15 * build.motor.kvRpmPerVolt, 0.3 * build.pack.cellResistanceMilliohm),
    )
    const fitted = fitOf(guessed, log.value, asked)
    const channels = channelsOfFit(guessed, log.value, fitted)
    expect(channels.map(({ id }) => id)).toEqual(['rpm', 'groundSpeed', 'packVolts', 'amps', 'temperature'])
    const off = channels.map(({ id, before, after, measured }) => ({
      id,
      before: errorOf(before ?? measured, measured),
      after: errorOf(after, measured),
    }))
    expect(off.filter((one) => one.after > 0.9 * one.before)).toEqual([])
    for (const { id, share } of [
      { id: 'rpm', share: 0.2 },
      { id: 'packVolts', share: 0.5 },
    ]) {
      const channel = off.find((one) => one.id === id)
      expect(channel?.after, id).toBeLessThan(share * (channel?.before ?? 0))
    }
    const scene = fitChannels(channels, 0, look)
    expect(scene.plot?.panels.map(({ series }) => series.map(({ label }) => label))).toEqual(
      channels.map(() => ['Measured', 'Before', 'After']),
    )
    expect(scene.plot?.cursor.name).toBe('logSeconds')
    expect(fitChannels(channels, 99, look).plot).toBeNull()
    expect(fittedSentence(channels[0]!, 'metric')).toMatch(
      /^Motor rpm: off by \S+\srpm before, \S+\srpm after\.$/,
    )
  })

  test('says so where it makes a prediction worse', () => {
    const [segments, seconds, measured] = [[0, 0], [0, 1], Float64Array.of(40, 41)]
    const channel = { id: 'packVolts', segments, seconds, measured } as const
    const [near, far] = [Float64Array.of(40.5, 41.5), Float64Array.of(43, 44)]
    expect(fittedSentence({ ...channel, before: near, after: far }, 'metric')).toContain('worse: take these')
    expect(fittedSentence({ ...channel, before: far, after: near }, 'metric')).not.toContain('worse')
    expect(fittedSentence({ ...channel, before: null, after: near }, 'metric')).toContain('could not predict')
  })

  test('predicts nothing anew where it offers nothing', () => {
    const none = { ...answer, entries: answer.entries.map((entry) => ({ ...entry, value: null })) }
    expect(channelsOfFit(build, log.value, none)).toEqual([])
  })

  test('is drawn, a panel for each; a segment without any says so', () => {
    const segment = traces[0]?.segments[0] ?? 0
    expect(fitResiduals(traces, segment, look).plot?.panels.length).toBe(traces.length)
    expect(fitResiduals(traces, 99, look).plot).toBeNull()
  })
})

test('as a job it reads the log in its own steps, then fits', () => {
  const input = {
    build: buildIn('logs/07.build.json'),
    bytes: new Uint8Array(golden('logs/07.csv')),
    choice: {},
    asked: ['pack.cellResistanceMilliohm'],
    inAir: [],
  }
  const worker = fitJob.startWorker(input)
  const size = fitJob.sizeOf(input)
  for (let item = 0; item < size; item += 1) worker.work(item, item + 1)
  const found = worker.take().part
  // The log was simulated with a cell of 28 mΩ.
  expect(found?.answer.entries[0]?.value).toBeGreaterThan(26)
  expect(found?.answer.entries[0]?.value).toBeLessThan(30)
  // What hangs on the cells is moved; the motor's channels are there and stay.
  expect(found?.channels.filter(isMoved).map(({ id }) => id)).toEqual(['packVolts'])
  const collector = fitJob.startCollector(input)
  collector.add(null)
  expect(collector.outcome()).toBeNull()
  collector.add(found)
  expect(collector.outcome()).toBe(found)
})
