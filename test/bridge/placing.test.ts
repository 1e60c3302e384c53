import fc from 'fast-check'
import { expect, it } from 'vitest'
import { placeBeside } from '../../src-main/shell/placing.ts'

const wide = { x: 0, y: 25, width: 3840, height: 2135 }
const small = { x: 0, y: 25, width: 1366, height: 743 }

it('a further window stands beside the first where the screen has the room, right before left', () => {
  expect(placeBeside({ x: 100, y: 60, width: 1280, height: 800 }, wide)).toEqual({ x: 1380, y: 60 })
  expect(placeBeside({ x: 2400, y: 60, width: 1280, height: 800 }, wide)).toEqual({ x: 1120, y: 60 })
})

it('else a step off it, and never exactly over it', () => {
  expect(placeBeside({ x: 10, y: 30, width: 1024, height: 640 }, small)).toEqual({ x: 42, y: 62 })
  const places = fc.record({
    x: fc.integer({ min: -50, max: 1400 }),
    y: fc.integer({ min: 0, max: 800 }),
    width: fc.integer({ min: 1024, max: 1400 }),
    height: fc.integer({ min: 640, max: 900 }),
  })
  fc.assert(
    fc.property(places, (before) => {
      const { x, y } = placeBeside(before, small)
      expect([x, y]).not.toEqual([before.x, before.y])
    }),
  )
})
