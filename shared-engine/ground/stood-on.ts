import type { Machine } from '../machine/parts.ts'

/**
 * What footings were worked out for. Ground, vehicle and number of tracks alone decide them, and most candidates of a search
 * share these: by their identity, since a part is never changed once made.
 */
export class StoodOn {
  #ground: Machine['ground'] | null = null
  #vehicle: Machine['vehicle'] | null = null
  #tracks = NaN

  /** Whether a machine stands on something else than the one before; it is the one before from then on. */
  isNew({ ground, vehicle, track }: Machine): boolean {
    if (this.#ground === ground && this.#vehicle === vehicle && this.#tracks === track.count) return false
    this.#ground = ground
    this.#vehicle = vehicle
    this.#tracks = track.count
    return true
  }
}
