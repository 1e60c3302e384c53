import { area as areaUnder } from 'd3-shape'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn, present } from './mark.ts'

/** The space under a curve down to a base value: an amount, such as the part of a tension that is centrifugal. */
export interface AreaMark extends DataMark {
  readonly mark: 'area'
  /** SI, rising. */
  readonly xs: readonly number[]
  readonly ys: readonly (number | null)[]
  /** SI; 0 unless said. */
  readonly base?: number
}

interface Slice {
  readonly x: number
  readonly y: number | null
}

export const area: MarkKind<AreaMark> = {
  extent: (mark) => ({ xs: mark.xs, ys: [mark.base ?? 0, ...present(mark.ys)] }),

  draw(mark, { x, y }) {
    const slices = mark.xs.map((value, index): Slice => ({ x: value, y: mark.ys[index] ?? null }))
    const d = areaUnder<Slice>()
      .defined((slice) => slice.y !== null)
      .x((slice) => x.pixelOf(slice.x))
      .y0(y.pixelOf(mark.base ?? 0))
      .y1((slice) => y.pixelOf(slice.y ?? 0))
      .digits(2)(slices)
    const shapes = d === null ? [] : [{ shape: 'path' as const, d, fill: mark.role, fillOpacity: 0.14 }]
    return { ...nothingDrawn, shapes }
  },
}
