import { describe, expect, test } from 'vitest'
import { entryWords } from '../../src-renderer/questions/hold/remedy-words.ts'

// A remedy is worked out for a number; what a person reads and types must be that number, or the limit may not hold.

describe('a remedy’s number', () => {
  test.each([
    ['stages.0.slipTorqueNm', 1651.5, '1651.5\u202FN·m'],
    ['track.pretensionN', 20_755, '20755\u202FN'],
    ['track.tooth.rootMm', 7.9, '7.9\u202Fmm'],
    ['track.sprocketTeeth', 18, '18\u202Fteeth'],
  ])('%s of %d is shown as it is in its own unit', (path, value, words) => {
    expect(entryWords(path, value, 'metric').replaceAll(',', '')).toBe(words)
  })

  test('has four figures in another unit', () => {
    // 7.9 mm / 25.4 mm = 0.311024
    expect(entryWords('track.tooth.rootMm', 7.9, 'imperial')).toBe('0.311\u202Fin')
  })
})
