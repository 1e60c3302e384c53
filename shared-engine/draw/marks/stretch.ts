import type { LabelPlace } from '../labels.ts'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn } from './mark.ts'

/** A stretch along x, all the way up the frame: when something happened. */
export interface StretchMark extends DataMark {
  readonly mark: 'stretch'
  /** SI. */
  readonly from: number
  readonly to: number
  readonly unnamed?: boolean
}

/** px: a moment has to be seen too. */
const leastWidth = 3

export const stretch: MarkKind<StretchMark> = {
  extent: ({ from, to }) => ({ xs: [from, to], ys: [] }),

  draw(mark, { x, frame }) {
    const [from, to] = [x.pixelOf(mark.from), x.pixelOf(mark.to)]
    const width = Math.max(leastWidth, to - from)
    const left = (from + to - width) / 2
    const right = left + width
    const d = `M${left.toFixed(2)} ${frame.y1}H${right.toFixed(2)}V${frame.y0}H${left.toFixed(2)}Z`
    // At its head, inside where it is wide, beside it where it is not.
    const places = [0, 1, 2, 3].flatMap((row): LabelPlace[] => {
      const y = frame.y1 + 13 + 16 * row
      return [
        { x: (left + right) / 2, y, anchor: 'middle' },
        { x: left - 4, y, anchor: 'end' },
        { x: right + 4, y, anchor: 'start' },
      ]
    })
    return {
      ...nothingDrawn,
      shapes: [{ shape: 'path', d, fill: mark.role, fillOpacity: 0.16 }],
      labels: mark.unnamed ? [] : [{ text: mark.label, role: mark.role, places }],
    }
  },
}
