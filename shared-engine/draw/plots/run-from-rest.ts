import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, cursorOver, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

interface RunFromRest {
  readonly seconds: readonly number[]
  readonly speed: readonly number[]
  readonly distance: readonly number[]
}

const name = 'run-from-rest'
const title = 'The run from rest'

/** Speed and distance over time at full throttle from standing still; the speed cursor finds its moment. */
export function runFromRest(run: RunFromRest | null, look: PlotLook): Scene {
  const end = run?.seconds.at(-1)
  if (run === null || end === undefined) {
    return absentPlot(
      name,
      title,
      'The machine does not get going: thrust at rest is below what holds it back.',
      look,
    )
  }
  const speed = run.speed.at(-1) ?? 0
  const distance = run.distance.at(-1) ?? 0
  const { seconds } = run
  return plot({
    name,
    title,
    summary: `From rest to ${said(speed, 'speed', look)} in ${said(end, 'time', look)} over ${said(distance, 'distance', look)}.`,
    ...look,
    sureTo: look.figures,
    x: { label: 'Time', kind: 'time' },
    panels: [
      {
        y: { label: 'Speed', kind: 'speed' },
        marks: [seriesCurve(0, 'Speed', seconds, run.speed)],
        share: 1.2,
      },
      {
        y: { label: 'Distance', kind: 'distance' },
        marks: [seriesCurve(1, 'Distance', seconds, run.distance)],
      },
    ],
    cursor: cursorOver('groundSpeed', seconds, run.speed),
  })
}
