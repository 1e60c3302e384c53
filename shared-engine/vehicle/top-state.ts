import { clearState, StateAtSpeed } from './state-at-speed.ts'

/** The machine at the ground speed where thrust equals resistance: every number NaN where there is none. */
export class TopState extends StateAtSpeed {
  /** Whether thrust at rest is more than what holds it back. */
  exists = false
  /** Whether grip, not the motor, sets the speed (`coefficient` ground alone). */
  spinning = false
}

/** Clears a state for a machine that does not get going. */
export function clearTopState(top: TopState): void {
  top.exists = false
  top.spinning = false
  clearState(top)
}
