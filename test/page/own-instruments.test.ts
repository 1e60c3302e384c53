import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import {
  dropInstrument,
  isTakenLike,
  keepInstrument,
  ownInstruments,
} from '../../src-renderer/bench/own-instruments.ts'

const instrument = { percent: 0.1, digits: 1, resolution: 0.001, plusMinus: 0 }
const kept = new Map<string, string>()

beforeEach(() => {
  kept.clear()
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  })
})
afterEach(() => vi.unstubAllGlobals())

test('an instrument of one’s own is kept for the next start and offered wherever it can read', () => {
  keepInstrument({ label: 'Bench meter', reads: 'volts', instrument })
  expect(ownInstruments()).toEqual([{ label: 'Bench meter', reads: 'volts', instrument }])
  expect(isTakenLike('volts', 'plusVolts')).toBe(true)
  expect(isTakenLike('volts', 'kg')).toBe(false)
})

test('one of the same name takes its place, for its own kind of reading alone; one is forgotten by its name', () => {
  keepInstrument({ label: 'Mine', reads: 'volts', instrument })
  keepInstrument({ label: 'Mine', reads: 'kg', instrument })
  keepInstrument({ label: 'Mine', reads: 'plusVolts', instrument: { ...instrument, percent: 2 } })
  expect(ownInstruments().map(({ reads, instrument: { percent } }) => [reads, percent])).toEqual([
    ['plusVolts', 2],
    ['kg', 0.1],
  ])
  expect(dropInstrument('Mine', 'volts').map(({ reads }) => reads)).toEqual(['kg'])
})

test('what no program of ours has written is left out, and nothing at all is no trouble', () => {
  expect(ownInstruments()).toEqual([])
  const odd = [
    null,
    3,
    { label: '', reads: 'kg', instrument },
    { label: 'a', reads: 'kg', instrument: { percent: -1 } },
  ]
  for (const text of ['{', '7', JSON.stringify(odd)]) {
    kept.set('pitchline.instruments', text)
    expect(ownInstruments()).toEqual([])
  }
})
