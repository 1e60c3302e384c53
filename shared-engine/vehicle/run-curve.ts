import type { Machine } from '../machine/parts.ts'
import { curveSettingOf } from './curve-setting.ts'
import { RunProgress } from './run-piece.ts'
import { continueRun, startRun } from './run.ts'

/** Speed and distance over time from rest, at full throttle and constant charge. */
export interface RunCurve {
  readonly seconds: readonly number[]
  /** m/s. */
  readonly speed: readonly number[]
  /** m. */
  readonly distance: readonly number[]
}

/** Part of the top speed that the curve ends at: the rest takes for ever. */
export const runEnd = 0.98

/**
 * The run from rest to 98 % of the top speed.
 *
 * @param count points, at least 2, even in speed
 * @returns null where the machine does not get going
 * *Source:* `docs/model.md` §5; the same pieces as the figures of §12.
 */
export function runFromRest(machine: Machine, count = 121): RunCurve | null {
  const setting = curveSettingOf(machine)
  if (!setting.top.exists) return null
  const progress = new RunProgress()
  startRun(progress, machine, setting)
  const seconds = [0]
  const speed = [0]
  const distance = [0]
  const end = runEnd * setting.top.groundSpeed
  for (let index = 1; index < count; index += 1) {
    const to = (end * index) / (count - 1)
    continueRun(progress, machine, setting, to)
    seconds.push(progress.seconds)
    speed.push(to)
    distance.push(progress.metres)
  }
  return { seconds, speed, distance }
}
