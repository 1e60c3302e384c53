import type { Machine } from '../machine/parts.ts'
import { secondsPerMinute } from '../units/factors.ts'

/**
 * Ground speed of a logged motor rpm.
 *
 * v = rpm/60 · a/G · (1 − i).
 *
 * @param rpm mechanical, of the motor
 * @param slip i, 0 to 1
 * @returns m/s
 * *Source:* teeth × pitch × turns; `docs/model.md` §5. Tread and lugs play no part on the straight run.
 * @example rpmOfGroundSpeed(machine, groundSpeedOfRpm(machine, 6000, 0.1), 0.1) // 6000
 */
export function groundSpeedOfRpm(machine: Machine, rpm: number, slip: number): number {
  return (rpm / secondsPerMinute) * (machine.track.advance / machine.train.ratio) * (1 - slip)
}

/** Motor rpm of a ground speed: the inverse of {@link groundSpeedOfRpm}. */
export function rpmOfGroundSpeed(machine: Machine, speed: number, slip: number): number {
  return (speed * secondsPerMinute * machine.train.ratio) / (machine.track.advance * (1 - slip))
}

/**
 * Overall ratio that gives a ground speed at an rpm.
 *
 * G = rpm/60 · a (1 − i)/v.
 *
 * @returns motor turns per sprocket turn
 * *Source:* {@link groundSpeedOfRpm}, solved for G.
 */
export function ratioForSpeedAtRpm(machine: Machine, speed: number, rpm: number, slip: number): number {
  return ((rpm / secondsPerMinute) * machine.track.advance * (1 - slip)) / speed
}
