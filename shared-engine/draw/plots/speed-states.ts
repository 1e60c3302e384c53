import { cursorOver } from './plot-look.ts'
import type { CursorMap } from '../scene.ts'

/** What plots over speed need of each state of the drive, SI (the engine's states have more). */
export interface SpeedState {
  readonly groundSpeed: number
  readonly beltSpeed: number
  /** N at the track: what the motor could push, what the ground passes on, what holds back, what grip allows. */
  readonly motorThrust: number
  readonly thrust: number
  readonly resistance: number
  readonly gripThrust: number
  /** A of one motor, and of the pack with accessories. */
  readonly motorAmps: number
  readonly packAmps: number
  /** W of all motors' shafts, and at the pack's terminals. */
  readonly shaftPower: number
  readonly packPower: number
  readonly motorEfficiency: number | null
  readonly overallEfficiency: number | null
}

/** States whose ground speed rises: the speeds a plot can stand on. */
export function risingStates<S extends SpeedState>(states: readonly S[]): S[] {
  const rising: S[] = []
  let last = -Infinity
  for (const state of states) {
    if (state.groundSpeed <= last) continue
    rising.push(state)
    last = state.groundSpeed
  }
  return rising
}

export function groundSpeedsOf(states: readonly SpeedState[]): number[] {
  return states.map((state) => state.groundSpeed)
}

/** The shared speed cursor of a plot over ground speed. */
export function speedCursor(states: readonly SpeedState[]): CursorMap {
  const speeds = groundSpeedsOf(states)
  return cursorOver('groundSpeed', speeds, speeds)
}
