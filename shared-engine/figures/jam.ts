import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { jamBreakForce, jamBreakSpeed, limiterThatHolds } from '../cases/jam-break.ts'
import { figureRows } from './figure.ts'

/** A loop that is held at once. */
export class JamFigures {
  jamStiffnessNPerM = NaN
  jamMassKg = NaN
  jamForceN = NaN
  jamFreeForceN = NaN
  jamBreakForceN = NaN
  jamBreakBeltSpeedMps = NaN
  limiterHoldsNm = NaN
}

/** Fills them from an evaluation, each in the unit that its name ends with; NaN where no stop is judged. */
export function setJamFigures(values: JamFigures, e: Evaluation, machine: Machine): void {
  const { isJudged, mass } = e.jam
  const breaks = jamBreakForce(e, machine)
  const speed = jamBreakSpeed(e, machine, breaks)
  values.jamStiffnessNPerM = isJudged ? (machine.track.stopSpring?.stiffness ?? NaN) : NaN
  values.jamMassKg = isJudged ? mass : NaN
  values.jamForceN = e.stopLoad.pull
  values.jamFreeForceN = e.stopFreeLoad.pull
  values.jamBreakForceN = breaks
  values.jamBreakBeltSpeedMps = speed === Infinity ? NaN : speed
  values.limiterHoldsNm = isJudged ? limiterThatHolds(e, machine, breaks) : NaN
}

const rows = {
  jamStiffnessNPerM: ['Stiffness of the held loop', 'stiffness'],
  jamMassKg: ['What turns, at one loop', 'mass'],
  jamForceN: ['Loop pull, held at top speed', 'force'],
  jamFreeForceN: ['Loop pull, held while free', 'force'],
  jamBreakForceN: ['Loop pull that breaks it', 'force'],
  jamBreakBeltSpeedMps: ['Belt speed whose jam breaks it', 'speed'],
  limiterHoldsNm: ['Limiter at the sprocket that holds', 'torque'],
} as const

export const jamFigures = figureRows(new JamFigures(), setJamFigures, rows, true)
