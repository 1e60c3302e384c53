import type { Marker } from '../role.ts'
import type { Shape } from '../scene.ts'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn } from './mark.ts'
import { px } from '../parts/outline.ts'

/** Many places without names, one path for all of them: candidates of a search. */
export interface DotsMark extends DataMark {
  readonly mark: 'dots'
  /** SI, pairs in any order. */
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  readonly marker: Exclude<Marker, 'ring' | 'flag'>
}

const half = 2.6

function dotPath(marker: DotsMark['marker'], x: number, y: number): string {
  const left = px(x - half)
  const top = px(y - half)
  const full = px(2 * half)
  switch (marker) {
    case 'square':
      return `M${left} ${top}h${full}v${full}h-${full}z`
    case 'triangle':
      return `M${px(x)} ${px(y - half * 1.2)}l${px(half * 1.15)} ${full}h-${px(2 * half * 1.15)}z`
    case 'diamond':
      return `M${px(x)} ${px(y - half * 1.2)}l${px(half * 1.2)} ${px(half * 1.2)}l-${px(half * 1.2)} ${px(half * 1.2)}l-${px(half * 1.2)} -${px(half * 1.2)}z`
    case 'cross':
      return `M${left} ${top}l${full} ${full}M${left} ${px(y + half)}l${full} -${full}`
    case 'disc':
      return `M${left} ${px(y)}a${half} ${half} 0 1 1 ${full} 0a${half} ${half} 0 1 1 -${full} 0z`
  }
}

export const dots: MarkKind<DotsMark> = {
  extent: ({ xs, ys }) => ({ xs, ys }),

  draw(mark, { x, y }) {
    const d = mark.xs.map((value, index) =>
      dotPath(mark.marker, x.pixelOf(value), y.pixelOf(mark.ys[index] ?? 0)),
    )
    const stroked = mark.marker === 'cross'
    const look = stroked
      ? { stroke: { role: mark.role, width: 1.4 } }
      : { fill: mark.role, fillOpacity: 0.75 }
    const shape: Shape = { shape: 'path', d: d.join(''), ...look }
    return { ...nothingDrawn, shapes: mark.xs.length > 0 ? [shape] : [] }
  },
}
