import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { changesFor, passedOf, passedWords } from '../../../shared-engine/drive/passed.ts'
import { plainRow } from '../../../shared-engine/drive/rows.ts'
import { runDrive } from '../../../shared-engine/drive/run.ts'
import { completeBuild, readBuildText } from '../../../shared-engine/entries/read.ts'
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

test('cells that get hotter than they may are passed in their row, with entries to change', () => {
  const pack = { ...build.pack, maxTemperatureC: 30 }
  const warm = { ...build, pack, service: { ...build.service, packTemperatureC: 29.99 } }
  const hot = passedOf(runDrive(warm, { name: 'Test', notes: '', rows }), rows)
  expect(hot.find(({ id }) => id === 'pack.temperature')).toMatchObject({ row: 1, allowed: 30 })
  const cool = { ...warm, service: { ...build.service, packTemperatureC: 10 } }
  const passed = passedOf(runDrive(cool, { name: 'Test', notes: '', rows }), rows)
  expect(passed.map(({ id }) => id)).not.toContain('pack.temperature')
})

test('the coolant’s boiling is watched where there is coolant, at the ledger’s own temperature', () => {
  const read = readBuildText(
    readFileSync(new URL('../../../examples/hut-hauler.build.json', import.meta.url), 'utf8'),
  )
  if (!read.ok) throw new Error('demo')
  const [row] = rows
  const { watched } = runDrive(read.value, { name: 'Test', notes: '', rows: row === undefined ? [] : [row] })
  const allowed = check(read.value).limits.find(({ id }) => id === 'cooling.boiling')?.allowed
  expect(watched.find(({ id }) => id === 'cooling.boiling')).toMatchObject({ allowed, passedAt: null })
  expect(run.watched.map(({ id }) => id)).not.toContain('cooling.boiling')
  const paths = changesFor('cooling.boiling', read.value).map(({ path }) => path)
  expect(paths.map((path) => fieldOf(path)?.label).includes(undefined)).toBe(false)
})

test('coolant that is frozen as the drive begins is marked at once, and a mix with more glycol offered', () => {
  const read = readBuildText(
    readFileSync(new URL('../../../examples/hut-hauler.build.json', import.meta.url), 'utf8'),
  )
  if (!read.ok || read.value.cooling === undefined) throw new Error('demo')
  const at = (airTemperatureC: number) => ({
    ...read.value,
    cooling: { ...read.value.cooling, kind: 'liquid', coolant: 'water' } as NonNullable<
      typeof read.value.cooling
    >,
    ground: { ...read.value.ground, airTemperatureC },
  })
  const brief = [plainRow('speed', 1, 5)]
  const frozen = passedOf(runDrive(at(-8), { name: 'Test', notes: '', rows: brief }), brief)
  const mark = frozen.find(({ id }) => id === 'cooling.freezing')
  // Water freezes at 0 °C; the circuit starts at the air's temperature.
  expect(mark).toMatchObject({ at: 0, row: 0, allowed: 0 })
  expect(mark?.reached).toBeCloseTo(-8, 6)
  if (mark !== undefined) expect(passedWords(mark, 'metric')).toMatch(/^falls below 0.°C at once, in row 1/)
  expect(changesFor('cooling.freezing', read.value)[0]?.path).toBe('cooling.coolant')
  const warm = passedOf(runDrive(at(8), { name: 'Test', notes: '', rows: brief }), brief)
  expect(warm.map(({ id }) => id)).not.toContain('cooling.freezing')
})
