import type { ShownSeries } from '../../log/shown.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { sameCursor } from '../readout.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { absentPlot, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

/** One quantity of a log; every one has moments of its own. */
interface LogCurve extends ShownSeries {
  readonly label: string
}

/** Quantities of one kind in one frame. */
export interface LogPanel {
  readonly label: string
  readonly kind: QuantityKind
  readonly curves: readonly LogCurve[]
  readonly limits: readonly {
    readonly label: string
    readonly value: number
    readonly beyond: 'above' | 'below'
  }[]
  /** Whether the axis starts at zero. */
  readonly fromZero: boolean
}

/** One segment of a log on a screen. */
export interface LogOverTime {
  readonly title: string
  readonly summary: string
  readonly panels: readonly LogPanel[]
  /** The part that is looked at, s; null: all of it. */
  readonly span: { readonly from: number; readonly to: number } | null
  /** What happened, in s; `over`: a limit was passed or something broke. */
  readonly episodes: readonly {
    readonly label: string
    readonly start: number
    readonly end: number
    readonly over: boolean
  }[]
}

const name = 'log'

function bandOf({ label, band }: LogCurve): Mark[] {
  if (band === null) return []
  const { seconds, low, high } = band
  return [{ mark: 'band', label, role: 'quiet', xs: seconds, low, high, unnamed: true }]
}

/** A log's channels over one time axis, a frame for each quantity, what happened marked across all of them. */
export function logOverTime({ title, summary, panels, episodes, span }: LogOverTime, look: PlotLook): Scene {
  const moments = panels.flatMap(({ curves }) =>
    curves.flatMap(({ seconds }) => [seconds[0] ?? 0, seconds.at(-1) ?? 0]),
  )
  if (moments.length === 0)
    return absentPlot(name, title, 'This part of the log has no channel to draw.', look)
  return plot({
    name,
    title,
    summary,
    ...look,
    x: {
      label: 'Time',
      kind: 'time',
      fromZero: false,
      ...(span === null ? {} : { low: span.from, high: span.to }),
    },
    panels: panels.map((panel, at) => ({
      y: { label: panel.label, kind: panel.kind, ...(panel.fromZero ? {} : { fromZero: false }) },
      marks: [
        ...episodes.map(({ label, start, end, over }): Mark => ({
          mark: 'stretch',
          label,
          role: over ? 'over' : 'near',
          from: start,
          to: end,
          unnamed: at > 0,
        })),
        ...panel.limits.map(({ label, value, beyond }): Mark => ({
          mark: 'rule',
          axis: 'y',
          value,
          label: `${label} ${said(value, panel.kind, look)}`,
          role: 'over',
          beyond,
        })),
        ...panel.curves.flatMap(bandOf),
        ...panel.curves.map((one, index): Mark => ({
          ...seriesCurve(index, one.label, one.seconds, one.values),
          width: 1.4,
        })),
      ],
    })),
    cursor: sameCursor('logSeconds', span?.from ?? Math.min(...moments), span?.to ?? Math.max(...moments)),
  })
}
