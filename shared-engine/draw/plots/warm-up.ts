import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { sameCursor } from '../readout.ts'
import { absentPlot, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import type { LimitId } from '../../limits/id.ts'

export interface WarmUpCurve {
  /** "Motor", "Motor while the coolant stands". */
  readonly label: string
  readonly seconds: readonly number[]
  /** °C. */
  readonly temperatures: readonly (number | null)[]
  /** s to the limit; null where never. */
  readonly secondsToLimit: number | null
}

export interface WarmUp {
  readonly curves: readonly WarmUpCurve[]
  readonly limits: readonly { readonly id: LimitId; readonly label: string; readonly value: number }[]
  /** A of one motor that the curves are for. */
  readonly motorAmps: number
}

const name = 'warm-up'
const title = 'Warming up'

/** When the limit comes, as part of a sentence. */
function arrival({ label, secondsToLimit }: WarmUpCurve, look: PlotLook): string {
  return secondsToLimit === null
    ? `${label} stays below its limit`
    : `${label} reaches its limit after ${said(secondsToLimit, 'time', look)}`
}

function arrivalPoints({ curves, limits }: WarmUp, look: PlotLook): Mark[] {
  return curves.flatMap((curve, index): Mark[] => {
    const limit = limits[Math.min(index, limits.length - 1)]
    const end = curve.seconds.at(-1) ?? 0
    if (limit === undefined || curve.secondsToLimit === null || curve.secondsToLimit > end) return []
    const label = said(curve.secondsToLimit, 'time', look)
    const { id, value } = limit
    return [
      { mark: 'point', x: curve.secondsToLimit, y: value, label, role: 'over', marker: 'diamond', limit: id },
    ]
  })
}

/** Temperatures over time at a steady current, with their limits and the seconds until these are reached. */
export function warmUp(data: WarmUp, look: PlotLook): Scene {
  if (data.curves.length === 0) {
    return absentPlot(name, title, 'Heat capacity and thermal resistance would bring the warming up.', look)
  }
  const rules = data.limits.map((limit): Mark => ({
    mark: 'rule',
    axis: 'y',
    value: limit.value,
    label: `${limit.label} ${said(limit.value, 'temperature', look)}`,
    role: 'over',
    beyond: 'above',
    limit: limit.id,
  }))
  const end = Math.max(...data.curves.map((curve) => curve.seconds.at(-1) ?? 0))
  const curves = data.curves.map((curve, index) =>
    seriesCurve(index, curve.label, curve.seconds, curve.temperatures),
  )
  const when = data.curves.map((curve) => arrival(curve, look)).join('; ')
  return plot({
    name,
    title,
    summary: `At ${said(data.motorAmps, 'amps', look)} in each motor: ${when}.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Time', kind: 'time' },
    panels: [
      {
        y: { label: 'Temperature', kind: 'temperature', fromZero: false },
        marks: [...rules, ...curves, ...arrivalPoints(data, look)],
      },
    ],
    cursor: sameCursor('seconds', 0, end),
  })
}
