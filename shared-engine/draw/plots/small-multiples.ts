import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import type { LimitId } from '../../limits/id.ts'

/** One entry varied, several figures followed. */
export interface Sweep {
  readonly x: { readonly label: string; readonly kind: QuantityKind }
  /** SI, rising. */
  readonly xs: readonly number[]
  /** Where the entry stands today; null outside the sweep. */
  readonly today: number | null
  readonly figures: readonly {
    readonly name: string
    readonly label: string
    readonly kind: QuantityKind
    readonly ys: readonly (number | null)[]
    readonly today: number | null
    /** Values of the entry at which a limit is crossed: a short label on each plot, and what it stands for. */
    readonly crossings?: readonly {
      readonly at: number
      readonly label: string
      readonly means: string
      readonly limit: LimitId
    }[]
  }[]
}

function marksOf(sweep: Sweep, figure: Sweep['figures'][number], look: PlotLook): Mark[] {
  const crossings = (figure.crossings ?? []).map(({ at, label, limit }): Mark => ({
    mark: 'rule',
    axis: 'x',
    value: at,
    label,
    role: 'over',
    dash: [2, 3],
    limit,
  }))
  const curve = { ...seriesCurve(0, figure.label, sweep.xs, figure.ys), marker: undefined, unnamed: true }
  if (sweep.today === null || figure.today === null) return [...crossings, curve]
  const label = `now ${said(figure.today, figure.kind, look)}`
  return [...crossings, curve, { mark: 'point', x: sweep.today, y: figure.today, label, role: 'accent' }]
}

/** One small plot for each figure, all over the same entry, today's point marked. */
export function smallMultiples(sweep: Sweep, look: PlotLook): Scene[] {
  return sweep.figures.map((figure) => {
    const crossings = (figure.crossings ?? []).map(({ label, means }) => ` ${label}: ${means}.`).join('')
    return plot({
      name: `sweep-${figure.name}`,
      title: `${figure.label} over ${sweep.x.label.toLowerCase()}`,
      summary: `${figure.label} over ${sweep.x.label.toLowerCase()}: now ${said(figure.today, figure.kind, look)}.${crossings}`,
      ...look,
      sureTo: look.figures,
      x: { ...sweep.x, fromZero: false },
      panels: [{ y: { label: figure.label, kind: figure.kind }, marks: marksOf(sweep, figure, look) }],
    })
  })
}
