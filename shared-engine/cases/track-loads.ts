import type { Machine, TrackPart } from '../machine/parts.ts'
import type { RowSprings } from '../geometry/row-springs.ts'
import { climbRatioOf } from '../track/climb.ts'
import { largestRowForce, setLoad, Sharing } from '../track/sharing.ts'
import { centrifugalTension } from '../track/tension.ts'

/** What one load case asks of the track; NaN where the case does not arise. */
export class TrackLoad {
  /** F_e, N at the drive sprocket per loop, without the service factor. */
  force = NaN
  /** v_b, m/s. */
  beltSpeed = NaN
  /** F_t, N on the most loaded tooth, service factor included. */
  toothForce = NaN
  /** N, loop tension with pretension and centrifugal pull. */
  tension = NaN
  /** How close the worst row is to climbing out; NaN where sharing is not computed or the flank not given. */
  climb = NaN
}

const sharing = new Sharing()

/**
 * Fills what the track bears in one case from its force and belt speed.
 *
 * N = K_A F_e + N_0 + m′ v_b²;  F_t from sharing by stiffness where that is known, else by the assumed share.
 *
 * @param load filled
 * @param force F_e, N
 * @param beltSpeed v_b, m/s
 * *Source:* `docs/model.md` §6.
 */
export function setTrackLoad(load: TrackLoad, machine: Machine, force: number, beltSpeed: number): void {
  const { track, service } = machine
  const pull = service.factor * force
  const slackTension = track.pretension + centrifugalTension(track, beltSpeed)
  load.force = force
  load.beltSpeed = beltSpeed
  load.tension = pull + slackTension
  load.climb = NaN
  if (track.springs === null) load.toothForce = pull * track.toothShare
  else setShared(load, track, track.springs, pull, slackTension)
}

function setShared(
  load: TrackLoad,
  track: TrackPart,
  springs: RowSprings,
  pull: number,
  slackTension: number,
): void {
  const slope = track.tooth?.climbSlope ?? null
  if (!(pull > 0)) {
    const nothing = Number.isNaN(pull) ? NaN : 0
    load.toothForce = nothing
    load.climb = slope === null ? NaN : nothing
    return
  }
  setLoad(sharing, springs, track.engagedTeeth, pull, slackTension)
  load.toothForce = largestRowForce(sharing) / track.teethAcross
  if (slope === null) return
  load.climb = slope === 0 ? 0 : climbRatioOf(sharing, springs, slope, track.pretension, track.sprocketTeeth)
}
