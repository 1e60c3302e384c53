import type { TrackPart } from '../machine/parts.ts'

/**
 * Drag of all loops and their wheels.
 *
 * D(v_b) = internalDrag + internalDragPerSpeed · v_b.
 *
 * @param beltSpeed v_b, m/s
 * @returns N, all loops together
 * *Source:* `docs/model.md` §5; the builder's own pull test, assumption that it is linear in speed.
 */
export function internalDragAt(track: TrackPart, beltSpeed: number): number {
  return track.internalDrag + track.internalDragPerSpeed * beltSpeed
}
