import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import { groundSpeedsOf, risingStates, speedCursor } from './speed-states.ts'
import type { SpeedState } from './speed-states.ts'

interface CurrentPowerEfficiency {
  readonly states: readonly SpeedState[]
  /** Ground speed at which thrust meets resistance: marked in every panel; null where the machine does not get going. */
  readonly topSpeed: number | null
}

const name = 'current-power-efficiency'
const title = 'Current, power and efficiency over ground speed'

/** Greatest value of a list that has one, with the speed it stands at. */
function bestOf(states: readonly SpeedState[]): { speed: number; value: number } | null {
  let best: { speed: number; value: number } | null = null
  for (const { groundSpeed: speed, overallEfficiency: value } of states) {
    if (value !== null && (best === null || value > best.value)) best = { speed, value }
  }
  return best
}

/** Current, power and efficiency at full throttle, one under the other over ground speed. */
export function currentPowerEfficiency(data: CurrentPowerEfficiency, look: PlotLook): Scene {
  const states = risingStates(data.states)
  if (states.length < 2) {
    return absentPlot(name, title, 'The machine does not move, so there is no curve over speed.', look)
  }
  const xs = groundSpeedsOf(states)
  const top: Mark[] =
    data.topSpeed === null
      ? []
      : [{ mark: 'rule', axis: 'x', value: data.topSpeed, label: '', role: 'accent', dash: [2, 3] }]
  const best = bestOf(states)
  const power = Math.max(...states.map((state) => state.shaftPower))
  return plot({
    name,
    title,
    summary:
      `Up to ${said(power, 'watts', look)} at the motor shafts` +
      (best === null
        ? '.'
        : `; best overall efficiency ${said(best.value, 'fraction', look)} at ${said(best.speed, 'speed', look)}.`),
    ...look,
    sureTo: look.figures,
    x: { label: 'Ground speed', kind: 'speed' },
    panels: [
      {
        y: { label: 'Current', kind: 'amps' },
        marks: [
          ...top,
          seriesCurve(
            0,
            'One motor',
            xs,
            states.map((state) => state.motorAmps),
          ),
          seriesCurve(
            1,
            'Pack',
            xs,
            states.map((state) => state.packAmps),
          ),
        ],
      },
      {
        y: { label: 'Power', kind: 'watts' },
        marks: [
          ...top,
          seriesCurve(
            0,
            'Motor shafts',
            xs,
            states.map((state) => state.shaftPower),
          ),
          seriesCurve(
            1,
            'Pack',
            xs,
            states.map((state) => state.packPower),
          ),
        ],
      },
      {
        y: { label: 'Efficiency', kind: 'fraction', low: 0, high: 1 },
        marks: [
          ...top,
          seriesCurve(
            0,
            'Motor',
            xs,
            states.map((state) => state.motorEfficiency),
          ),
          seriesCurve(
            2,
            'Pack to ground',
            xs,
            states.map((state) => state.overallEfficiency),
          ),
        ],
      },
    ],
    cursor: speedCursor(states),
  })
}
