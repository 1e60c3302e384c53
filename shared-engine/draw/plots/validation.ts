import { quantityWords } from '../../validate/sentences.ts'
import type { PredictedSeries } from '../../validate/judge.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { sameCursor } from '../readout.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, type PlotLook } from './plot-look.ts'

const name = 'validation'
const title = 'Predicted and measured over time'

/** Samples further apart than this are not joined, s. */
const longest = 6

/** One segment of a series, gaps left open by a null. */
interface Part {
  readonly seconds: readonly number[]
  readonly measured: readonly (number | null)[]
  readonly predicted: readonly (number | null)[]
  readonly low: readonly (number | null)[]
  readonly high: readonly (number | null)[]
}

function partOf(series: PredictedSeries, segment: number): Part {
  const part = { seconds: [] as number[], ...emptyColumns() }
  series.segments.forEach((one, at) => {
    if (one !== segment) return
    const now = series.seconds[at] ?? NaN
    const before = part.seconds.at(-1)
    if (before !== undefined && now <= before) return
    if (before !== undefined && now - before > longest) {
      part.seconds.push((now + before) / 2)
      for (const column of [part.measured, part.predicted, part.low, part.high]) column.push(null)
    }
    const [predicted, band] = [series.predicted[at] ?? NaN, series.band[at] ?? NaN]
    part.seconds.push(now)
    part.measured.push(series.measured[at] ?? null)
    part.predicted.push(predicted)
    part.low.push(predicted - band)
    part.high.push(predicted + band)
  })
  return part
}

const emptyColumns = () => ({
  measured: [] as (number | null)[],
  predicted: [] as (number | null)[],
  low: [] as (number | null)[],
  high: [] as (number | null)[],
})

/** What a build predicts of a run with its band, and what was measured, a frame for each quantity. */
export function validationPlot(series: readonly PredictedSeries[], segment: number, look: PlotLook): Scene {
  const parts = series
    .map((one) => ({ words: quantityWords[one.id], part: partOf(one, segment) }))
    .filter(({ part }) => part.seconds.length > 1)
  if (parts.length === 0)
    return absentPlot(name, title, 'Nothing of this part of the log can be compared.', look)
  const moments = parts.flatMap(({ part }) => [part.seconds[0] ?? 0, part.seconds.at(-1) ?? 0])
  return plot({
    name,
    title,
    summary: 'The band holds 95 of 100 samples where the build is right.',
    ...look,
    x: { label: 'Time', kind: 'time' },
    panels: parts.map(({ words, part }) => ({
      y: {
        label: words.label,
        kind: words.kind,
        ...(words.kind === 'temperature' ? { fromZero: false } : {}),
      },
      marks: [
        { mark: 'band', label: 'Band', role: 'quiet', xs: part.seconds, low: part.low, high: part.high },
        {
          mark: 'curve',
          label: 'Predicted',
          role: 'quiet',
          dash: [5, 3],
          width: 1.4,
          xs: part.seconds,
          ys: part.predicted,
        },
        { mark: 'curve', label: 'Measured', role: 'accent', width: 1.4, xs: part.seconds, ys: part.measured },
      ] satisfies Mark[],
    })),
    cursor: sameCursor('logSeconds', Math.min(...moments), Math.max(...moments)),
  })
}
