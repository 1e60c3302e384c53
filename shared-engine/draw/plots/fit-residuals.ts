import type { FitTrace } from '../../fit/fit.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { sameCursor } from '../readout.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, type PlotLook } from './plot-look.ts'

const name = 'fit-residuals'
const title = 'Log less model, before and after the fit'

/** What each kind of residual is the difference of. */
const words: Readonly<Record<FitTrace['block'], string>> = {
  volts: 'Motor volts',
  sag: 'Pack volts',
  speed: 'Belt speed',
  slip: 'Ground speed',
  heat: 'Temperature',
}

const dots = { mark: 'dots', read: true } as const

/** Two standard deviations either way hold nineteen of twenty where the model is right. */
const usual = 2

/** Residuals of a fit over the time of one segment, each in its own standard deviations. */
export function fitResiduals(traces: readonly FitTrace[], segment: number, look: PlotLook): Scene {
  const here = traces.map((trace) => partOf(trace, segment)).filter(({ seconds }) => seconds.length > 0)
  if (here.length === 0) return absentPlot(name, title, 'Nothing of this segment was fitted.', look)
  const moments = here.flatMap(({ seconds }) => [seconds[0] ?? 0, seconds.at(-1) ?? 0])
  return plot({
    name,
    title,
    summary: here.map(summaryOf).join(' '),
    ...look,
    x: { label: 'Time', kind: 'time', fromZero: false },
    panels: here.map(({ block, seconds, before, after }) => ({
      y: { label: `${words[block]}, standard deviations`, kind: 'none' as const, include: [-usual, usual] },
      marks: [
        { ...dots, role: 'quiet', marker: 'cross', label: `${words[block]} before`, xs: seconds, ys: before },
        { ...dots, role: 'accent', marker: 'disc', label: `${words[block]} after`, xs: seconds, ys: after },
      ] satisfies Mark[],
    })),
    cursor: sameCursor('logSeconds', Math.min(...moments), Math.max(...moments)),
  })
}

function partOf(trace: FitTrace, segment: number): FitTrace {
  const at = trace.segments.flatMap((one, place) => (one === segment ? [place] : []))
  const of = (values: readonly number[]) => at.map((place) => values[place] ?? NaN)
  return {
    ...trace,
    segments: of(trace.segments),
    seconds: of(trace.seconds),
    before: of(trace.before),
    after: of(trace.after),
  }
}

const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length)

function summaryOf({ block, before, after }: FitTrace): string {
  return `${words[block]}: off by ${rms(before).toPrecision(2)} standard deviations before the fit, ${rms(after).toPrecision(2)} after.`
}
