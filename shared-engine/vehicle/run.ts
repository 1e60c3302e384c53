import type { CoefficientGround } from '../build/machine-parts.ts'
import { addPiece, RunSum, type RunSetting } from './run-piece.ts'
import { addSoilRun } from './soil-run.ts'
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

const sum = new RunSum()

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
  const half = 0.5 * top.groundSpeed
  const most = 0.8 * top.groundSpeed
  sum.seconds = 0
  sum.metres = 0
  addRun(sum, setting, 0, half)
  run.secondsToHalf = sum.seconds
  addRun(sum, setting, half, most)
  run.secondsTo80 = sum.seconds
  run.metresTo80 = sum.metres
}

/** Adds the part of a run between two ground speeds. */
export function addRun(sum: RunSum, setting: RunSetting, from: number, to: number): void {
  const ground = setting.machine.ground
  if (ground.model === 'soil') addSoilRun(sum, setting, from, to)
  else addCoefficientRun(sum, setting, ground, from, to)
}

function addCoefficientRun(
  sum: RunSum,
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
    addPiece(sum, setting, at, end, footing.gripThrust, 0)
    at = end
  }
  if (at < corner && at < to) {
    const end = Math.min(corner, to)
    addPiece(sum, setting, at, end, line.limitedStart, line.limitedSlope / gripping)
    at = end
  }
  if (at < to) addPiece(sum, setting, at, to, line.openStart, line.openSlope / gripping)
}
