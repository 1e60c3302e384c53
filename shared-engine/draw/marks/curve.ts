import { line as lineThrough } from 'd3-shape'
import type { LabelPlace, LabelWish } from '../labels.ts'
import type { Marker, SeriesStyle } from '../role.ts'
import type { Point, Shape } from '../scene.ts'
import { thinned } from '../thin.ts'
import type { Thinned } from '../thin.ts'
import { present } from './mark.ts'
import type { DataMark, MarkKind, MarkSpace } from './mark.ts'
import { markerShape } from './marker.ts'

/** A line through values; gaps stay gaps. Told apart by colour, dash and marker, and named on the line itself. */
export interface CurveMark extends DataMark {
  readonly mark: 'curve'
  /** SI, rising. */
  readonly xs: readonly number[]
  readonly ys: readonly (number | null)[]
  readonly dash?: readonly number[]
  readonly marker?: Marker
  /** px. */
  readonly width?: number
  /** Not named on the line (its name stands elsewhere); it is still read out. */
  readonly unnamed?: boolean
}

/** A curve in the style of the n-th series. */
export function styled(style: SeriesStyle): Pick<CurveMark, 'role' | 'dash' | 'marker'> {
  return { role: style.role, dash: style.dash, marker: style.marker }
}

/** Markers stand this far apart along x, px. */
const markerSpacing = 96

function runsOf(points: Thinned, space: MarkSpace): Point[][] {
  const runs: Point[][] = [[]]
  points.xs.forEach((x, index) => {
    const y = points.ys[index]
    if (y === null || y === undefined) runs.push([])
    else runs.at(-1)?.push({ x: space.x.pixelOf(x), y: space.y.pixelOf(y) })
  })
  return runs.filter((run) => run.length > 0)
}

/** Points along the curve at about even distances in x. */
function evenly(run: readonly Point[], spacing: number, first: number): Point[] {
  const chosen: Point[] = []
  let next = (run[0]?.x ?? 0) + first
  for (const point of run) {
    if (point.x < next) continue
    chosen.push(point)
    next = point.x + spacing
  }
  return chosen
}

/** Where the name may stand: near the right end first, above or below the line, then further left. */
export function labelPlaces(runs: readonly (readonly Point[])[]): LabelPlace[] {
  const longest = runs.reduce<readonly Point[]>((most, run) => (run.length > most.length ? run : most), [])
  const at = (share: number): Point | undefined => longest[Math.round(share * (longest.length - 1))]
  return [0.8, 0.65, 0.92, 0.5, 0.35, 0.2, 0.08].flatMap((share): LabelPlace[] => {
    const point = at(share)
    if (point === undefined) return []
    return ([-7, 16, -15, 24] as const).flatMap((lift): LabelPlace[] =>
      (['middle', 'end', 'start'] as const).map((anchor) => ({ x: point.x, y: point.y + lift, anchor })),
    )
  })
}

export const curve: MarkKind<CurveMark> = {
  extent: (mark) => ({ xs: mark.xs, ys: present(mark.ys) }),

  draw(mark, space) {
    const points = thinned(mark.xs, mark.ys, space.x.pixelOf)
    const runs = runsOf(points, space)
    const pathData = lineThrough<Point>(
      (point) => point.x,
      (point) => point.y,
    ).digits(2)
    const d = runs.map((run) => pathData(run) ?? '').join('')
    const width = mark.width ?? 1.8
    const stroke = { role: mark.role, width, ...(mark.dash && { dash: mark.dash }) }
    const limit = mark.limit === undefined ? {} : { limit: mark.limit }
    const line: Shape = { shape: 'path', d, stroke, ...limit }
    const marker = mark.marker
    const first = marker === undefined ? 0 : 30 + 16 * marker.length
    const markers = marker
      ? runs.flatMap((run) =>
          evenly(run, markerSpacing, first).map((point) => markerShape(marker, point, mark.role)),
        )
      : []
    const label: LabelWish = { text: mark.label, role: mark.role, places: labelPlaces(runs) }
    return {
      shapes: [line, ...markers],
      labels: mark.unnamed ? [] : [label],
      obstacles: runs,
      series: { label: mark.label, role: mark.role, kind: space.y.kind, xs: mark.xs, ys: mark.ys },
      limits: [],
    }
  },
}
