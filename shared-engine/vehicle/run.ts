import type { CoefficientGround, Machine } from '../machine/parts.ts'
import type { Motion } from './motion.ts'
import { addPiece, RunProgress } from './run-piece.ts'
import { addSoilRun, startSoilRun } from './soil-run.ts'
import { beltSpeedForThrust } from './thrust-line.ts'
import type { TopState } from './top-state.ts'

/** How long and how far a run from rest takes. */
export class RunFromRest {
  /** s to half of the top speed; NaN where there is none. */
  secondsToHalf = NaN
  /** s to 80 % of it. */
  secondsTo80 = NaN
  /** m to 80 % of it. */
  metresTo80 = NaN
}

const progress = new RunProgress()

/**
 * Fills the run from rest at constant charge.
 *
 * t = ∫ m_e/(F(v) − R(v)) dv,  s = ∫ m_e v/(F(v) − R(v)) dv, from 0 to 50 and 80 % of the top speed.
 *
 * @param run filled; NaN without an equilibrium
 * *Source:* Newton's second law; `docs/model.md` §5. Gauss-Legendre on pieces that end where grip or current limit let go.
 */
export function setRun(run: RunFromRest, machine: Machine, motion: Motion, top: TopState): void {
  if (!top.exists) {
    run.secondsToHalf = run.secondsTo80 = run.metresTo80 = NaN
    return
  }
  startRun(progress, machine, motion)
  continueRun(progress, machine, motion, 0.5 * top.groundSpeed)
  run.secondsToHalf = progress.seconds
  continueRun(progress, machine, motion, 0.8 * top.groundSpeed)
  run.secondsTo80 = progress.seconds
  run.metresTo80 = progress.metres
}

/** Puts a run at rest. */
export function startRun(progress: RunProgress, machine: Machine, motion: Motion): void {
  progress.seconds = 0
  progress.metres = 0
  progress.speed = 0
  if (machine.ground.model === 'soil') startSoilRun(progress, motion)
}

/**
 * Integrates a run on from where it stands.
 *
 * @param speed ground speed to reach, m/s, not below the one reached
 */
export function continueRun(progress: RunProgress, machine: Machine, motion: Motion, speed: number): void {
  const ground = machine.ground
  if (ground.model === 'soil') addSoilRun(progress, motion, speed)
  else addCoefficientRun(progress, motion, ground, speed)
}

function addCoefficientRun(
  progress: RunProgress,
  motion: Motion,
  ground: CoefficientGround,
  to: number,
): void {
  const { line, footing } = motion
  const gripping = 1 - ground.slip
  const restThrust = line.cornerSpeed > 0 ? line.limitedStart : line.openStart
  if (restThrust > footing.gripThrust) {
    const gripEnd = gripping * beltSpeedForThrust(line, footing.gripThrust)
    if (progress.speed < gripEnd) addPiece(progress, motion, Math.min(gripEnd, to), footing.gripThrust, 0)
  }
  const corner = Math.min(gripping * line.cornerSpeed, to)
  if (progress.speed < corner) {
    addPiece(progress, motion, corner, line.limitedStart, line.limitedSlope / gripping)
  }
  if (progress.speed < to) addPiece(progress, motion, to, line.openStart, line.openSlope / gripping)
}
