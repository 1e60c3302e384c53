import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { sameCursor } from '../readout.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { absentPlot, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

/** One quantity of a log; every one has moments of its own. */
interface LogCurve {
  readonly label: string
  /** s, rising. */
  readonly seconds: readonly number[]
  /** Null where two samples are not joined. */
  readonly values: readonly (number | null)[]
  /** The value lies within ± this; 0: as it was logged. */
  readonly within: number
  /** Least and most at each moment, where only a range is known. */
  readonly range?: {
    readonly low: readonly (number | null)[]
    readonly high: readonly (number | null)[]
  }
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
  /** What happened, in s; `over`: a limit was passed or something broke. */
  readonly episodes: readonly {
    readonly label: string
    readonly start: number
    readonly end: number
    readonly over: boolean
  }[]
}

const name = 'log'

function rangeOf({ within, seconds, values, label, range }: LogCurve): Mark[] {
  if (range !== undefined)
    return [{ mark: 'band', label, role: 'quiet', xs: seconds, ...range, unnamed: true }]
  if (within === 0) return []
  const moved = (by: number) => values.map((value) => (value === null ? null : Math.max(0, value + by)))
  const [low, high] = [moved(-within), moved(within)]
  return [{ mark: 'band', label, role: 'quiet', xs: seconds, low, high, unnamed: true }]
}

/** A log's channels over one time axis, a frame for each quantity, what happened marked across all of them. */
export function logOverTime({ title, summary, panels, episodes }: LogOverTime, look: PlotLook): Scene {
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
    x: { label: 'Time', kind: 'time', fromZero: false },
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
        ...panel.curves.flatMap(rangeOf),
        ...panel.curves.map((one, index): Mark => ({
          ...seriesCurve(index, one.label, one.seconds, one.values),
          width: 1.4,
        })),
      ],
    })),
    cursor: sameCursor('logSeconds', Math.min(...moments), Math.max(...moments)),
  })
}
