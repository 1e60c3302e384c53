import type { Machine } from '../machine/parts.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import { internalDragAt } from '../track/drag.ts'
import { centrifugalTension } from '../track/tension.ts'
import { liftOffSpeed, standOff } from '../track/tensioner.ts'
import { apart, caseNumber, trackCases, type TrackCase } from './case.ts'
import type { Evaluation } from './evaluation.ts'
import { setJamMasses, setStopPulls } from './jam.ts'
import { copyTrackLoad, setTrackLoad, type TrackLoad } from './track-loads.ts'
import { setGripPulls, setLaunchPulls } from './train-pulls.ts'

/**
 * What goes through the train and what the track bears in every case, and the worst of it.
 *
 * launch: min(P_m, L_j), P_m = M T G/(r n);  grip: the smaller of that and (F_max + D(0))/n;  top: (F + D)/n;  free: D/n
 * at the worst-case free motor speed;  stop: F of the stop.
 *
 * *Source:* `docs/model.md` §6.
 */
export function setTrack(e: Evaluation, machine: Machine): void {
  const { track, service, motor, train, stages } = machine
  const { launchLoad: launch, topLoad: top, freeLoad: free, pulls } = e
  const last = stages.length
  e.motorPull = (motor.count * e.launchTorque * train.ratio) / (track.radius * track.count)
  const held = (e.mostGrip + internalDragAt(track, 0)) / track.count
  setLaunchPulls(pulls.launch, machine, e.motorPull)
  setGripPulls(pulls.grip, pulls.launch, machine, held)
  setUncappedPulls(e, machine, held)
  const topBelt = e.top.beltSpeed
  const freeBelt = e.worstFreeSpeed / e.line.motorPerBelt
  setTrackLoad(launch, machine, pulls.launch[last] ?? NaN, 0)
  // where the ground lets the whole jam through, both are the same
  if (pulls.grip[last] === pulls.launch[last]) copyTrackLoad(e.gripLoad, launch)
  else setTrackLoad(e.gripLoad, machine, pulls.grip[last] ?? NaN, 0)
  setTrackLoad(top, machine, (e.top.thrust + internalDragAt(track, topBelt)) / track.count, topBelt)
  setTrackLoad(free, machine, internalDragAt(track, freeBelt) / track.count, freeBelt)
  const pull = service.factor * launch.force
  e.launchSprocketTorque = (pulls.launch[last] ?? NaN) * track.radius * track.count
  e.toothShare = pull > 0 ? (launch.toothForce * track.teethAcross) / pull : NaN
  setFreeLoop(e, machine)
  setWorst(e)
  setStresses(e, machine)
}

/** Where a fixed loop leaves its wheels and how far it stands off, running free; NaN where its tension is not known. */
function setFreeLoop(e: Evaluation, machine: Machine): void {
  const { track } = machine
  const { hold, loopStiffness } = track
  const held = hold.tensioner === 'fixed' && track.pretensionGiven
  e.liftOffSpeed = held ? liftOffSpeed(hold, 0, track.massPerMetre) : NaN
  const pull = centrifugalTension(track, e.freeLoad.beltSpeed)
  e.loopGrowthFree =
    held && loopStiffness !== null ? standOff(hold.pretension, pull, track.length, loopStiffness) : NaN
}

/** As in `grip` with every limiter held: what would slip it. */
function setUncappedPulls(e: Evaluation, machine: Machine, held: number): void {
  const { gripUncapped, grip } = e.pulls
  const { stages } = machine
  let slips = false
  for (let at = 0; at < stages.length; at += 1) slips ||= stages[at]?.slipTorque !== null
  for (let at = 0; at <= stages.length; at += 1) gripUncapped[at] = slips ? e.motorPull : (grip[at] ?? NaN)
  if (slips) setGripPulls(gripUncapped, gripUncapped, machine, held)
}

/**
 * Loads of the track while it is held, at top speed and running free.
 *
 * No stop is judged where the evaluation leaves mishaps out.
 *
 * *Source:* `docs/model.md` §6, stop; at the peak the belt stands; whether its rows climb out is not asked.
 */
export function setJam(e: Evaluation, machine: Machine): void {
  const { pulls, jam, motorPull } = e
  const last = machine.stages.length
  jam.isJudged = false
  if (!e.mishaps) return
  setJamMasses(jam, machine)
  setStopPulls(pulls.stop, jam, machine, motorPull, e.top.beltSpeed)
  setStopPulls(pulls.stopFree, jam, machine, motorPull, e.freeLoad.beltSpeed)
  setTrackLoad(e.stopLoad, machine, pulls.stop[last] ?? NaN, 0, 1, false)
  setTrackLoad(e.stopFreeLoad, machine, pulls.stopFree[last] ?? NaN, 0, 1, false)
}

/** Worst of launch, grip, top and free; of equal ones the first. */
function setWorst(e: Evaluation): void {
  e.toothForce = 0
  e.loopTension = 0
  e.worstToothCase = caseNumber.launch
  for (let number = 0; number <= caseNumber.free; number += 1) {
    const load = e.trackLoads[number]
    if (load !== undefined) worsen(e, load, number)
  }
}

function worsen(e: Evaluation, load: TrackLoad, reached: number): void {
  if (load.toothForce > e.toothForce * apart) {
    e.toothForce = load.toothForce
    e.worstToothCase = reached
  }
  if (load.tension > e.loopTension * apart) e.loopTension = load.tension
}

/** The case in which a quantity of the track is largest; the first of equal ones. */
export function worstTrackCase(
  e: Evaluation,
  quantity: (load: TrackLoad) => number,
  among: readonly TrackCase[] = trackCases.slice(0, 4),
): TrackCase {
  let worst: TrackCase = among[0] ?? 'launch'
  let most = -Infinity
  for (const name of among) {
    const load = e.trackLoads[trackCases.indexOf(name)]
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
