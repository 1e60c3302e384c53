import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nearestStop, steppedTo } from '../../src-renderer/plots/stepping.ts'

const stops = [0, 1, 2.5, 4, 10]
const key = (name: string, shiftKey = false) => ({ key: name, shiftKey })

describe('stepping along a plot', () => {
  it('goes to the next stop, never past the ends', () => {
    expect(steppedTo(stops, 1, key('ArrowRight'))).toBe(2.5)
    expect(steppedTo(stops, 1, key('ArrowLeft'))).toBe(0)
    expect(steppedTo(stops, 0, key('ArrowLeft'))).toBe(0)
    expect(steppedTo(stops, 10, key('ArrowRight'))).toBe(10)
    expect(steppedTo(stops, 2.5, key('Home'))).toBe(0)
    expect(steppedTo(stops, 2.5, key('End'))).toBe(10)
    expect(steppedTo(stops, 1, key('ArrowRight', true))).toBe(10)
  })

  it('from between two stops, goes to the next one in its direction, not past it', () => {
    expect(steppedTo(stops, 2.4, key('ArrowRight'))).toBe(2.5)
    expect(steppedTo(stops, 1.1, key('ArrowLeft'))).toBe(1)
    expect(steppedTo(stops, 1.1, key('ArrowRight'))).toBe(2.5)
  })

  it('begins at an end where nothing was chosen, and leaves other keys alone', () => {
    expect(steppedTo(stops, null, key('ArrowRight'))).toBe(0)
    expect(steppedTo(stops, null, key('End'))).toBe(10)
    expect(steppedTo(stops, 1, key('a'))).toBeNull()
    expect(steppedTo([], null, key('ArrowRight'))).toBeNull()
  })

  it('reaches every stop once from left to right', () => {
    const rising = fc.uniqueArray(fc.double({ min: -1e3, max: 1e3, noNaN: true }), {
      minLength: 1,
      maxLength: 40,
    })
    fc.assert(
      fc.property(rising, (values) => {
        const sorted = values.map((value) => value + 0).sort((a, b) => a - b)
        const met = [sorted[0]]
        for (let step = 1; step < sorted.length; step++) {
          met.push(steppedTo(sorted, met.at(-1) ?? null, key('ArrowRight')) ?? undefined)
        }
        expect(met).toEqual(sorted)
        expect(nearestStop(sorted, sorted.at(-1) ?? 0)).toBe(sorted.length - 1)
      }),
    )
  })
})
