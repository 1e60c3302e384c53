import type { LabelPlace } from '../labels.ts'
import type { Marker } from '../role.ts'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn } from './mark.ts'
import { markerShape } from './marker.ts'

/** A single place that matters, named: where thrust meets resistance, today's value. */
export interface PointMark extends DataMark {
  readonly mark: 'point'
  /** SI. */
  readonly x: number
  readonly y: number
  readonly marker?: Marker
  /** px; half of the marker's width. */
  readonly size?: number
  /** Hairlines from the point to both axes. */
  readonly dropped?: boolean
  readonly unnamed?: boolean
}

export const point: MarkKind<PointMark> = {
  extent: (mark) => ({ xs: [mark.x], ys: [mark.y] }),

  draw(mark, { x, y, frame }) {
    const at = { x: x.pixelOf(mark.x), y: y.pixelOf(mark.y) }
    const size = mark.size ?? 4.5
    const sign = markerShape(mark.marker ?? 'disc', at, mark.role, size)
    const limit = mark.limit
    const hairline = { role: 'quiet', width: 0.7, dash: [2, 3] } as const
    const drops = mark.dropped
      ? ([
          { shape: 'line', from: at, to: { x: at.x, y: frame.y0 }, stroke: hairline },
          { shape: 'line', from: at, to: { x: frame.x0, y: at.y }, stroke: hairline },
        ] as const)
      : []
    const off = size + 5
    const places: LabelPlace[] = [
      { x: at.x + off, y: at.y - 6, anchor: 'start' },
      { x: at.x - off, y: at.y - 6, anchor: 'end' },
      { x: at.x + off, y: at.y + 15, anchor: 'start' },
      { x: at.x - off, y: at.y + 15, anchor: 'end' },
      { x: at.x, y: at.y - off - 4, anchor: 'middle' },
      { x: at.x, y: at.y + off + 12, anchor: 'middle' },
      { x: at.x + off, y: at.y - 24, anchor: 'start' },
      { x: at.x - off, y: at.y - 24, anchor: 'end' },
      { x: at.x + off, y: at.y + 32, anchor: 'start' },
      { x: at.x - off, y: at.y + 32, anchor: 'end' },
    ]
    const box = { x: at.x - 10, y: at.y - 10, width: 20, height: 20 }
    return {
      ...nothingDrawn,
      shapes: [...drops, limit === undefined ? sign : { ...sign, limit }],
      labels: mark.unnamed ? [] : [{ text: mark.label, role: 'ink', places, strong: true }],
      obstacles: [[at, mark.marker === 'flag' ? { x: at.x, y: at.y - 3.4 * size } : at]],
      limits: limit === undefined ? [] : [{ limit, box }],
    }
  },
}
