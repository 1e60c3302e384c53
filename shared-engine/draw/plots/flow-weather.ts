import type { FlowForWeather } from '../../explain/flow-weather.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { said, seriesCurve, type PlotLook } from './plot-look.ts'

/** Least pump flow over the air's temperature, the build's own flow and where the coolant freezes. */
export function flowWeather(data: FlowForWeather, look: PlotLook): Scene {
  const { air, flow, today, freezes, airToday } = data
  const here = air.findIndex((celsius) => celsius >= airToday)
  const enough = flow[here] ?? null
  const at = `At ${said(airToday, 'temperature', look)}`
  const needed =
    airToday <= freezes
      ? `${at} this coolant freezes.`
      : enough === null
        ? `${at} no flow of a small pump keeps everything within its limits in this drive.`
        : `${at} ${said(enough, 'flow', look)} is enough for this drive.`
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
    summary: `${needed} Below ${said(freezes, 'temperature', look)} this coolant freezes.`,
    ...look,
    x: { label: 'Air', kind: 'temperature', fromZero: false },
    panels: [{ y: { label: 'Flow', kind: 'flow' }, marks }],
  })
}
