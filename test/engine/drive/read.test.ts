import { describe, expect, test } from 'vitest'
import { demoPatternOf, demoPatterns } from '../../../shared-engine/drive/demos.ts'
import { sketchedProfileOf } from '../../../shared-engine/drive/profile.ts'
import { plainRow, repeated, storedPatternOf } from '../../../shared-engine/drive/rows.ts'
import { patternFromTable } from '../../../shared-engine/drive/table.ts'
import { readPatternText, readPatternValue } from '../../../shared-engine/drive/read.ts'

/** Demo data. */
const sound = {
  format: 'pitchline-pattern',
  version: 2,
  name: 'demo: rows',
  rows: [
    { seconds: 10, throttlePercent: 50, gradePercent: -5 },
    { seconds: 20, speedKmh: 36 },
    { seconds: 5, brakePercent: 60, loadKg: 4, towForceN: 30 },
    { seconds: 6, speedPercent: 80, resistancePercent: 150, gripPercent: 75, turnPercent: 10 },
  ],
}

const plain = { grade: null, load: null, tow: null, resistanceShare: 1, gripShare: 1, turnShare: 0 }

const mistakesOf = (value: unknown) => {
  const read = readPatternValue(value)
  return read.ok ? [] : read.mistakes.map(({ code, path }) => `${code} ${path}`)
}

test('rows become SI: 50 % is 0.5, 36 km/h is 10 m/s, what is left out is the build’s', () => {
  const read = readPatternText(JSON.stringify(sound))
  expect(read).toEqual({
    ok: true,
    value: {
      name: 'demo: rows',
      notes: '',
      rows: [
        { ...plain, seconds: 10, kind: 'throttle', value: 0.5, grade: -0.05 },
        { ...plain, seconds: 20, kind: 'speed', value: 10 },
        { ...plain, seconds: 5, kind: 'brake', value: 0.6, load: 4, tow: 30 },
        {
          ...plain,
          seconds: 6,
          kind: 'topShare',
          value: 0.8,
          resistanceShare: 1.5,
          gripShare: 0.75,
          turnShare: 0.1,
        },
      ],
    },
  })
})

test('a file of version 1 means the same as ever', () => {
  const rows = sound.rows.slice(0, 2)
  expect(readPatternValue({ ...sound, version: 1, rows })).toEqual(readPatternValue({ ...sound, rows }))
})

test('a pattern goes into a file and comes back', () => {
  const read = readPatternValue(sound)
  if (!read.ok) throw new Error('demo')
  expect(storedPatternOf(read.value)).toEqual(sound)
})

test('driven three times it has three times the rows', () => {
  const read = readPatternValue(sound)
  if (!read.ok) throw new Error('demo')
  const three = repeated(read.value, 3)
  expect(three.rows).toHaveLength(12)
  expect(three.rows.slice(4, 8)).toEqual(read.value.rows)
  expect(three.name).toBe('demo: rows, 3 times')
})

describe('every mistake is told at once, by its path', () => {
  test('in rows', () => {
    const rows = [
      { seconds: 0, throttlePercent: 101 },
      { throttlePercent: 10, speedKmh: 5 },
      { seconds: 5 },
      { seconds: 5, speedKmh: '9', slope: 3 },
      7,
      { seconds: 1, brakePercent: 20, gripPercent: 0, turnPercent: 101 },
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
      'out-of-range rows.5.gripPercent',
      'out-of-range rows.5.turnPercent',
    ])
  })

  test('in the file', () => {
    expect(mistakesOf({ ...sound, version: 3, name: 5, rows: [], extra: 1 })).toEqual([
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

describe('rows from a table', () => {
  const rowsOf = (text: string) => {
    const read = patternFromTable(text, 'demo: table')
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    return read.value.rows.map(({ seconds, kind, value, grade, turnShare }) => [
      seconds,
      kind,
      value,
      grade,
      turnShare,
    ])
  }

  test('as a spreadsheet copies it, decimal commas and an empty cell with it', () => {
    const text = 'Time (s)\tSpeed (km/h)\tThrottle %\tSlope\tTurns\n60\t7,2\t\t-5\t10\n5\t\t100\t\t\n'
    expect(rowsOf(text)).toEqual([
      [60, 'speed', 2, -0.05, 0.1],
      [5, 'throttle', 1, null, 0],
    ])
  })

  test('with the names that files use, in commas', () => {
    expect(rowsOf('seconds,brakePercent,gradePercent\r\n4,60,2.5')).toEqual([[4, 'brake', 0.6, 0.025, 0]])
  })

  test('says what is wrong, by column and row', () => {
    const mistakes = (text: string) => {
      const read = patternFromTable(text, 'demo: table')
      return read.ok ? [] : read.mistakes.map(({ code, path }) => `${code} ${path}`)
    }
    expect(mistakes('seconds,colour,seconds\n1,red,2')).toEqual([
      'unknown-pattern-key column 2',
      'unknown-pattern-key column 3',
    ])
    expect(mistakes('seconds;speed\n10;fast\n;5')).toEqual([
      'not-a-number rows.0.speedKmh',
      'missing rows.1.seconds',
    ])
    expect(mistakes('  \n')).toEqual(['empty-file '])
  })
})

test('the demo patterns say that they are invented, and are found by name', () => {
  expect(demoPatterns.map(({ name }) => name)).toEqual([
    'Hut round',
    'Practice sled',
    'Stop and go',
    'Long climb',
    'Inspection',
  ])
  for (const { notes } of demoPatterns) expect(notes).toContain('Invented demo data')
  expect(demoPatternOf('hut ROUND')?.rows.length).toBeGreaterThan(3)
  expect(demoPatternOf('hut')).toBeUndefined()
})

test('heights follow the way: 3 in 4 for 50 m climbs 30 m, a row that stands none', () => {
  const rows = [plainRow('speed', 5, 10, 0.75), plainRow('speed', 0, 20, 0.1), plainRow('speed', 2, 10, 0)]
  const { metres, heights } = sketchedProfileOf(rows, 0, NaN)
  expect(metres).toEqual([0, 50, 50, 70])
  expect(heights).toEqual([0, 30, 30, 30])
})
