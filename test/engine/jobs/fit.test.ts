import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readBuild } from '../../../shared-engine/entries/read.ts'
import { fitResiduals } from '../../../shared-engine/draw/plots/fit-residuals.ts'
import { fitOf, tracedFit } from '../../../shared-engine/fit/fit.ts'
import { readChannels } from '../../../shared-engine/fit/read.ts'
import { fitJob } from '../../../shared-engine/jobs/fit.ts'

const golden = (name: string) => readFileSync(new URL(`../../golden/${name}`, import.meta.url))
const buildIn = (name: string) => {
  const read = readBuild(golden(name))
  if (!read.ok) throw new Error(`${name} is no build`)
  return read.value
}
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

  test('answers as the fit without it', () => {
    expect(answer).toEqual(fitOf(build, log.value, asked))
  })

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

  test('is drawn, a panel for each; a segment without any says so', () => {
    const look = { system: 'metric', size: { width: 600, height: 400 } } as const
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
    offGround: [],
  }
  const worker = fitJob.startWorker(input)
  const size = fitJob.sizeOf(input)
  for (let item = 0; item < size; item += 1) worker.work(item, item + 1)
  const found = worker.take().part
  // The log was simulated with a cell of 28 mΩ.
  expect(found?.answer.entries[0]?.value).toBeGreaterThan(26)
  expect(found?.answer.entries[0]?.value).toBeLessThan(30)
  const collector = fitJob.startCollector(input)
  collector.add(null)
  expect(collector.outcome()).toBeNull()
  collector.add(found)
  expect(collector.outcome()).toBe(found)
})
