import type { CaseName, TrackCase } from '../cases/case.ts'
import type { Draft } from './draft.ts'
import { loopForce } from './loads.ts'
import { stopPull } from './stop.ts'

/** The load case that a limit of the track names. */
export function trackCaseOf(name: CaseName): TrackCase {
  switch (name) {
    case 'launch':
    case 'grip':
    case 'top':
    case 'free':
    case 'stop':
    case 'stop-free':
      return name
    default:
      throw new Error(`${name} is no load case of the track`)
  }
}

/** `F_K`: a loop’s pull, with the service factor but in a stop. */
export function loopPull(d: Draft, name: TrackCase): number {
  if (name === 'stop' || name === 'stop-free') {
    const symbol = stopPull(d, name, d.checked.machine.stages.length)
    return d.step('F_K', ['force', 'pull of the sprocket on one loop at the peak'], symbol)
  }
  loopForce(d, name)
  d.entry('K_A', 'service.factor')
  d.assume('The service factor K_A allows for shock.')
  return d.step('F_K', ['force', 'the same with the service factor'], 'K_A * F_e')
}
