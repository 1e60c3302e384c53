import { expect, test } from 'vitest'
import { changesFor, passedOf, passedWords } from '../../../shared-engine/drive/passed.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { completeBuild } from '../../../shared-engine/entries/read.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

// Standing for 20 s, then all that it gives: what is passed is passed in the second row.
const rows = [plainRow('speed', 0, 20), plainRow('throttle', 1, 60)]
const build = completeBuild({ ...plainBuild(), controller: { burstAmps: 20, continuousAmps: 10 } })
const run = runDrive(build, { name: 'Test', notes: '', rows })

test('what a drive passes is named with its moment, its row and how far it goes', () => {
  const passed = passedOf(run, rows)
  const burst = passed.find(({ id }) => id === 'controller.current-burst')
  expect(burst).toMatchObject({ row: 1, allowed: 20 })
  expect(burst?.at).toBeGreaterThanOrEqual(20)
  expect(burst?.reached).toBe(run.peaks.motorAmps?.value)
  expect(burst === undefined ? '' : passedWords(burst, 'metric')).toMatch(
    /^passes 20\.0\u202FA after 20\.\d+\u202Fs, in row 2, and reaches /,
  )
  const moments = passed.flatMap(({ at }) => (at === null ? [] : [at]))
  expect(moments).toEqual(moments.toSorted((one, other) => one - other))
})

test('a rating for long is passed by the whole drive, and comes last', () => {
  const last = passedOf(run, rows).at(-1)
  expect(last).toMatchObject({ id: 'controller.current-continuous', at: null, row: null })
  expect(last?.reached).toBe(run.motorAmpsRms)
})

test('whatever can be passed has something to change, each an entry of its own', () => {
  for (const { id } of [...run.watched, ...run.overContinuous.map((id) => ({ id }))]) {
    const paths = changesFor(id, build).map(({ path }) => path)
    expect(paths.length).toBeGreaterThan(0)
    expect(new Set(paths).size).toBe(paths.length)
    for (const path of paths) expect(fieldOf(path)).toBeDefined()
  }
})
