import type { Evaluation } from '../cases/evaluation.ts'
import type { TrackLoad } from '../cases/track-loads.ts'
import type { Machine, TrackPart } from '../machine/parts.ts'
import { apart, caseNumber } from '../cases/case.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import { centrifugalTension } from '../track/tension.ts'
import { liftOffSpeed, standOff } from '../track/tensioner.ts'
import { allMeasured, limitsOfPart } from './part.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import { freeLoops, lastingLoads, onceLoads, runningLoops } from './track-facts.ts'

const facts = { ...onceLoads, ...runningLoops, ...lastingLoads, ...freeLoops } as const

export type TrackLimitId = keyof typeof facts

/** Limits of the loop and its teeth in ordinary use and running free, in the ledger’s order. */
export const trackLimits = limitsOfPart('track', facts)

const {
  'track.tooth-shear': shear,
  'track.tooth-bending': bending,
  'track.tooth-bearing': bearing,
  'track.tooth-climb': climb,
  'track.tension': tension,
  'track.lift-off': liftOff,
  'track.mesh': mesh,
  'track.tooth-shear-lasts': shearLasts,
  'track.tooth-bending-lasts': bendingLasts,
  'track.tooth-bearing-lasts': bearingLasts,
  'track.tension-lasts': tensionLasts,
  'track.burst-speed': burstSpeed,
  'track.lift-off-free': liftOffFree,
  'track.mesh-free': meshFree,
  'track.climb-free': climbFree,
  ...unmeasured
} = trackLimits
allMeasured(unmeasured)

/** Adds those that the machine has. *Source:* `docs/model.md` §8, rows of the same ids. */
export function measureTrack(ledger: Ledger, e: Evaluation, machine: Machine): void {
  measureOnce(ledger, e, machine)
  measureLasting(ledger, e, machine)
  measureRunning(ledger, e, machine)
}

/** The worse of two cases; the first of equal ones, and where the second does not arise. */
function worseTooth(one: TrackLoad, other: TrackLoad): TrackLoad {
  return other.toothForce > one.toothForce * apart ? other : one
}

function worseTension(one: TrackLoad, other: TrackLoad): TrackLoad {
  return other.tension > one.tension * apart ? other : one
}

function worseClimb(one: TrackLoad, other: TrackLoad): TrackLoad {
  return other.climb > one.climb * apart ? other : one
}

function caseOf(e: Evaluation, load: TrackLoad): number {
  if (load === e.launchLoad) return caseNumber.launch
  return load === e.gripLoad ? caseNumber.grip : caseNumber.top
}

function measureOnce(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { tooth, breakingTension } = machine.track
  const { launchLoad, gripLoad, topLoad } = e
  if (tooth !== null) {
    const worst = worseTooth(worseTooth(launchLoad, gripLoad), topLoad)
    const force = worst.toothForce
    const reached = caseOf(e, worst)
    addMaximum(ledger, shear, toothShear(tooth, force), tooth.allowedShear, reached)
    addMaximum(ledger, bending, toothBending(tooth, force), tooth.allowedTensile, reached)
    addMaximum(ledger, bearing, toothBearing(tooth, force), tooth.allowedBearing, reached)
  }
  const climbing = worseClimb(worseClimb(launchLoad, gripLoad), topLoad)
  if (!Number.isNaN(climbing.climb)) addMaximum(ledger, climb, climbing.climb, 1, caseOf(e, climbing))
  if (breakingTension === null) return
  const pulled = worseTension(worseTension(launchLoad, gripLoad), topLoad)
  addMaximum(ledger, tension, pulled.tension, breakingTension, caseOf(e, pulled))
}

function measureLasting(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { tooth, workingTension } = machine.track
  const { gripLoad, topLoad } = e
  if (tooth !== null) {
    const worst = worseTooth(gripLoad, topLoad)
    const force = worst.toothForce
    const reached = caseOf(e, worst)
    const { workShear, workTensile, workBearing } = tooth
    if (workShear !== null) addMaximum(ledger, shearLasts, toothShear(tooth, force), workShear, reached)
    if (workTensile !== null)
      addMaximum(ledger, bendingLasts, toothBending(tooth, force), workTensile, reached)
    if (workBearing !== null)
      addMaximum(ledger, bearingLasts, toothBearing(tooth, force), workBearing, reached)
  }
  if (workingTension === null) return
  const pulled = worseTension(gripLoad, topLoad)
  addMaximum(ledger, tensionLasts, pulled.tension, workingTension, caseOf(e, pulled))
}

/** What a turning loop does: it leaves its wheels and stands off them. */
function measureRunning(ledger: Ledger, e: Evaluation, machine: Machine): void {
  const { track } = machine
  if (e.mishaps) measureTorn(ledger, e, track)
  if (track.hold.tensioner === 'sprung' || !track.pretensionGiven) return
  const { topLoad } = e
  const { massPerMetre, hold } = track
  if (e.top.exists) {
    const allowed = liftOffSpeed(hold, topLoad.pull, massPerMetre)
    addMaximum(ledger, liftOff, topLoad.beltSpeed, allowed, caseNumber.top)
  }
  if (e.mishaps) addMaximum(ledger, liftOffFree, e.freeLoad.beltSpeed, e.liftOffSpeed, caseNumber.free)
  if (track.tooth === null || track.loopStiffness === null) return
  const half = track.tooth.height / 2
  if (e.top.exists) {
    const pull = centrifugalTension(track, topLoad.beltSpeed)
    const off = standOff(hold.pretension, pull, track.length, track.loopStiffness)
    addMaximum(ledger, mesh, off, half, caseNumber.top)
  }
  if (e.mishaps) addMaximum(ledger, meshFree, e.loopGrowthFree, half, caseNumber.free)
}

/** Running free it climbs and tears. */
function measureTorn(ledger: Ledger, { freeLoad, burstSpeed: torn }: Evaluation, track: TrackPart): void {
  const { beltSpeed, climb } = freeLoad
  if (!Number.isNaN(climb)) addMaximum(ledger, climbFree, climb, 1, caseNumber.free)
  if (track.breakingTension !== null) addMaximum(ledger, burstSpeed, beltSpeed, torn, caseNumber.free)
}
