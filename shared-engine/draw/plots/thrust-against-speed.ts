import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, said, seriesCurve } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import { groundSpeedsOf, risingStates, speedCursor } from './speed-states.ts'
import type { SpeedState } from './speed-states.ts'

interface ThrustAgainstSpeed {
  readonly states: readonly SpeedState[]
  /** Where thrust meets resistance; null where the machine does not get going. */
  readonly top: { readonly groundSpeed: number; readonly thrust: number } | null
  /** The same before the last change, drawn as a ghost; null or absent: none. */
  readonly former?: Pick<ThrustAgainstSpeed, 'states' | 'top'> | null
  /** Ground speed of the rpm that a log shows, m/s; null or absent: none. */
  readonly loggedSpeed?: number | null
}

const name = 'thrust-against-speed'
const title = 'Thrust and resistance over ground speed'

function meeting(top: ThrustAgainstSpeed['top'], look: PlotLook): Mark[] {
  if (top === null) return []
  return [
    {
      mark: 'point',
      x: top.groundSpeed,
      y: top.thrust,
      label: `Top speed ${said(top.groundSpeed, 'speed', look)}`,
      role: 'accent',
      dropped: true,
      limit: 'vehicle.start',
    },
  ]
}

/** Thrust, resistance and top speed as they were: thin, dotted and grey, named once. */
function ghostOf(former: ThrustAgainstSpeed['former'], look: PlotLook): Mark[] {
  const states = risingStates(former?.states ?? [])
  if (former === null || former === undefined || states.length < 2) return []
  const xs = groundSpeedsOf(states)
  const ghost = { mark: 'curve', xs, role: 'quiet', dash: [1.5, 3], width: 1.2 } as const
  const marks: Mark[] = [
    {
      ...ghost,
      label: 'Resistance before',
      ys: states.map((state) => state.resistance),
      unnamed: true,
    },
    { ...ghost, label: 'Thrust before', ys: states.map((state) => state.thrust) },
  ]
  if (former.top === null) return marks
  const { groundSpeed, thrust } = former.top
  const label = `Before ${said(groundSpeed, 'speed', look)}`
  return [...marks, { mark: 'point', x: groundSpeed, y: thrust, label, role: 'quiet', marker: 'ring' }]
}

function loggedRule(speed: number | null | undefined, look: PlotLook): Mark[] {
  if (speed === null || speed === undefined) return []
  const label = `Log: ${said(speed, 'speed', look)}`
  return [{ mark: 'rule', axis: 'x', value: speed, label, role: 'ink', dash: [6, 2, 1, 2] }]
}

function summaryOf(data: ThrustAgainstSpeed, first: SpeedState, look: PlotLook): string {
  const start = `At rest the track pushes ${said(first.thrust, 'force', look)} against ${said(first.resistance, 'force', look)}`
  if (data.top === null) return `${start}; the machine does not get going.`
  const grip =
    first.motorThrust > first.gripThrust
      ? 'grip, not the motor, limits the start'
      : 'the motor limits the start'
  const meet = `thrust meets resistance, ${said(data.top.thrust, 'force', look)}, at ${said(data.top.groundSpeed, 'speed', look)}`
  return `${start}; ${grip}; ${meet}.`
}

/** Thrust at the track against ground speed, with what grip allows, what holds back, and where the two meet. */
export function thrustAgainstSpeed(data: ThrustAgainstSpeed, look: PlotLook): Scene {
  const states = risingStates(data.states)
  const first = states[0]
  if (first === undefined || states.length < 2) {
    return absentPlot(name, title, 'The machine does not move, so there is no curve over speed.', look)
  }
  const xs = groundSpeedsOf(states)
  const held = states.some((state) => state.motorThrust > state.gripThrust)
  const marks: Mark[] = [
    seriesCurve(
      2,
      'Grip',
      xs,
      states.map((state) => state.gripThrust),
    ),
    ...(held
      ? [
          seriesCurve(
            3,
            'Motor alone',
            xs,
            states.map((state) => state.motorThrust),
          ),
        ]
      : []),
    seriesCurve(
      1,
      'Resistance',
      xs,
      states.map((state) => state.resistance),
    ),
    {
      ...seriesCurve(
        0,
        'Thrust',
        xs,
        states.map((state) => state.thrust),
      ),
      width: 2.2,
    },
    ...meeting(data.top, look),
    ...loggedRule(data.loggedSpeed, look),
    ...ghostOf(data.former, look),
  ]
  return plot({
    name,
    title,
    summary: summaryOf(data, first, look),
    ...look,
    sureTo: look.figures,
    x: { label: 'Ground speed', kind: 'speed' },
    panels: [{ y: { label: 'Force at the track', kind: 'force', low: 0 }, marks }],
    cursor: speedCursor(states),
  })
}
