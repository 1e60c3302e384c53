import type { LimitId } from '../../limits/id.ts'
import { shaftEndurance } from '../../limits/shaft-measure.ts'
import type { Machine, ShaftPart } from '../../machine/parts.ts'
import { notchOf } from '../../reference/joints.ts'
import { comparativeStress, shaftBending } from '../../stages/shaft-strength.ts'
import { centrifugalTension } from '../../track/tension.ts'
import { pressingTension } from '../../track/tensioner.ts'
import type { InPieces } from '../pieces.ts'
import { byPasses, hasLine, livesOf, type LifeUsed } from './counted.ts'
import { through, type Course } from './course.ts'
import { eachCycle } from './rainflow.ts'

/** A shaft under a run. */
interface Turned {
  readonly limit: LimitId
  readonly part: ShaftPart
  /** Turns of the motor for one of it. */
  readonly turns: number
  /** N·m in it for a motor's torque. */
  readonly torqueOf: (torque: number) => number
  /** N across it, by place. */
  readonly pullAt: (place: number) => number
}

/** What of a mean stress is left of a strength, at least: beyond it the line of Goodman says nothing. */
const leastLeft = 0.01

/** Goodman: the fully reversed stress that wears as much. S = S_a/(1 − |S_m|/S_u). *Source:* Shigley, eq. 6-46. */
function reversed(amplitude: number, mean: number, tensile: number): number {
  return amplitude / Math.max(leastLeft, 1 - Math.abs(mean) / tensile)
}

/**
 * Life used up of a shaft: it is bent once a turn under a torque that counts as steady, and its torque goes up and down.
 *
 * Turns: S_a = K_f 32 M/(π d³), S_m = √3 K_fs 16 T/(π d³), so that U = 1 of the limit is borne for 10⁶ turns. Torque: cycles
 * by rainflow, S_a and S_m of √3 K_fs 16 T/(π d³). Lives between 0.9 S_ut and S_e. Both are added up.
 *
 * @returns null where it is not known how far the wheel is from its bearings, as the limit for long is not judged then
 * *Source:* ASTM E1049-85 (2017), 5.4.4, for the cycles; Goodman; strengths of `docs/model.md` §4.
 */
function* shaftLife(
  course: Course,
  { limit, part, turns, torqueOf, pullAt }: Turned,
): InPieces<LifeUsed | null> {
  const { diameter, material, arm, seat } = part
  const strength = { once: material.tensile, lasting: shaftEndurance(part) }
  if (seat === 'unknown' || !hasLine(strength)) return null
  const notch = notchOf(part.joint?.kind ?? 'none')
  const bent = notch.bending * comparativeStress(1, 0, diameter)
  const twist = notch.torsion * comparativeStress(0, 1, diameter)
  const twistOf = (torque: number) => twist * torqueOf(torque)
  const turning = yield* byPasses(course, strength, turns, (place) =>
    reversed(bent * shaftBending(pullAt(place), arm), twistOf(course.torque[place] ?? NaN), material.tensile),
  )
  let { count, used, most } = turning
  const lifeAt = livesOf(strength)
  eachCycle(course.torque, (one, two, share) => {
    const [from, to] = [twistOf(one), twistOf(two)]
    const stress = reversed(Math.abs(to - from) / 2, (from + to) / 2, material.tensile)
    count += share
    if (stress > 0) used += share / lifeAt(stress)
    if (stress > most * strength.lasting) most = stress / strength.lasting
  })
  return { limit, by: 'cycles', count, used, most }
}

/** What a motor's torque is turned into up to some place of the train: ratio and efficiency. */
interface Upto {
  readonly ratio: number
  readonly efficiency: number
}

/** For the input of every stage, and last for the sprocket. */
function inputsOf({ stages }: Machine): readonly Upto[] {
  const inputs: Upto[] = [{ ratio: 1, efficiency: 1 }]
  for (const { ratio, efficiency } of stages) {
    const before = inputs.at(-1) ?? { ratio: 1, efficiency: 1 }
    inputs.push({ ratio: before.ratio * ratio, efficiency: before.efficiency * efficiency })
  }
  return inputs
}

const carried = (torque: number, { ratio, efficiency }: Upto) => through(torque, ratio, efficiency)

/** The driven shaft of a stage: pulled by its own mesh and, at a right angle, by the next one. */
function drivenShaft(
  course: Course,
  { stages }: Machine,
  inputs: readonly Upto[],
  at: number,
): Turned | null {
  const [stage, into, out] = [stages[at], inputs[at], inputs[at + 1]]
  if (stage === undefined || into === undefined || out === undefined || stage.shaft === null) return null
  const nextPull = stages[at + 1]?.pullPerTorque ?? 0
  return {
    limit: `stage.${at + 1}.shaft`,
    part: stage.shaft,
    turns: out.ratio,
    torqueOf: (torque) => carried(torque, out),
    pullAt: (place) => {
      const torque = course.torque[place] ?? NaN
      return Math.hypot(stage.pullPerTorque * carried(torque, into), nextPull * carried(torque, out))
    },
  }
}

/** The sprocket's shaft: pulled by both sides of a loop and, at a right angle, by the last mesh. */
function sprocketShaft(
  course: Course,
  { stages, track, train }: Machine,
  inputs: readonly Upto[],
): Turned | null {
  const [last, into, out] = [stages.at(-1), inputs.at(-2), inputs.at(-1)]
  if (track.shaft === null || out === undefined) return null
  return {
    limit: 'track.shaft',
    part: track.shaft,
    turns: out.ratio,
    torqueOf: (torque) => carried(torque, out),
    pullAt: (place) => {
      const force = Math.abs(course.force[place] ?? NaN)
      const beltSpeed = ((course.speed[place] ?? NaN) * track.radius) / train.ratio
      const pressing = pressingTension(track.hold, force, centrifugalTension(track, beltSpeed))
      const torque = course.torque[place] ?? NaN
      const meshed = last === undefined || into === undefined ? 0 : last.pullPerTorque * carried(torque, into)
      return Math.hypot(force + 2 * pressing, meshed)
    },
  }
}

/** Lives used up of the driven shafts of the stages, and of the sprocket's. *Source:* loads as in `docs/model.md` §4. */
export function* shaftLives(course: Course, machine: Machine): InPieces<readonly LifeUsed[]> {
  const inputs = inputsOf(machine)
  const shafts = [
    ...machine.stages.map((_, at) => drivenShaft(course, machine, inputs, at)),
    sprocketShaft(course, machine, inputs),
  ]
  const lives: LifeUsed[] = []
  for (const shaft of shafts) {
    const life = shaft === null ? null : yield* shaftLife(course, shaft)
    if (life !== null) lives.push(life)
    yield
  }
  return lives
}
