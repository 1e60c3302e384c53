import { burstSpeed } from './tensioner.ts'
import type { TrackPart } from '../machine/parts.ts'

/**
 * Pull of a loop's own mass as it turns.
 *
 * m′ v_b².
 *
 * @returns N
 * *Source:* centrifugal tension of a running belt, any machine-elements text.
 */
export function centrifugalTension(track: TrackPart, beltSpeed: number): number {
  return track.massPerMetre * beltSpeed * beltSpeed
}

/**
 * Belt speed at which the loop's own mass tears it.
 *
 * fixed: √(B/m′);  sprung: √(max(0, B − N_0)/m′).
 *
 * @returns m/s; NaN without a breaking tension
 * *Source:* `docs/model.md` §6.
 */
export function burstSpeedOf(track: TrackPart): number {
  if (track.breakingTension === null) return NaN
  return burstSpeed(track.hold, track.breakingTension, track.massPerMetre)
}
