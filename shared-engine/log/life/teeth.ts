import type { Machine } from '../../machine/parts.ts'
import { dynamicFactor } from '../../reference/gears.ts'
import type { Material } from '../../reference/materials.ts'
import type { GearStage } from '../../stages/gear/machine.ts'
import { lewisStress } from '../../stages/gear/physics.ts'
import { toothBearing, toothBending, toothShear } from '../../track/teeth.ts'
import type { InPieces } from '../pieces.ts'
import { byPasses, hasLine, type Counted, type LifeUsed } from './counted.ts'
import { through, type Course } from './course.ts'

/**
 * Lives used up of drive teeth and loops: one pass a turn of the loop.
 *
 * *Source:* stresses of `docs/model.md` §6 at the moment's load.
 */
export function* loopLives(course: Course, { track, train }: Machine): InPieces<readonly LifeUsed[]> {
  const turnsOfLoop = (track.length / track.advance) * train.ratio
  const lives: LifeUsed[] = []
  const { tooth } = track
  const ways =
    tooth === null
      ? []
      : ([
          ['track.tooth-shear', tooth.allowedShear, tooth.workShear, toothShear],
          ['track.tooth-bending', tooth.allowedTensile, tooth.workTensile, toothBending],
          ['track.tooth-bearing', tooth.allowedBearing, tooth.workBearing, toothBearing],
        ] as const)
  for (const [limit, once, lasting, stressOf] of ways) {
    if (tooth === null || lasting === null || !hasLine({ once, lasting })) continue
    const perForce = stressOf(tooth, 1)
    const stressAt = (place: number) => perForce * (course.tooth[place] ?? NaN)
    lives.push({
      limit,
      by: 'passes',
      ...(yield* byPasses(course, { once, lasting }, turnsOfLoop, stressAt)),
    })
    yield
  }
  const [once, lasting] = [track.breakingTension, track.workingTension]
  if (once !== null && lasting !== null && hasLine({ once, lasting })) {
    const tensionAt = (place: number) => course.tension[place] ?? NaN
    lives.push({
      limit: 'track.tension',
      by: 'passes',
      ...(yield* byPasses(course, { once, lasting }, turnsOfLoop, tensionAt)),
    })
    yield
  }
  return lives
}

/** A wheel of a pair: how it is bent, and what turns it. */
interface Wheel {
  readonly material: Material
  readonly form: number
  /** Turns of the motor for one of the wheel. */
  readonly turns: number
}

/**
 * Life used up of a pair of gears: of the wheel that lost more of it. One pass a turn of the wheel's own shaft; its dynamic
 * factor at the moment's speed.
 *
 * @param place of the stage, from 0
 * @param ratio, efficiency of the stages before
 * @returns null where a wheel's material is not judged for good
 * *Source:* Lewis, as {@link lewisStress}.
 */
export function* gearLife(
  course: Course,
  stage: GearStage,
  place: number,
  ratio: number,
  efficiency: number,
): InPieces<LifeUsed | null> {
  if (stage.lasting === null) return null
  const wheels: readonly Wheel[] = [
    { material: stage.driverMaterial, form: stage.driverForm, turns: ratio },
    { material: stage.drivenMaterial, form: stage.drivenForm, turns: ratio * stage.ratio },
  ]
  let worst: Counted | null = null
  for (const { material, form, turns } of wheels) {
    const once = material.yield * material.knockdown
    const lasting = (material.root ?? NaN) * material.knockdown
    if (!hasLine({ once, lasting })) continue
    const stressAt = (at: number) => {
      const into = through(Math.max(0, course.torque[at] ?? NaN), ratio, efficiency)
      const dynamic = dynamicFactor(stage.finish, ((course.speed[at] ?? NaN) / ratio) * stage.driverRadius)
      return lewisStress(into / stage.driverRadius, stage.faceWidth, stage.module, form, dynamic)
    }
    const counted = yield* byPasses(course, { once, lasting }, turns, stressAt)
    if (worst === null || counted.used > worst.used) worst = counted
    yield
  }
  return worst === null ? null : { limit: `stage.${place + 1}.bending`, by: 'passes', ...worst }
}
