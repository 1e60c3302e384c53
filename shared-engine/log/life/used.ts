import type { Episode } from '../episodes/episode.ts'
import type { InPieces } from '../pieces.ts'
import type { ReadLog } from '../read.ts'
import type { LifeUsed } from './counted.ts'
import { courseOf } from './course.ts'
import { shaftLives } from './shafts.ts'
import { gearLife, loopLives } from './teeth.ts'

export type { LifeUsed } from './counted.ts'

/**
 * Part of their lives that a run took of drive teeth, gear teeth, loops and shafts. Rough: within a factor of ten either way
 * is usual.
 *
 * Each bears the moment's load as it was logged, without the factor for shocks. Lives lie on a line in logarithms between
 * what breaks once (0.9 of it a thousand times) and what is borne for long (a million times); damage by Miner's rule.
 *
 * @returns those whose strengths the build gives, the most used first; none without a current
 * *Source:* Palmgren and Miner; Basquin; Shigley for the two points; `docs/logs.md` §9.
 */
export function* lifeUsedOf(log: ReadLog, episodes: readonly Episode[]): InPieces<readonly LifeUsed[]> {
  const course = courseOf(log, episodes)
  if (course === null) return []
  yield
  const { machine } = log.model
  const lives = [...(yield* loopLives(course, machine))]
  let [ratio, efficiency] = [1, 1]
  for (const [at, stage] of machine.stages.entries()) {
    const wheel = stage.kind === 'gear' ? yield* gearLife(course, stage, at, ratio, efficiency) : null
    if (wheel !== null) lives.push(wheel)
    ratio *= stage.ratio
    efficiency *= stage.efficiency
  }
  lives.push(...(yield* shaftLives(course, machine)))
  return lives.toSorted((one, other) => other.used - one.used)
}
