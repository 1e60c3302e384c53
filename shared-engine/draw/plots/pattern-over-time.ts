import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { sameCursor } from '../readout.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { absentPlot, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import type { LimitId } from '../../limits/id.ts'

/** Quantities of one kind over the same time, drawn in one frame. */
export interface TimePanel {
  readonly label: string
  readonly kind: QuantityKind
  readonly series: readonly { readonly label: string; readonly values: readonly (number | null)[] }[]
  /** What must not be passed, and the moment it is. */
  readonly limits?: readonly TimeLimit[]
  /** Temperatures do not start at zero. */
  readonly fromZero?: boolean
}

export interface TimeLimit {
  readonly id: LimitId
  readonly label: string
  readonly value: number
  readonly beyond: 'above' | 'below'
  readonly passedAt: number | null
}

/** A drive pattern or a log: any quantities over time, one frame for each kind. */
export interface OverTime {
  readonly title: string
  readonly name: string
  readonly summary: string
  readonly seconds: readonly number[]
  readonly panels: readonly TimePanel[]
}

function limitMarks({ limits = [], kind }: TimePanel, look: PlotLook): Mark[] {
  return limits.flatMap((limit): Mark[] => {
    const { value, beyond, id, passedAt } = limit
    const label = `${limit.label} ${said(value, kind, look)}`
    const rule: Mark = { mark: 'rule', axis: 'y', value, label, role: 'over', beyond, limit: id }
    if (passedAt === null) return [rule]
    const when = said(passedAt, 'time', look)
    return [
      rule,
      { mark: 'point', x: passedAt, y: value, label: when, role: 'over', marker: 'diamond', limit: id },
    ]
  })
}

/** Quantities over time, one frame under the other, with limits and the moments at which they are passed. */
export function patternOverTime(data: OverTime, look: PlotLook): Scene {
  const { seconds, panels, name, title, summary } = data
  const end = seconds.at(-1)
  if (end === undefined || panels.length === 0)
    return absentPlot(name, title, 'There is nothing over time yet.', look)
  return plot({
    name,
    title,
    summary,
    ...look,
    sureTo: look.figures,
    x: { label: 'Time', kind: 'time' },
    panels: panels.map((panel) => ({
      y: { label: panel.label, kind: panel.kind, ...(panel.fromZero === false && { fromZero: false }) },
      marks: [
        ...limitMarks(panel, look),
        ...panel.series.map((one, index) => seriesCurve(index, one.label, seconds, one.values)),
      ],
    })),
    cursor: sameCursor('seconds', seconds[0] ?? 0, end),
  })
}
