import type { Machine } from '../machine/parts.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import { internalDragAt } from '../track/drag.ts'
import { apart, caseNumber, trackCases, type TrackCase } from './case.ts'
import type { Evaluation } from './evaluation.ts'
import { setTrackLoad, type TrackLoad } from './track-loads.ts'

/**
 * Loads of the track in every case, and the worst of them.
 *
 * launch: M T G/(r count);  grip: the smaller of that and (F_max + D(0))/count;  top: (F + D)/count;  free: D/count at the
 * worst-case free motor speed.
 *
 * *Source:* `docs/model.md` §6.
 */
export function setTrack(e: Evaluation, machine: Machine): void {
  const { track, service } = machine
  const { launchLoad: launch, gripLoad: grip, topLoad: top, freeLoad: free } = e
  const jam = e.launchSprocketTorque / (track.radius * track.count)
  const held = (e.footing.gripThrust + internalDragAt(track, 0)) / track.count
  const topBelt = e.top.beltSpeed
  const freeBelt = e.worstFreeSpeed / e.line.motorPerBelt
  setTrackLoad(launch, machine, jam, 0)
  setTrackLoad(grip, machine, Math.min(jam, held), 0)
  setTrackLoad(top, machine, (e.top.thrust + internalDragAt(track, topBelt)) / track.count, topBelt)
  setTrackLoad(free, machine, internalDragAt(track, freeBelt) / track.count, freeBelt)
  const pull = service.factor * launch.force
  e.toothShare = pull > 0 ? (launch.toothForce * track.teethAcross) / pull : NaN
  setWorst(e)
  setStresses(e, machine)
}

/** Worst of the cases; of equal ones the first in the order of `trackCases`. */
function setWorst(e: Evaluation): void {
  e.toothForce = 0
  e.loopTension = 0
  e.toothClimb = NaN
  e.worstToothCase = e.worstTensionCase = e.worstClimbCase = caseNumber.launch
  for (let number = 0; number < e.trackLoads.length; number += 1) {
    const load = e.trackLoads[number]
    if (load !== undefined) worsen(e, load, number)
  }
}

function worsen(e: Evaluation, load: TrackLoad, reached: number): void {
  if (load.toothForce > e.toothForce * apart) {
    e.toothForce = load.toothForce
    e.worstToothCase = reached
  }
  if (load.tension > e.loopTension * apart) {
    e.loopTension = load.tension
    e.worstTensionCase = reached
  }
  if (load.climb > e.toothClimb * apart || (Number.isNaN(e.toothClimb) && !Number.isNaN(load.climb))) {
    e.toothClimb = load.climb
    e.worstClimbCase = reached
  }
}

/** The case in which a quantity of the track is largest; the first of equal ones. */
export function worstTrackCase(e: Evaluation, quantity: (load: TrackLoad) => number): TrackCase {
  let worst: TrackCase = 'launch'
  let most = -Infinity
  for (const [index, name] of trackCases.entries()) {
    const load = e.trackLoads[index]
    if (load === undefined || !(quantity(load) > most)) continue
    most = quantity(load)
    worst = name
  }
  return worst
}

function setStresses(e: Evaluation, machine: Machine): void {
  const tooth = machine.track.tooth
  e.toothShear = tooth === null ? NaN : toothShear(tooth, e.toothForce)
  e.toothBending = tooth === null ? NaN : toothBending(tooth, e.toothForce)
  e.toothBearing = tooth === null ? NaN : toothBearing(tooth, e.toothForce)
}
