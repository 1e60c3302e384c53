import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { said, seriesCurve, type PlotLook } from './plot-look.ts'

/** Heights over the way of a pattern, before it is driven: m, m. */
interface SlopeSketch {
  readonly metres: readonly number[]
  readonly heights: readonly number[]
}

/** The slopes of a drive pattern as a profile. */
export function slopeSketch({ metres, heights }: SlopeSketch, look: PlotLook): Scene {
  const rise = Math.max(...heights) - Math.min(...heights)
  return plot({
    name: 'slope-sketch',
    title: 'Slopes of the pattern, as sketched',
    summary: `${said(metres.at(-1) ?? 0, 'distance', look)} of way, ${said(rise, 'distance', look)} between its lowest and its highest place; throttle rows counted at their share of top speed.`,
    ...look,
    x: { label: 'Way', kind: 'distance' },
    panels: [
      {
        y: { label: 'Height', kind: 'distance', fromZero: false },
        marks: [{ ...seriesCurve(0, 'Height', metres, heights), marker: undefined, unnamed: true }],
      },
    ],
  })
}
