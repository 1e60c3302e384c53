import type { Machine } from '../machine/parts.ts'
import { setTopState } from './equilibrium.ts'
import { Motion, setRunning } from './motion.ts'
import { TopState } from './top-state.ts'

/** A machine at one throttle, ready to be asked at any speed: what every curve starts from. */
export interface CurveSetting extends Motion {
  readonly machine: Machine
  readonly top: TopState
}

/**
 * Prepares a machine's curves in the running state.
 *
 * @param throttle duty, 0 to 1; the driver's cap where left out
 * *Source:* `docs/model.md` §§2 to 5.
 */
export function curveSettingOf(machine: Machine, throttle?: number): CurveSetting {
  const motion = new Motion()
  const top = new TopState()
  setRunning(motion, machine, throttle)
  setTopState(top, machine, motion)
  return { ...motion, machine, top }
}
