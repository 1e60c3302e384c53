import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { RunProgress } from '../vehicle/run-piece.ts'
import { continueRun, startRun } from '../vehicle/run.ts'

const progress = new RunProgress()

/** Share of the top speed past which a run is all approach: it takes for ever to reach all of it. */
const reachable = 0.98

/**
 * Seconds from rest to a ground speed at full throttle.
 *
 * t = ∫ m_e/(F(v) − R(v)) dv from 0 to v.
 *
 * @param speed v, m/s, > 0
 * @returns s; NaN without an equilibrium, or above 98 % of the top speed
 * *Source:* Newton's second law; `docs/model.md` §5. Pieces shrink towards the top speed, where the integrand has its
 * pole, so that eight nodes each are enough (checked against an adaptive rule in the tests).
 * @example secondsToSpeed(checked.evaluation, checked.machine, 1000) // NaN
 */
export function secondsToSpeed(e: Evaluation, machine: Machine, speed: number): number {
  const top = e.top.groundSpeed
  if (!e.top.exists || !(speed <= reachable * top)) return NaN
  startRun(progress, machine, e)
  while (progress.speed < speed) {
    continueRun(progress, machine, e, Math.min(speed, progress.speed + 0.5 * (top - progress.speed)))
  }
  return progress.seconds
}
