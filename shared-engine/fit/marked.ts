import type { InAir } from './in-air.ts'
import type { Prepared } from './prepare.ts'

/** m/s over ground by which a machine whose loops are in the air is surely not standing. [A] */
const driving = 1

/**
 * Stretches that are marked as driven with the loops in the air although the machine moves over ground: more than half of
 * the rows with a speed over ground say so.
 */
export function movingInAir({ tracks }: Pick<Prepared, 'tracks'>): readonly Omit<InAir, 'segment'>[] {
  return tracks
    .filter(({ offGround, ground }) => {
      const known = ground.filter((value) => !Number.isNaN(value))
      const moving = known.filter((value) => Math.abs(value) > driving)
      return offGround && moving.length > known.length / 2
    })
    .map(({ seconds }) => ({ from: seconds[0] ?? 0, to: seconds.at(-1) ?? 0 }))
}
