import type { Marker } from '../role.ts'
import type { Shape } from '../scene.ts'
import type { DataMark, MarkKind } from './mark.ts'
import { nothingDrawn, present } from './mark.ts'
import { px } from '../parts/outline.ts'
import { labelPlaces } from './curve.ts'

/** Many places, one path for all of them: candidates of a search, samples of a run. */
export interface DotsMark extends DataMark {
  readonly mark: 'dots'
  /** SI, pairs in any order; where there is no y, there is no dot. */
  readonly xs: readonly number[]
  readonly ys: readonly (number | null)[]
  readonly marker: Exclude<Marker, 'ring' | 'flag'>
  /** Named beside them, read at the cursor and a column of the table: their xs rise. */
  readonly read?: boolean
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
  extent: ({ xs, ys }) => ({ xs, ys: present(ys) }),

  draw(mark, { x, y }) {
    const places = mark.xs.flatMap((value, index) => {
      const here = mark.ys[index]
      return here === null || here === undefined ? [] : [{ x: x.pixelOf(value), y: y.pixelOf(here) }]
    })
    const d = places.map((place) => dotPath(mark.marker, place.x, place.y))
    const stroked = mark.marker === 'cross'
    const look = stroked
      ? { stroke: { role: mark.role, width: 1.4 } }
      : { fill: mark.role, fillOpacity: 0.75 }
    const shape: Shape = { shape: 'path', d: d.join(''), ...look }
    const drawn = { ...nothingDrawn, shapes: places.length > 0 ? [shape] : [] }
    if (mark.read !== true) return drawn
    return {
      ...drawn,
      labels: [{ text: mark.label, role: mark.role, places: labelPlaces([places]) }],
      series: { label: mark.label, role: mark.role, kind: y.kind, xs: mark.xs, ys: mark.ys },
    }
  },
}
