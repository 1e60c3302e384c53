import { area as areaBetween } from 'd3-shape'
import type { LabelPlace } from '../labels.ts'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn, present } from './mark.ts'

/** Between two values at each x: how sure a curve is, or a range that is allowed. */
export interface BandMark extends DataMark {
  readonly mark: 'band'
  /** SI, rising. */
  readonly xs: readonly number[]
  readonly low: readonly (number | null)[]
  readonly high: readonly (number | null)[]
  readonly unnamed?: boolean
}

interface Slice {
  readonly x: number
  readonly low: number | null
  readonly high: number | null
}

export const band: MarkKind<BandMark> = {
  extent: (mark) => ({ xs: mark.xs, ys: present([...mark.low, ...mark.high]) }),

  draw(mark, { x, y, frame }) {
    const slices = mark.xs.map((value, index): Slice => ({
      x: value,
      low: mark.low[index] ?? null,
      high: mark.high[index] ?? null,
    }))
    const d = areaBetween<Slice>()
      .defined((slice) => slice.low !== null && slice.high !== null)
      .x((slice) => x.pixelOf(slice.x))
      .y0((slice) => y.pixelOf(slice.low ?? 0))
      .y1((slice) => y.pixelOf(slice.high ?? 0))
      .digits(2)(slices)
    // Half-way along, at its upper rim: the name says what the grey means.
    const places = [0.7, 0.5, 0.3, 0.9].flatMap((share): LabelPlace[] => {
      const slice = slices[Math.round(share * (slices.length - 1))]
      if (slice === undefined || slice.high === null || slice.low === null) return []
      const middle = Math.max(frame.y1 + 12, y.pixelOf(slice.high) - 6)
      return [
        { x: x.pixelOf(slice.x), y: middle, anchor: 'middle' },
        { x: x.pixelOf(slice.x), y: y.pixelOf(slice.low) + 15, anchor: 'middle' },
      ]
    })
    return {
      ...nothingDrawn,
      shapes: d === null ? [] : [{ shape: 'path', d, fill: mark.role, fillOpacity: 0.16 }],
      labels: mark.unnamed ? [] : [{ text: mark.label, role: mark.role, places }],
    }
  },
}
