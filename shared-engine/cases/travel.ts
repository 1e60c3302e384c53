import type { Machine } from '../machine/parts.ts'
import { setCruise } from '../vehicle/cruise.ts'
import { setRun } from '../vehicle/run.ts'
import type { Evaluation } from './evaluation.ts'

/**
 * Fills the run to top speed, and half of it on the level: integrals that no limit reads, so they are worked out when they
 * are first asked for.
 *
 * *Source:* `docs/model.md` §§5 and 7.
 */
export function setTravel(e: Evaluation, machine: Machine): void {
  if (e.travelled) return
  setRun(e.run, machine, e, e.top)
  setCruise(e.cruise, machine, e, 0.5 * e.top.groundSpeed)
  e.travelled = true
}
