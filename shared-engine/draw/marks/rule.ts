import type { LabelPlace } from '../labels.ts'
import type { Box, Point, Shape } from '../scene.ts'
import type { DataMark, MarkKind, MarkSpace } from './mark.ts'
import { nothingDrawn } from './mark.ts'

/** A value that holds all along the plot: a limit, with what lies beyond it hatched, or a plain mark. */
export interface RuleMark extends DataMark {
  readonly mark: 'rule'
  /** The axis whose value it marks: an `x` rule stands upright. */
  readonly axis: 'x' | 'y'
  /** SI. */
  readonly value: number
  /** Which side is past the limit; absent for a plain mark. */
  readonly beyond?: 'above' | 'below'
  readonly dash?: readonly number[]
}

/** Depth of the hatched band, px; the whole rest of the plot hatched would only darken it. */
const bandDepth = 12

function hatchBox(mark: RuleMark, at: number, { frame }: MarkSpace): Box {
  const { x0, x1, y0, y1 } = frame
  if (mark.axis === 'y') {
    const from = mark.beyond === 'above' ? Math.max(y1, at - bandDepth) : at
    const to = mark.beyond === 'above' ? at : Math.min(y0, at + bandDepth)
    return { x: x0, y: from, width: x1 - x0, height: to - from }
  }
  const from = mark.beyond === 'above' ? at : Math.max(x0, at - bandDepth)
  const to = mark.beyond === 'above' ? Math.min(x1, at + bandDepth) : at
  return { x: from, y: y1, width: to - from, height: y0 - y1 }
}

/** Names of level rules stand on the safe side near the right end; of upright ones near the top, beside the line. */
function labelPlaces(mark: RuleMark, at: number, { frame }: MarkSpace): LabelPlace[] {
  const { x0, x1, y0, y1 } = frame
  if (mark.axis === 'y') {
    const safe = mark.beyond === 'above' ? 15 : -6
    const other = mark.beyond === 'above' ? -bandDepth - 4 : bandDepth + 14
    return [safe, other].flatMap((lift): LabelPlace[] => [
      { x: x1 - 6, y: at + lift, anchor: 'end' },
      { x: x0 + 8, y: at + lift, anchor: 'start' },
      { x: (x0 + x1) / 2, y: at + lift, anchor: 'middle' },
      { x: x0 + 0.3 * (x1 - x0), y: at + lift, anchor: 'middle' },
      { x: x0 + 0.7 * (x1 - x0), y: at + lift, anchor: 'middle' },
    ])
  }
  const safe = mark.beyond === 'above' ? 'end' : 'start'
  const rows = [0, 1, 2, 3, 4, 5, 6, 7].map((row) => y1 + 13 + row * 17).filter((y) => y < y0 - 4)
  const beside = (anchor: 'start' | 'end', clear: number): LabelPlace[] =>
    rows.map((y) => ({ x: anchor === 'end' ? at - clear : at + clear, y, anchor }))
  return [...beside(safe, 6), ...beside(safe === 'end' ? 'start' : 'end', mark.beyond ? bandDepth + 5 : 6)]
}

/** A limit so far off that the plot would be squashed: named at the edge it lies beyond, with an arrow. */
function beyondEdge(mark: RuleMark, space: MarkSpace): LabelPlace[] {
  const { x0, x1, y1 } = space.frame
  return mark.axis === 'y'
    ? [0, 16, 32, 48].flatMap((down): LabelPlace[] => [
        { x: x1 - 6, y: y1 + 13 + down, anchor: 'end' },
        { x: x0 + 8, y: y1 + 13 + down, anchor: 'start' },
      ])
    : [0, 16, 32, 48].map((down) => ({ x: x1 - 6, y: y1 + 13 + down, anchor: 'end' }))
}

export const rule: MarkKind<RuleMark> = {
  extent: (mark) => (mark.axis === 'x' ? { xs: [mark.value], ys: [] } : { xs: [], ys: [mark.value] }),

  draw(mark, space) {
    const scale = mark.axis === 'x' ? space.x : space.y
    if (mark.value > scale.high * (1 + 1e-9)) {
      const text = `${mark.label} ${mark.axis === 'y' ? '↑' : '→'}`
      return { ...nothingDrawn, labels: [{ text, role: mark.role, places: beyondEdge(mark, space) }] }
    }
    const at = scale.pixelOf(mark.value)
    const { x0, x1, y0, y1 } = space.frame
    const [from, to]: [Point, Point] =
      mark.axis === 'y'
        ? [
            { x: x0, y: at },
            { x: x1, y: at },
          ]
        : [
            { x: at, y: y0 },
            { x: at, y: y1 },
          ]
    const limit = mark.limit === undefined ? {} : { limit: mark.limit }
    const stroke = { role: mark.role, width: 1.2, ...(mark.dash && { dash: mark.dash }) }
    const shapes: Shape[] = [{ shape: 'line', from, to, stroke, ...limit }]
    if (mark.beyond)
      shapes.push({ shape: 'hatch', box: hatchBox(mark, at, space), role: mark.role, spacing: 4, ...limit })
    const box = mark.beyond ? hatchBox(mark, at, space) : { ...from, width: to.x - from.x, height: y0 - y1 }
    return {
      ...nothingDrawn,
      shapes,
      labels:
        mark.label === ''
          ? []
          : [{ text: mark.label, role: mark.role, places: labelPlaces(mark, at, space) }],
      obstacles: [[from, to]],
      limits: mark.limit === undefined ? [] : [{ limit: mark.limit, box }],
    }
  },
}
