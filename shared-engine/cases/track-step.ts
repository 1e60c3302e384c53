import type { Machine } from '../build/machine-parts.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import { internalDragAt } from '../track/drag.ts'
import type { Evaluation } from './evaluation.ts'
import { setTrackLoads, type TrackLoad } from './track-loads.ts'

/**
 * Loads of the track in every case, and the worst of them.
 *
 * launch: M T G/(r count);  grip: the smaller of that and (F_max + D(0))/count;  top: (F + D)/count;  free: D/count at the
 * worst-case free motor speed.
 *
 * *Source:* engine contract §6.
 */
export function setTrack(e: Evaluation, machine: Machine): void {
  const { track, service } = machine
  const [launch, grip, top, free] = e.trackLoads
  if (!launch || !grip || !top || !free) throw new Error('an evaluation holds four track cases')
  setCase(launch, e.launchSprocketTorque / (track.radius * track.count), 0)
  setCase(grip, Math.min(launch.force, (e.footing.gripThrust + internalDragAt(track, 0)) / track.count), 0)
  setCase(top, (e.top.thrust + internalDragAt(track, e.top.beltSpeed)) / track.count, e.top.beltSpeed)
  const freeBelt = e.worstFreeSpeed / e.line.motorPerBelt
  setCase(free, internalDragAt(track, freeBelt) / track.count, freeBelt)
  setTrackLoads(e.trackLoads, machine)
  const pull = service.factor * launch.force
  e.toothShare = pull > 0 ? (launch.toothForce * track.teethAcross) / pull : NaN
  e.toothForce = 0
  e.loopTension = 0
  for (const load of e.trackLoads) {
    if (load.toothForce > e.toothForce) e.toothForce = load.toothForce
    if (load.tension > e.loopTension) e.loopTension = load.tension
  }
  setStresses(e, machine)
}

function setCase(load: TrackLoad, force: number, beltSpeed: number): void {
  load.force = force
  load.beltSpeed = beltSpeed
}

function setStresses(e: Evaluation, machine: Machine): void {
  const tooth = machine.track.tooth
  e.toothShear = tooth === null ? NaN : toothShear(tooth, e.toothForce)
  e.toothBending = tooth === null ? NaN : toothBending(tooth, e.toothForce)
  e.toothBearing = tooth === null ? NaN : toothBearing(tooth, e.toothForce)
}
