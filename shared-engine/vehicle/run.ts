import type { CoefficientGround } from '../build/machine-parts.ts'
import { addPiece, RunProgress, type RunSetting } from './run-piece.ts'
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
 * *Source:* Newton's second law; engine contract §5. Gauss-Legendre on pieces that end where grip or current limit let go.
 */
export function setRun(run: RunFromRest, setting: RunSetting, top: TopState): void {
  if (!top.exists) {
    run.secondsToHalf = run.secondsTo80 = run.metresTo80 = NaN
    return
  }
  startRun(progress, setting)
  continueRun(progress, setting, 0.5 * top.groundSpeed)
  run.secondsToHalf = progress.seconds
  continueRun(progress, setting, 0.8 * top.groundSpeed)
  run.secondsTo80 = progress.seconds
  run.metresTo80 = progress.metres
}

/** Puts a run at rest. */
export function startRun(progress: RunProgress, setting: RunSetting): void {
  progress.seconds = 0
  progress.metres = 0
  progress.speed = 0
  if (setting.machine.ground.model === 'soil') startSoilRun(progress, setting)
}

/**
 * Integrates a run on from where it stands.
 *
 * @param speed ground speed to reach, m/s, not below the one reached
 */
export function continueRun(progress: RunProgress, setting: RunSetting, speed: number): void {
  const ground = setting.machine.ground
  if (ground.model === 'soil') addSoilRun(progress, setting, speed)
  else addCoefficientRun(progress, setting, ground, progress.speed, speed)
  progress.speed = speed
}

function addCoefficientRun(
  progress: RunProgress,
  setting: RunSetting,
  ground: CoefficientGround,
  from: number,
  to: number,
): void {
  const { line, footing } = setting
  const gripping = 1 - ground.slip
  const restThrust = line.cornerSpeed > 0 ? line.limitedStart : line.openStart
  const gripEnd =
    restThrust > footing.gripThrust ? gripping * beltSpeedForThrust(line, footing.gripThrust) : 0
  const corner = gripping * line.cornerSpeed
  let at = from
  if (at < gripEnd) {
    const end = Math.min(gripEnd, to)
    addPiece(progress, setting, at, end, footing.gripThrust, 0)
    at = end
  }
  if (at < corner && at < to) {
    const end = Math.min(corner, to)
    addPiece(progress, setting, at, end, line.limitedStart, line.limitedSlope / gripping)
    at = end
  }
  if (at < to) addPiece(progress, setting, at, to, line.openStart, line.openSlope / gripping)
}
