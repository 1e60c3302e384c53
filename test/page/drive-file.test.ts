import { describe, expect, it } from 'vitest'
import { demoPatterns } from '../../shared-engine/drive/demos.ts'
import { readPatternText } from '../../shared-engine/drive/read.ts'
import { plainRow, storedPatternOf } from '../../shared-engine/drive/rows.ts'
import { patternText } from '../../src-renderer/questions/hot/drive-file.ts'

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
        // 12 digits are written
        if (was?.grade === null) expect(row.grade).toBeNull()
        else expect(row.grade).toBeCloseTo(was?.grade ?? NaN, 12)
        expect(row.kind).toBe(was?.kind)
        expect(row.value).toBeCloseTo(was?.value ?? NaN, 12)
        expect(row.turnShare).toBeCloseTo(was?.turnShare ?? NaN, 12)
      })
    },
  )

  it('holds what a builder reads: kilometres an hour and percent', () => {
    const rows = [
      plainRow('speed', 10, 30), // 10 m/s is 36 km/h by definition
      { ...plainRow('throttle', 0.35, 5, -0.07), turnShare: 0.25 },
    ]
    expect(storedPatternOf({ name: 'A', notes: '', rows }).rows).toEqual([
      { seconds: 30, speedKmh: 36 },
      { seconds: 5, throttlePercent: 35, gradePercent: -7, turnPercent: 25 },
    ])
  })
})
