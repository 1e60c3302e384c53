import type { Machine, ToothPart } from '../machine/parts.ts'
import { bracketedRoot } from '../numeric/root.ts'
import { heldEnergy, stopEnergy } from '../track/stop.ts'
import { toothBearing, toothBending, toothShear } from '../track/teeth.ts'
import type { Evaluation } from './evaluation.ts'
import { setTrackLoad, TrackLoad } from './track-loads.ts'
import { slipPullOf } from './train-pulls.ts'

/** Force that a tooth bears once, N: the least of its stresses. */
function toothStrength(tooth: ToothPart): number {
  return Math.min(
    tooth.allowedShear / toothShear(tooth, 1),
    tooth.allowedTensile / toothBending(tooth, 1),
    tooth.allowedBearing / toothBearing(tooth, 1),
  )
}

const load = new TrackLoad()

/** Pull of a held loop at which its most loaded tooth breaks, N. */
export function toothBreak(machine: Machine, tooth: ToothPart): number {
  const { track } = machine
  const one = toothStrength(tooth) * track.teethAcross
  const excess = (pull: number) => {
    setTrackLoad(load, machine, pull, 0, 1, false)
    return load.toothForce * track.teethAcross - one
  }
  // one row carries at most all of the pull, and the most loaded one at least its even share
  const most = one * track.engagedTeeth
  return track.engagedTeeth === 1 || excess(most) <= 0 ? most : (bracketedRoot(excess, one, most) ?? NaN)
}

/**
 * Pull of a held loop at which the loop breaks, N.
 *
 * fixed: B where λB ≥ N_0, else (B − N_0)/(1 − λ);  sprung: B − N_0.
 *
 * *Source:* the tight side's tension F + T_s, solved for F.
 */
function loopBreak({ track }: Machine, breaking: number): number {
  const { tensioner, tightShare, pretension } = track.hold
  if (tensioner === 'sprung') return breaking - pretension
  return tightShare * breaking >= pretension ? breaking : (breaking - pretension) / (1 - tightShare)
}

/**
 * F_b: pull of a held loop at which the first of its teeth or itself breaks.
 *
 * @returns N, at least 0; NaN where no stop is judged
 * *Source:* `docs/model.md` §6.
 */
export function jamBreakForce(e: Evaluation, machine: Machine): number {
  const { tooth, breakingTension } = machine.track
  if (!e.jam.isJudged || tooth === null) return NaN
  const teeth = toothBreak(machine, tooth)
  const loop = breakingTension === null ? Infinity : loopBreak(machine, breakingTension)
  return Math.max(0, Math.min(teeth, loop))
}

/**
 * v_b: belt speed above which a jam breaks teeth or loop.
 *
 * The greatest of 0 and, for the motor (P_m, μ) and each limiter (L_j, m_b) with F_b > L and w(F_b, L) ≥ p(min(L, P_m)),
 * √[(w − p)/m].
 *
 * @param breaks F_b, N
 * @returns m/s; Infinity where no speed does
 * *Source:* `docs/model.md` §6.
 */
export function jamBreakSpeed(e: Evaluation, machine: Machine, breaks: number): number {
  const { jam, motorPull } = e
  if (!jam.isJudged) return NaN
  let speed = speedFor(e, machine, breaks, motorPull, jam.mass)
  let ratio = 1
  const { stages } = machine
  for (let at = 0; at < stages.length; at += 1) {
    const stage = stages[at]
    if (stage === undefined) break
    ratio *= stage.ratio
    if (stage.slipTorque === null) continue
    const slip = slipPullOf(machine, stage.slipTorque, ratio)
    const mass = jam.mass - (jam.masses[at + 1] ?? NaN)
    speed = Math.max(speed, speedFor(e, machine, breaks, slip, mass))
  }
  return speed
}

/** Speed from which on one pull that goes on breaks it, m/s; 0 where it does at any. */
export function speedFor(
  e: Evaluation,
  machine: Machine,
  breaks: number,
  pull: number,
  mass: number,
): number {
  const spring = machine.track.stopSpring
  if (spring === null || !(breaks > pull)) return 0
  const energy = stopEnergy(spring, breaks, pull) - heldEnergy(spring, Math.min(pull, e.motorPull))
  if (!(energy >= 0)) return 0
  return mass === 0 ? Infinity : Math.sqrt(energy / mass)
}

/**
 * Slip torque on the sprocket's shaft that holds teeth and loop in a jam at any speed.
 *
 * max(F_b − P_m, F_b/2) r n/M.
 *
 * @param breaks F_b, N
 * @returns N·m; NaN without reductions
 * *Source:* `docs/model.md` §6; with pretension at most the exact one, the safe side.
 */
export function limiterThatHolds(e: Evaluation, machine: Machine, breaks: number): number {
  const { track, motor, stages } = machine
  if (stages.length === 0) return NaN
  return (Math.max(breaks - e.motorPull, breaks / 2) * track.radius * track.count) / motor.count
}
