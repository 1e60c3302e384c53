import { describe, expect, test } from 'vitest'
import { demoPatternOf, demoPatterns } from '../../../shared-engine/drive/demos.ts'
import { readPatternText, readPatternValue } from '../../../shared-engine/drive/read.ts'

/** Demo data. */
const sound = {
  format: 'pitchline-pattern',
  version: 1,
  name: 'demo: two rows',
  rows: [
    { seconds: 10, throttlePercent: 50, gradePercent: -5 },
    { seconds: 20, speedKmh: 36 },
  ],
}

const mistakesOf = (value: unknown) => {
  const read = readPatternValue(value)
  return read.ok ? [] : read.mistakes.map(({ code, path }) => `${code} ${path}`)
}

test('rows become SI: 50 % is 0.5, 36 km/h is 10 m/s, no grade is the build’s', () => {
  const read = readPatternText(JSON.stringify(sound))
  expect(read).toEqual({
    ok: true,
    value: {
      name: 'demo: two rows',
      notes: '',
      rows: [
        { seconds: 10, ask: { throttle: 0.5 }, grade: -0.05 },
        { seconds: 20, ask: { speed: 10 }, grade: null },
      ],
    },
  })
})

describe('every mistake is told at once, by its path', () => {
  test('in rows', () => {
    const rows = [
      { seconds: 0, throttlePercent: 101 },
      { throttlePercent: 10, speedKmh: 5 },
      { seconds: 5 },
      { seconds: 5, speedKmh: '9', slope: 3 },
      7,
    ]
    expect(mistakesOf({ ...sound, rows })).toEqual([
      'out-of-range rows.0.seconds',
      'out-of-range rows.0.throttlePercent',
      'missing rows.1.seconds',
      'between-fields rows.1',
      'between-fields rows.2',
      'unknown-pattern-key rows.3.slope',
      'not-a-number rows.3.speedKmh',
      'not-an-object rows.4',
    ])
  })

  test('in the file', () => {
    expect(mistakesOf({ ...sound, version: 2, name: 5, rows: [], extra: 1 })).toEqual([
      'unknown-pattern-key extra',
      'newer-version version',
      'not-text name',
      'missing rows',
    ])
    expect(mistakesOf({ ...sound, format: 'pitchline-build' })).toEqual(['not-a-pattern format'])
    expect(mistakesOf([])).toEqual(['not-an-object '])
    expect(readPatternText('{').ok).toBe(false)
    expect(readPatternText('').ok).toBe(false)
    expect(readPatternText('{"format":"pitchline-pattern","format":"pitchline-pattern"}').ok).toBe(false)
    const week = Array.from({ length: 8 }, () => ({ seconds: 86_400, throttlePercent: 0 }))
    expect(mistakesOf({ ...sound, rows: week })).toEqual(['out-of-range rows'])
  })
})

test('the demo patterns say that they are invented, and are found by name', () => {
  expect(demoPatterns.map(({ name }) => name)).toEqual(['Hut round', 'Stop and go', 'Long climb'])
  for (const { notes } of demoPatterns) expect(notes).toContain('Invented demo data')
  expect(demoPatternOf('hut ROUND')?.rows.length).toBeGreaterThan(3)
  expect(demoPatternOf('hut')).toBeUndefined()
})
