import type { Machine, TrackPart } from '../machine/parts.ts'
import type { RowSprings } from '../geometry/row-springs.ts'
import { climbRatioOf } from '../track/climb.ts'
import { largestRowForce, setLoad, Sharing } from '../track/sharing.ts'
import { centrifugalTension } from '../track/tension.ts'
import { pressingTension, slackTension } from '../track/tensioner.ts'

/** What one load case asks of the track; NaN where the case does not arise. */
export class TrackLoad {
  /** F_e, N at the drive sprocket per loop, without the service factor. */
  force = NaN
  /** F, N: with the service factor, but in a stop. */
  pull = NaN
  /** v_b, m/s. */
  beltSpeed = NaN
  /** T_s, N, tension of the slack side, and P, N, what of it presses the loop onto its wheels. */
  slack = NaN
  pressing = NaN
  /** F_t, N on the most loaded tooth. */
  toothForce = NaN
  /** N, of the tight side. */
  tension = NaN
  /** How close the worst row is to climbing out; NaN where sharing is not computed or the flank not given. */
  climb = NaN
}

const sharing = new Sharing()

/**
 * Fills what the track bears in one case from its force and belt speed.
 *
 * F = K_A F_e;  T = F + T_s, the slack side's tension as the tensioner leaves it;  F_t from sharing by stiffness where
 * that is known, else by the assumed share.
 *
 * @param load filled
 * @param force F_e, N
 * @param beltSpeed v_b, m/s
 * @param factor K_A; 1 in a stop
 * @param climbs whether the rows are asked how close they are to climbing out
 * *Source:* `docs/model.md` §6.
 */
export function setTrackLoad(
  load: TrackLoad,
  machine: Machine,
  force: number,
  beltSpeed: number,
  factor = machine.service.factor,
  climbs = true,
): void {
  const { track } = machine
  const pull = factor * force
  const centrifugal = centrifugalTension(track, beltSpeed)
  load.force = force
  load.pull = pull
  load.beltSpeed = beltSpeed
  load.slack = slackTension(track.hold, pull, centrifugal)
  load.pressing = pressingTension(track.hold, pull, centrifugal)
  load.tension = pull + load.slack
  load.climb = NaN
  if (track.springs === null) load.toothForce = pull * track.toothShare
  else setShared(load, track, track.springs, climbs ? (track.tooth?.climbSlope ?? null) : null)
}

/** @param slope of the flanks; null where climbing out is not asked for or not known */
function setShared(load: TrackLoad, track: TrackPart, springs: RowSprings, slope: number | null): void {
  const { pull } = load
  if (!(pull > 0)) {
    const nothing = Number.isNaN(pull) ? NaN : 0
    load.toothForce = nothing
    load.climb = slope === null ? NaN : nothing
    return
  }
  setLoad(sharing, springs, pull, load.slack)
  load.toothForce = largestRowForce(sharing) / track.teethAcross
  if (slope === null) return
  load.climb = slope === 0 ? 0 : climbRatioOf(sharing, springs, slope, load.pressing, track.sprocketTeeth)
}

/**
 * Makes a case the same as another, number by number.
 *
 * *Source:* none needed: nothing is worked out.
 */
export function copyTrackLoad(load: TrackLoad, other: TrackLoad): void {
  load.force = other.force
  load.pull = other.pull
  load.beltSpeed = other.beltSpeed
  load.slack = other.slack
  load.pressing = other.pressing
  load.toothForce = other.toothForce
  load.tension = other.tension
  load.climb = other.climb
}
