import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crosses, labelBox, overlap, placeLabels } from '../../../shared-engine/draw/labels.ts'
import { textWidth } from '../../../shared-engine/draw/text-width.ts'
import { drawings } from '../../drawings/drawings.ts'
import type { Shape, TextShape } from '../../../shared-engine/draw/scene.ts'

/** Measured once with the bundled face in a browser, px at 13 px. */
const measured: readonly (readonly [string, number])[] = [
  ['Top speed 53.1 km/h', 112.4],
  ['What the ground lets through', 158.7],
  ['Reduction 1 tooth bending', 144.2],
  ['Unloaded 35,600 rpm', 116.4],
  ['Pretension and centrifugal', 143.1],
  ['Motor', 32],
  ['10,000', 35.5],
]

const frame = { x0: 0, x1: 600, y0: 300, y1: 0 }
const coordinate = fc.double({ min: -50, max: 50, noNaN: true })

function texts(shapes: readonly Shape[]): TextShape[] {
  return shapes.flatMap((shape) =>
    shape.shape === 'group' ? texts(shape.shapes) : shape.shape === 'text' && shape.rim ? [shape] : [],
  )
}

describe('labels', () => {
  it('know whether a stretch of line passes through a box, as sampling it does', () => {
    const box = { x: -10, y: -6, width: 20, height: 12 }
    fc.assert(
      fc.property(coordinate, coordinate, coordinate, coordinate, (x1, y1, x2, y2) => {
        const inside = Array.from({ length: 401 }, (_, index) => index / 400).some((share) => {
          const x = x1 + (x2 - x1) * share
          const y = y1 + (y2 - y1) * share
          return x >= -10 && x <= 10 && y >= -6 && y <= 6
        })
        // Sampling may miss a corner that the line only grazes, never the other way round.
        if (inside) expect(crosses(box, { x: x1, y: y1 }, { x: x2, y: y2 })).toBe(true)
      }),
    )
    expect(crosses(box, { x: -20, y: 20 }, { x: 20, y: 20 })).toBe(false)
    expect(crosses(box, { x: -18, y: 0 }, { x: -4, y: 14 })).toBe(false)
  })

  it('are cut by no edge of their picture, in any drawing', () => {
    for (const [name, draw] of Object.entries(drawings)) {
      const scene = draw()
      for (const { text, at, anchor = 'start' } of texts(scene.shapes)) {
        const { x, width } = labelBox(text, { ...at, anchor })
        expect(x, `${name}: ${text}`).toBeGreaterThanOrEqual(-1)
        expect(x + width, `${name}: ${text}`).toBeLessThanOrEqual(scene.width + 1)
      }
    }
  })

  it('take another place where the first is taken', () => {
    const place = { x: 100, y: 100, anchor: 'start' as const }
    const other = { x: 100, y: 140, anchor: 'start' as const }
    const wishes = [
      { text: 'Thrust', role: 'ink' as const, places: [place] },
      { text: 'Resistance', role: 'ink' as const, places: [place, other] },
    ]
    expect(placeLabels(wishes, [], frame).map((label) => label.at.y)).toEqual([100, 140])
  })

  it('keep off lines where they can', () => {
    const line = [
      { x: 0, y: 97 },
      { x: 600, y: 97 },
    ]
    const places = [100, 140].map((y) => ({ x: 100, y, anchor: 'start' as const }))
    const [label] = placeLabels([{ text: 'Grip', role: 'ink', places }], [line], frame)
    expect(label?.at.y).toBe(140)
  })

  it.each(Object.keys(drawings).filter((name) => !name.startsWith('power-path')))(
    'do not lie on each other in %s',
    (name) => {
      const boxes = texts(drawings[name]?.().shapes ?? []).map(({ text, at, anchor = 'start' }) =>
        labelBox(text, { ...at, anchor }),
      )
      boxes.forEach((box, index) => {
        for (const before of boxes.slice(0, index)) expect(overlap(box, before)).toBe(false)
      })
    },
  )

  it('are about as wide as the face sets them', () => {
    // Widths measured in the bundled face at 13 px; 8 %: an estimate by kinds of letters.
    for (const [text, width] of measured) expect(Math.abs(textWidth(text, 13) / width - 1)).toBeLessThan(0.08)
  })
})
