import { fullTurn } from '../../constants.ts'
import type { LimitId } from '../../limits/id.ts'
import { stepTo } from '../facts/integral.ts'
import { samplesBetween, type InPieces } from '../pieces.ts'
import type { Course } from './course.ts'
import { basquinLives } from './miner.ts'

/** Part of its life that a run took of something. */
export interface LifeUsed {
  /** Limit that says what it bears once. */
  readonly limit: LimitId
  /** One pass a turn of a tooth, or cycles: turns of a shaft that a load bends, and of a torque that goes up and down. */
  readonly by: 'passes' | 'cycles'
  readonly count: number
  /** D of Miner's rule: 1 is its whole life. */
  readonly used: number
  /** Largest load over what it bears for long. */
  readonly most: number
}

/** Lives at the two ends of a straight line in logarithms. *Source:* Shigley, as in miner.ts: f S_ut at 1e3, lasting at 1e6. */
const [fewCycles, manyCycles] = [1e3, 1e6]
/** f: part of what breaks once that is borne a thousand times. *Source:* Shigley, from memory. */
const thousandfold = 0.9

/** What something bears once and for long: Pa, or N of a loop. */
interface Strength {
  readonly once: number
  readonly lasting: number
}

/** Whether there is a line between the two: not where what is borne for long is hardly less than what breaks. */
export function hasLine({ once, lasting }: Strength): boolean {
  return lasting > 0 && thousandfold * once > lasting
}

/** Shortest life that is told apart: a line hardly sloping would come to 0, and the damage to no number. */
const shortestLife = 1e-100

/** Lives by stress. No endurance limit is counted on: plastics, rubber and light metals have none. */
export function livesOf({ once, lasting }: Strength): (stress: number) => number {
  const lifeAt = basquinLives({
    first: [thousandfold * once, fewCycles],
    second: [lasting, manyCycles],
    endurance: 0,
  })
  return (stress) => Math.max(shortestLife, lifeAt(stress))
}

/** What was counted of one thing. */
export type Counted = Pick<LifeUsed, 'count' | 'used' | 'most'>

/**
 * One pass a turn: each bears what the moment of it bears.
 *
 * Passes ∫ ω/2π i dt;  Miner's sum ∫ ω/2π i N(S) dt: trapezoids, as all integrals of a log.
 *
 * @param turnsPerPass i, of the motor
 * @param stressAt S, by place among the rpm samples
 * *Source:* Palmgren and Miner; a turn either way is a pass.
 */
export function* byPasses(
  course: Course,
  strength: Strength,
  turnsPerPass: number,
  stressAt: (place: number) => number,
): InPieces<Counted> {
  const { rpm, speed, until } = course
  const lifeAt = livesOf(strength)
  let [count, used, most] = [0, 0, 0]
  let [rateBefore, damageBefore] = [NaN, NaN]
  for (let place = 0; place < speed.length; place += 1) {
    const stress = stressAt(place)
    const known = Number.isFinite(stress)
    const rate = known ? (speed[place] ?? NaN) / fullTurn / turnsPerPass : NaN
    const damage = stress > 0 ? rate / lifeAt(stress) : 0 * rate
    if (stress > most * strength.lasting) most = stress / strength.lasting
    // Both integrals as they are walked along: lists of what is added up would be twice as long as the log.
    const step = place === 0 ? NaN : stepTo(rpm, place, until)
    if (!Number.isNaN(step)) {
      const [passes, worn] = [(rateBefore + rate) / 2, (damageBefore + damage) / 2]
      if (Number.isFinite(passes)) count += passes * step
      if (Number.isFinite(worn)) used += worn * step
    }
    rateBefore = rate
    damageBefore = damage
    if (place % samplesBetween === samplesBetween - 1) yield
  }
  return { count, used, most }
}
