import type { Machine } from '../machine/parts.ts'
import type { StopSpring } from '../geometry/stop-spring.ts'
import { heldEnergy, stopForce } from '../track/stop.ts'
import { mostStages } from './stage-duty.ts'
import { slipPullOf } from './train-pulls.ts'

/** What runs on when a loop is held. */
export class Jam {
  /** Whether a stop is judged: rotor inertia and sharing by stiffness are known. */
  isJudged = false
  /** μ, kg at one loop, of all that turns before the input of every reduction, and last before the sprocket. */
  readonly masses = new Float64Array(mostStages + 1)
  /** μ whole. */
  mass = NaN
}

/**
 * Fills the masses that a held loop has to stop; none of them where no stop is judged.
 *
 * μ_1 = M J_r G²/(r² n);  μ_{k+1} = μ_k + M J_k (G/G_k)²/(r² n).
 *
 * *Source:* reflected inertia; `docs/model.md` §6.
 */
export function setJamMasses(jam: Jam, machine: Machine): void {
  const { motor, stages, train, track } = machine
  jam.isJudged = motor.rotorInertia > 0 && track.stopSpring !== null
  jam.mass = NaN
  if (!jam.isJudged) return
  const scale = motor.count / (track.radius * track.radius * track.count)
  let mass = scale * motor.rotorInertia * train.ratio * train.ratio
  let left = train.ratio
  for (let at = 0; at < stages.length; at += 1) {
    const stage = stages[at]
    if (stage === undefined) break
    jam.masses[at] = mass
    left /= stage.ratio
    mass += scale * stage.drivenInertia * left * left
  }
  jam.masses[stages.length] = mass
  jam.mass = mass
}

/**
 * Fills what goes through the train at the peak of a stop.
 *
 * F_0 = f(P_m, μ v² + p(P_m));  A_k = P_m + (F_0 − P_m) μ_k/μ. With a limiter on shaft j, m_b = μ − μ_{j+1}:
 * F_j = f(L_j, m_b v² + p(min(L_j, P_m)));  A_k = max(P_m, L_j) up to it, then L_j + (F_j − L_j)(μ_k − μ_{j+1})/m_b
 * (F_j where m_b = 0). Each A_k: the least of all.
 *
 * @param motorPull P_m, N
 * @param speed v, m/s of the belt; NaN where the case does not arise
 * *Source:* energy; rigid train, no damping, all rows at once: `docs/model.md` §6.
 */
export function setStopPulls(
  pulls: Float64Array,
  jam: Jam,
  machine: Machine,
  motorPull: number,
  speed: number,
): void {
  const { stages, track } = machine
  const spring = track.stopSpring
  const last = stages.length
  if (!jam.isJudged || spring === null) {
    for (let at = 0; at <= last; at += 1) pulls[at] = NaN
    return
  }
  const whole = stopForce(spring, motorPull, jam.mass * speed * speed + heldEnergy(spring, motorPull))
  for (let at = 0; at <= last; at += 1) {
    pulls[at] = motorPull + ((whole - motorPull) * (jam.masses[at] ?? NaN)) / jam.mass
  }
  let ratio = 1
  for (let at = 0; at < last; at += 1) {
    const stage = stages[at]
    if (stage === undefined) break
    ratio *= stage.ratio
    if (stage.slipTorque === null) continue
    const slip = slipPullOf(machine, stage.slipTorque, ratio)
    lowerByLimiter(pulls, jam, spring, at, last, motorPull, speed, slip)
  }
}

/** @param at, last places of the limiter's reduction and of the sprocket's pull; @param slip L_j, N */
function lowerByLimiter(
  pulls: Float64Array,
  jam: Jam,
  spring: StopSpring,
  at: number,
  last: number,
  motorPull: number,
  speed: number,
  slip: number,
): void {
  const before = jam.masses[at + 1] ?? NaN
  const beyond = jam.mass - before
  const energy = beyond * speed * speed + heldEnergy(spring, Math.min(slip, motorPull))
  const force = stopForce(spring, slip, energy)
  for (let place = 0; place <= last; place += 1) {
    const share = beyond === 0 ? 1 : ((jam.masses[place] ?? NaN) - before) / beyond
    const through = place <= at ? Math.max(motorPull, slip) : slip + (force - slip) * share
    pulls[place] = Math.min(pulls[place] ?? NaN, through)
  }
}
