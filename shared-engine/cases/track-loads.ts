import type { Machine } from '../build/machine-parts.ts'
import { climbRatioOf, climbSlopeOf } from '../track/climb.ts'
import { largestRowForce, setLoad, setSharing, Sharing } from '../track/sharing.ts'
import { assumedRowShare } from '../track/teeth.ts'
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
 * Fills what the track bears in each case from its force and belt speed.
 *
 * N = K_A F_e + N_0 + m′ v_b²;  F_t from sharing by stiffness where that is known, else by the assumed share.
 *
 * @param loads with `force` and `beltSpeed` set
 * *Source:* engine contract §6.
 */
export function setTrackLoads(loads: readonly TrackLoad[], machine: Machine): void {
  setSharing(sharing, machine.track)
  for (const load of loads) setTrackLoad(load, machine)
}

function setTrackLoad(load: TrackLoad, machine: Machine): void {
  const { track, service } = machine
  const pull = service.factor * load.force
  const slackTension = track.pretension + centrifugalTension(track, load.beltSpeed)
  load.tension = pull + slackTension
  if (!sharing.known) {
    load.toothForce = (pull * assumedRowShare(track.share, track.engagedTeeth)) / track.teethAcross
    load.climb = NaN
    return
  }
  const flank = track.tooth?.flank ?? null
  if (!(pull > 0)) {
    load.toothForce = Number.isNaN(pull) ? NaN : 0
    load.climb = flank === null || Number.isNaN(pull) ? NaN : 0
    return
  }
  setLoad(sharing, track.engagedTeeth, pull, slackTension)
  load.toothForce = largestRowForce(sharing) / track.teethAcross
  load.climb = flank === null ? NaN : climbOf(machine)
}

function climbOf(machine: Machine): number {
  const { tooth, pretension, sprocketTeeth } = machine.track
  const slope = tooth === null ? 0 : climbSlopeOf(tooth)
  return slope === 0 ? 0 : climbRatioOf(sharing, slope, pretension, sprocketTeeth)
}
