import path from 'node:path'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { expect, test } from 'vitest'
import type { Io } from '../../src-main/cli/io.ts'
import { driveBuild } from '../../src-main/cli/drive/run.ts'
import { searchBuild } from '../../src-main/cli/search/run.ts'
import { uncertaintyOfFile } from '../../src-main/cli/uncertainty/run.ts'
import { demoFile, root } from './command.ts'

// Ctrl-C in the middle of long work, in this process: what hears the signal is called as the system would call it, so
// that the moment is certain.

const hauler = demoFile('hut-hauler')

/** Runs a command and presses Ctrl-C at a moment: before anything is in, or with the first word of progress. */
async function interrupted(run: (io: Io) => Promise<number>, when: 'at once' | 'under way') {
  const before = process.listeners('SIGINT')
  const press = () => {
    for (const heard of process.listeners('SIGINT')) if (!before.includes(heard)) heard('SIGINT')
  }
  const said = { out: '', err: '' }
  const ended = run({
    out: (text) => (said.out += text),
    err: (text) => (said.err += text),
    progress: (line) => {
      if (when === 'under way' && line !== '') press()
    },
  })
  if (when === 'at once') {
    while (process.listenerCount('SIGINT') === before.length) await nextTurn()
    press()
  }
  return { code: await ended, ...said }
}

const uncertainty = (more: Record<string, string | boolean> = {}) => {
  const options = { samples: '40000', seed: '1', workers: '1', ...more }
  return (io: Io) => uncertaintyOfFile(hauler, options, io)
}

test.each<Record<string, boolean>>([{}, { json: true }])(
  'uncertainty that is stopped before a sample is in has no result: %j',
  async (more) => {
    expect(await interrupted(uncertainty(more), 'at once')).toEqual({
      code: 130,
      out: '',
      err: `${hauler}: stopped before anything was found; there is no result.\n`,
    })
  },
)

test('uncertainty that is stopped under way states the samples that are in', async () => {
  const text = await interrupted(uncertainty(), 'under way')
  const [, stated = ''] =
    /^([\d,]+) samples of \d+ entries,[^.]*\sseed\s1,\sstopped\sbefore\sthe\send\./m.exec(text.out) ?? []
  expect(Number(stated.replaceAll(',', ''))).toBeGreaterThan(0)
  expect(Number(stated.replaceAll(',', ''))).toBeLessThan(40_000)
  const json = await interrupted(uncertainty({ json: true }), 'under way')
  const told = JSON.parse(json.out) as { samples: number; stopped: boolean; probabilityAnyOver: number }
  expect(told.stopped).toBe(true)
  expect(told.samples).toBeGreaterThan(0)
  expect(told.samples).toBeLessThan(40_000)
  // By check, no limit of this demo is over, and none of its tolerances reaches one.
  expect(told.probabilityAnyOver).toBe(0)
})

test('a search that is stopped before a candidate is in has no result', async () => {
  const space = path.join(root, 'examples', 'hut-hauler.space.json')
  const run = (io: Io) => searchBuild(hauler, space, { workers: '1' }, io)
  expect(await interrupted(run, 'at once')).toEqual({
    code: 130,
    out: '',
    err: `${space}: stopped before anything was found; there is no result.\n`,
  })
})

test('a drive that is stopped under way states what came of the time driven', async () => {
  const crawler = demoFile('culvert-crawler')
  const run = (io: Io) => driveBuild(crawler, 'Long climb', { json: true }, io)
  const { out } = await interrupted(run, 'under way')
  const told = JSON.parse(out) as { end: string; seconds: number; series: { seconds: number }[] }
  expect(told.end).toBe('stopped')
  expect(told.seconds).toBeGreaterThan(0)
  // The whole pattern takes 1200 s.
  expect(told.seconds).toBeLessThan(1200)
  expect(told.series.at(-1)?.seconds).toBe(told.seconds)
  expect(await interrupted(run, 'at once')).toMatchObject({ code: 130, out: '' })
})
