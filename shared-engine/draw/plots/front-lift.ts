import type { LiftCurve } from '../../explain/lift-curve.ts'
import type { LimitId } from '../../limits/id.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot, type PanelDescription } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { sameCursor } from '../readout.ts'
import { absentPlot, said, seriesCurve, type PlotLook } from './plot-look.ts'

const name = 'front-lift'
const title = 'What lifts the front, over throttle'

/** Throttle at which a curve first reaches a bound; null where it never does. */
function firstAt(throttle: readonly number[], values: readonly (number | null)[], bound: number | null) {
  if (bound === null) return null
  const at = values.findIndex((value) => value !== null && value >= bound)
  return at < 0 ? null : (throttle[at] ?? null)
}

/** Thrust from rest against what lifts the front, and the moment of the spin-up against that of the weight. */
export function frontLift(curve: LiftCurve | null, look: PlotLook): Scene {
  if (curve === null)
    return absentPlot(name, title, 'Height and lead of the centre of mass would bring it.', look)
  const { throttle, thrust, liftThrust, spinUp, heldDown } = curve
  const lifts = firstAt(throttle, thrust, liftThrust)
  const turns = firstAt(throttle, spinUp, heldDown)
  const spins = spinUp.some((moment) => moment !== null)
  const first = `${lifts === null ? 'No throttle lifts the front by thrust alone.' : `The front comes up from about ${said(lifts, 'fraction', look)} throttle on.`}`
  const second = !spins
    ? ' The track grips: its loops do not spin up.'
    : turns === null
      ? ' The loops’ own reaction while they spin up does not lift it either.'
      : ` While the loops spin up, their reaction lifts it from about ${said(turns, 'fraction', look)} on.`
  const bound = (value: number | null, label: string, limit: LimitId): Mark[] =>
    value === null ? [] : [{ mark: 'rule', axis: 'y', value, label, role: 'over', beyond: 'above', limit }]
  const panels: PanelDescription[] = [
    {
      y: { label: 'Thrust from rest', kind: 'force' },
      marks: [
        ...bound(liftThrust, `Lifts the front ${said(liftThrust, 'force', look)}`, 'vehicle.front-lift'),
        { ...seriesCurve(0, 'Thrust', throttle, thrust), marker: undefined },
      ],
    },
  ]
  if (spins)
    panels.push({
      y: { label: 'Nose-up moment', kind: 'torque' },
      marks: [
        ...bound(heldDown, `Weight ${said(heldDown, 'torque', look)}`, 'vehicle.front-lift'),
        { ...seriesCurve(1, 'While the loops spin up', throttle, spinUp), marker: undefined },
      ],
    })
  return plot({
    name,
    title,
    summary: first + second,
    ...look,
    sureTo: look.figures,
    x: { label: 'Throttle', kind: 'fraction' },
    panels,
    cursor: sameCursor('throttle', 0, 1),
  })
}
