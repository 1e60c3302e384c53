import type { LabelWish } from '../labels.ts'
import type { Role } from '../role.ts'
import type { PlotScale } from '../scale.ts'
import type { Frame, LimitPlace, Point, SeriesReading, Shape } from '../scene.ts'
import type { LimitId } from '../../limits/id.ts'

/** Where a mark is drawn. */
export interface MarkSpace {
  readonly x: PlotScale
  readonly y: PlotScale
  readonly frame: Frame
}

/** What must be seen of a mark: values that its axes have to reach, SI. */
export interface MarkExtent {
  readonly xs: readonly number[]
  readonly ys: readonly number[]
}

/** A mark as drawn: shapes, wishes for labels, lines that labels should keep off, and what can be read off it. */
export interface DrawnMark {
  readonly shapes: readonly Shape[]
  readonly labels: readonly LabelWish[]
  readonly obstacles: readonly (readonly Point[])[]
  readonly series: SeriesReading | null
  readonly limits: readonly LimitPlace[]
}

/** One kind of mark: what it must have in view, and how it is drawn. Every file in this folder has this shape. */
export interface MarkKind<M> {
  extent(mark: M): MarkExtent
  draw(mark: M, space: MarkSpace): DrawnMark
}

export const nothingDrawn: DrawnMark = { shapes: [], labels: [], obstacles: [], series: null, limits: [] }

/** Common to marks of data. */
export interface DataMark {
  readonly label: string
  readonly role: Role
  /** The limit that this mark shows. */
  readonly limit?: LimitId
}

/** The numbers of a list that are there. */
export function present(values: readonly (number | null)[]): number[] {
  return values.filter((value): value is number => value !== null && Number.isFinite(value))
}
