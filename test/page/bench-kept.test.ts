import { expect, test } from 'vitest'
import { readBuildForReadings } from '../../shared-engine/measure/build.ts'
import { readReadingsValue } from '../../shared-engine/measure/read.ts'
import {
  readStoredBuildText,
  readStoredBuildValue,
  writeBuild,
  type StoredBuild,
} from '../../shared-engine/index.ts'
import { guideOf } from '../../shared-engine/reference/measurements.ts'
import {
  keptReadings,
  readingsDocument,
  noReadings,
  withReadings,
  type KeptReadings,
} from '../../src-renderer/bench/kept.ts'
import { demoBuild } from './states.ts'

const build = (): StoredBuild => demoBuild('quick-sled-puller')

const kept: KeptReadings = {
  ...noReadings,
  rows: [{ volts: 3.9, rpm: 2000 }, {}, { volts: 7.8, rpm: 4100 }, {}],
  lists: {},
  instruments: { volts: { percent: 0.5, digits: 2, resolution: 0.01 } },
  given: { magnetCelsius: 25, 'motor.resistanceMilliohm': { value: 9, plusMinus: 0.5 } },
}

test('readings are kept with the build, written with it, read again, and still to be worked out', () => {
  const stored = withReadings(build(), 'kv', kept)
  const again = readStoredBuildText(writeBuild(stored))
  expect(again.ok).toBe(true)
  if (!again.ok) return
  const read = keptReadings(again.value, 'kv')
  // Empty rows at the end are no readings; one between others keeps its place.
  expect(read.rows).toEqual(kept.rows.slice(0, 3))
  expect(read.instruments).toEqual(kept.instruments)
  expect(read.given).toEqual(kept.given)
  const document = readingsDocument(guideOf('kv'), 'kv', {
    ...read,
    rows: kept.rows.filter((row) => 'rpm' in row),
  })
  expect(readReadingsValue('kv', document, null).ok).toBe(true)
})

test('a build that keeps readings is one that the command line reads too', () => {
  const bytes = new TextEncoder().encode(writeBuild(withReadings(build(), 'kv', kept)))
  expect(readBuildForReadings(bytes).ok).toBe(true)
})

test('with the last reading its place goes, and with the last test the group', () => {
  const none = { ...noReadings, rows: [{}], lists: { kg: [] } }
  const two = withReadings(withReadings(build(), 'kv', kept), 'grip', { ...none, lists: { pullKg: [3] } })
  const one = withReadings(two, 'kv', none)
  expect(Object.keys(one.readings ?? {})).toEqual(['grip'])
  expect(withReadings(one, 'grip', none)).toEqual(build())
})

test('what is no document, or too long for one, is refused with its place', () => {
  for (const [value, code] of [
    [[1, 2], 'not-an-object'],
    [{ notes: '9'.repeat(200_001) }, 'too-long'],
  ] as const) {
    const read = readStoredBuildValue({ ...build(), readings: { kv: value } })
    expect(read.ok ? [] : read.mistakes.map((mistake) => [mistake.code, mistake.path])).toEqual([
      [code, 'readings.kv'],
    ])
  }
})

test('what a file holds that our form never wrote is left out, not half taken', () => {
  const odd = { rows: [{ volts: 'x', rpm: 5 }, 7], lists: { kg: [1, 'two', 3] }, given: { a: [1] } }
  const stored = { ...build(), readings: { kv: odd } }
  expect(keptReadings(stored, 'kv')).toEqual({
    rows: [{ rpm: 5 }, {}],
    lists: { kg: [1, 3] },
    instruments: {},
    given: {},
    written: {},
    rest: {},
  })
})

test('what another hand wrote into a file stays when the form changes a reading: notes, a tolerance in %, its shape', () => {
  const file = {
    name: 'Free run',
    notes: 'cold morning',
    rows: [{ volts: 3.9, rpm: 2000 }],
    given: { magnetCelsius: { value: 25, plusMinusPercent: 8, shape: 'normal' } },
  }
  const stored = { ...build(), readings: { kv: file } }
  const read = keptReadings(stored, 'kv')
  const changed = withReadings(stored, 'kv', { ...read, rows: [...read.rows, { volts: 7.8, rpm: 4100 }] })
  expect(changed.readings?.['kv']).toEqual({ ...file, rows: [...file.rows, { volts: 7.8, rpm: 4100 }] })
})
