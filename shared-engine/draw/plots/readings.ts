import type { PlottedReadings } from '../../measure/plotted.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, type PlotLook } from './plot-look.ts'

const name = 'readings'

/** `Volts, V` without its unit. */
const withoutUnit = (label: string) => label.split(',')[0] ?? label

/** Readings of a guided test as points, with the line or curve that was fitted through them. */
export function readingsPlot(data: PlottedReadings | null, look: PlotLook): Scene {
  if (data === null)
    return absentPlot(name, 'Readings', 'Two readings and more are drawn here, with what is fitted.', look)
  const { fitted } = data
  const inOrder = data.xs.map((_, at) => at).sort((one, other) => (data.xs[one] ?? 0) - (data.xs[other] ?? 0))
  const at = (values: readonly number[]) => inOrder.map((place) => values[place] ?? 0)
  const [xs, ys] = [at(data.xs), at(data.ys)]
  const curve: Mark[] =
    fitted === undefined
      ? []
      : [{ mark: 'curve', label: 'Fitted', role: 'accent', xs, ys: at(fitted), width: 1.4 }]
  const dots: Mark = { mark: 'dots', role: 'ink', marker: 'disc', label: 'Read', xs, ys, read: true }
  const title = `${withoutUnit(data.y)} over ${withoutUnit(data.x).toLowerCase()}`
  return plot({
    name,
    title,
    summary: `${xs.length} readings${fitted === undefined ? '' : ', and what is fitted through them'}.`,
    ...look,
    x: { label: data.x, kind: 'none', fromZero: false },
    panels: [{ y: { label: data.y, kind: 'none', fromZero: false }, marks: [...curve, dots] }],
  })
}
