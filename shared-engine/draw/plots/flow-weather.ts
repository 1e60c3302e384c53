import { flowWords, type FlowForWeather } from '../../explain/flow-weather.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { said, seriesCurve, type PlotLook } from './plot-look.ts'

/** Least pump flow over the air's temperature, the build's own flow and where the coolant freezes. */
export function flowWeather(data: FlowForWeather, look: PlotLook): Scene {
  const { air, flow, today, freezes } = data
  const marks: Mark[] = [
    {
      mark: 'rule',
      axis: 'x',
      value: freezes,
      label: `Freezes at ${said(freezes, 'temperature', look)}`,
      role: 'over',
      beyond: 'below',
      limit: 'cooling.freezing',
    },
    { mark: 'rule', axis: 'y', value: today, label: `As built ${said(today, 'flow', look)}`, role: 'quiet' },
    { ...seriesCurve(0, 'Least that is enough', air, flow), marker: undefined },
  ]
  return plot({
    name: 'flow-weather',
    title: 'Pump flow against the weather',
    summary: flowWords(data, (value, kind) => said(value, kind, look)),
    ...look,
    x: { label: 'Air', kind: 'temperature', fromZero: false },
    panels: [{ y: { label: 'Flow', kind: 'flow' }, marks }],
  })
}
