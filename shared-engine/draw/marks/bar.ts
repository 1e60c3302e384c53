import type { Shape } from '../scene.ts'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn } from './mark.ts'

/** A level bar in one row of a plot with named rows. */
export interface BarMark extends DataMark {
  readonly mark: 'bar'
  /** Row counted from 0 at the top; rows stand at y = −row. */
  readonly row: number
  /** SI. */
  readonly from: number
  readonly to: number
  /** Words at the bar's end. */
  readonly note: string
  /** The words stand no further left than this value; at the bar's end unless said. */
  readonly noteFrom?: number
  /** Filled, or hatched for what is past a limit, so that it shows without colour. */
  readonly hatched?: boolean
}

const halfHeight = 5

export const bar: MarkKind<BarMark> = {
  extent: (mark) => ({ xs: [mark.from, mark.to], ys: [-mark.row] }),

  draw(mark, { x, y, frame }) {
    const middle = y.pixelOf(-mark.row)
    const left = x.pixelOf(Math.min(mark.from, mark.to))
    const right = Math.min(frame.x1, x.pixelOf(Math.max(mark.from, mark.to)))
    const box = {
      x: left,
      y: middle - halfHeight,
      width: Math.max(0.5, right - left),
      height: 2 * halfHeight,
    }
    const limit = mark.limit === undefined ? {} : { limit: mark.limit }
    const d = `M${left} ${box.y}H${left + box.width}V${box.y + box.height}H${left}Z`
    const shapes: Shape[] = mark.hatched
      ? [
          { shape: 'hatch', box, role: mark.role, spacing: 3, ...limit },
          { shape: 'path', d, stroke: { role: mark.role, width: 1 }, ...limit },
        ]
      : [{ shape: 'path', d, fill: mark.role, ...limit }]
    const places = [
      {
        x: Math.max(right, x.pixelOf(mark.noteFrom ?? mark.to)) + 7,
        y: middle + 4.5,
        anchor: 'start' as const,
      },
      { x: right - 6, y: middle - halfHeight - 3, anchor: 'end' as const },
    ]
    return {
      ...nothingDrawn,
      shapes,
      labels: mark.note === '' ? [] : [{ text: mark.note, role: 'ink', places }],
      limits: mark.limit === undefined ? [] : [{ limit: mark.limit, box }],
    }
  },
}
