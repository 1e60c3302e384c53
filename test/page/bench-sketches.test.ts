import { describe, expect, test } from 'vitest'
import { guideOf, testIds } from '../../shared-engine/reference/measurements.ts'
import { sketchOf } from '../../src-renderer/bench/sketches.ts'

/** Numbers of path data that are absolute: those behind M and of the box that a drawing has. */
const starts = (data: string) =>
  [...data.matchAll(/M(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const)

describe.each(testIds)('the drawing of %s', (id) => {
  const { line, heavy = '', arrow = '', labels } = sketchOf(id)

  test('stands within its box, with words apart from each other', () => {
    for (const [x, y] of starts(line + heavy + arrow)) {
      expect(x, guideOf(id).title).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(200)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(y).toBeLessThanOrEqual(112)
    }
    // 10 px letters are about 5 px wide.
    const boxes = labels.map(([x, y, text]) => ({
      left: x - text.length * 2.5,
      right: x + text.length * 2.5,
      y,
    }))
    for (const [at, one] of boxes.entries()) {
      expect(one.left).toBeGreaterThanOrEqual(0)
      expect(one.right).toBeLessThanOrEqual(200)
      for (const other of boxes.slice(at + 1))
        expect(one.right < other.left || other.right < one.left || Math.abs(one.y - other.y) >= 10).toBe(true)
    }
  })

  test('says something', () => {
    expect(labels.length).toBeGreaterThan(0)
    expect(line.length).toBeGreaterThan(20)
  })
})
