import { plot } from '../plot.ts'
import type { CursorMap, Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { absentPlot, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

/** The same curve of several builds. */
export interface Overlay {
  readonly name: string
  readonly title: string
  readonly x: { readonly label: string; readonly kind: QuantityKind }
  readonly y: { readonly label: string; readonly kind: QuantityKind }
  readonly builds: readonly {
    readonly name: string
    readonly xs: readonly number[]
    readonly ys: readonly (number | null)[]
  }[]
  readonly cursor?: CursorMap
}

/** Curves of up to six builds in one frame, each named on its line. */
export function overlay(data: Overlay, look: PlotLook): Scene {
  const { name, title, x, y, builds } = data
  if (builds.every((build) => build.xs.length === 0))
    return absentPlot(name, title, 'No build has this curve.', look)
  const greatest = builds.map((build) =>
    build.ys.reduce<number>((most, value) => Math.max(most, value ?? most), 0),
  )
  const order = builds.map((_, index) => index).sort((a, b) => (greatest[b] ?? 0) - (greatest[a] ?? 0))
  return plot({
    name,
    title,
    summary: `${y.label} over ${x.label.toLowerCase()}, highest first: ${order.map((index) => builds[index]?.name).join(', ')}.`,
    ...look,
    sureTo: look.figures,
    x,
    panels: [{ y, marks: builds.map((build, index) => seriesCurve(index, build.name, build.xs, build.ys)) }],
    ...(data.cursor && { cursor: data.cursor }),
  })
}
