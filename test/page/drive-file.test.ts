import { describe, expect, it } from 'vitest'
import { demoPatterns } from '../../shared-engine/drive/demos.ts'
import { readPatternText } from '../../shared-engine/drive/read.ts'
import { patternText, storedPatternOf } from '../../src-renderer/questions/hot/drive-file.ts'

describe('a drive pattern in a file', () => {
  it.each(demoPatterns.map((pattern) => [pattern.name, pattern] as const))(
    '%s comes back as it went',
    (_, pattern) => {
      const read = readPatternText(patternText(pattern))
      if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
      expect(read.value.rows).toHaveLength(pattern.rows.length)
      read.value.rows.forEach((row, at) => {
        const was = pattern.rows[at]
        expect(row.seconds).toBe(was?.seconds)
        expect(row.grade).toBeCloseTo(was?.grade ?? NaN, 12) // 12 digits are written
        expect(Object.keys(row.ask)).toEqual(Object.keys(was?.ask ?? {}))
      })
    },
  )

  it('holds what a builder reads: kilometres an hour and percent', () => {
    const rows = [
      { seconds: 30, ask: { speed: 10 }, grade: null }, // 10 m/s is 36 km/h by definition
      { seconds: 5, ask: { throttle: 0.35 }, grade: -0.07 },
    ]
    expect(storedPatternOf({ name: 'A', notes: '', rows }).rows).toEqual([
      { seconds: 30, speedKmh: 36 },
      { seconds: 5, throttlePercent: 35, gradePercent: -7 },
    ])
  })
})
