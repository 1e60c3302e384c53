import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, cursorOver, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

interface CruiseRange {
  /** m/s, rising. */
  readonly speed: readonly number[]
  readonly packAmps: readonly (number | null)[]
  readonly seconds: readonly (number | null)[]
  readonly metres: readonly (number | null)[]
  readonly best: { readonly speed: number; readonly metres: number } | null
}

/** How far and how long a charge lasts on the level at each steady speed, with the speed that goes furthest. */
export function cruiseRange(data: CruiseRange, look: PlotLook): Scene {
  const name = 'cruise-range'
  const title = 'Range and time over cruising speed'
  const { best, speed } = data
  if (best === null)
    return absentPlot(name, title, 'No speed can be held on the level with these entries.', look)
  const furthest: Mark = {
    mark: 'point',
    x: best.speed,
    y: best.metres,
    label: `Furthest: ${said(best.metres, 'distance', look)} at ${said(best.speed, 'speed', look)}`,
    role: 'accent',
    dropped: true,
  }
  return plot({
    name,
    title,
    summary: `Level, steady: furthest at ${said(best.speed, 'speed', look)}, ${said(best.metres, 'distance', look)} to the reserve.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Cruising speed', kind: 'speed' },
    panels: [
      {
        y: { label: 'Range to the reserve', kind: 'distance' },
        marks: [seriesCurve(0, 'Range', speed, data.metres), furthest],
        share: 1.3,
      },
      {
        y: { label: 'Time to the reserve', kind: 'duration' },
        marks: [seriesCurve(1, 'Time', speed, data.seconds)],
      },
      { y: { label: 'Pack current', kind: 'amps' }, marks: [seriesCurve(2, 'Pack', speed, data.packAmps)] },
    ],
    cursor: cursorOver('groundSpeed', speed, speed),
  })
}
