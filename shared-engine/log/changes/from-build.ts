import { courseOf, has, hasAll, isUsable, notesOf, type ToldRun } from './course.ts'
import { effectOf, scatterOf } from './difference.ts'
import { ohmsFromBuild, showsOhms } from './pack-ohms.ts'
import { predictedBy } from './predicted.ts'
import { compared, packOhms } from './quantity.ts'
import { judged, type Chanced, type Changes } from './result.ts'
import { stretchesOf } from './stretch.ts'

/**
 * A run compared with what its build says of the same speeds and currents, at the charge and the motor temperature of each
 * stretch, on the level: *before* is what the build says.
 *
 * *Source:* steady travel and the pack's volts as in the engine; mean and scatter of the differences.
 */
export function changesFromBuild(run: ToldRun): Changes {
  const course = courseOf(run)
  const bySensor = has(course, 'speed')
  const predicted = predictedBy(course)
  const found: Chanced[] = []
  for (const one of compared) {
    if (!predicted.knows(one.of) || !hasAll(course, one)) continue
    const rows = stretchesOf(course, one.seconds, bySensor).flatMap(({ window, means }) => {
      const said = predicted.of(one.of, means)
      const whole = isUsable(one, means, course) && Number.isFinite(means[one.of] - said)
      return whole ? [{ window, means, said }] : []
    })
    const differences = rows.map(({ means, said }) => means[one.of] - said)
    const effect = effectOf(
      rows.map(() => 1),
      one.steady ? [rows.map(({ means }) => means.acceleration)] : [],
      differences,
      rows.map(({ window }, at) => rows[at - 1]?.window === window - 1),
      0,
    )
    if (effect === null) continue
    const before = rows.reduce((sum, { said }) => sum + said, 0) / rows.length
    const at = rows.map(({ means }) => means[one.at])
    const change = {
      id: one.id,
      before,
      after: before + effect.value,
      difference: effect.value,
      within: effect.within,
      told: false,
      scatter: [null, scatterOf(effect.left)] as const,
      stretches: [0, rows.length] as const,
      stretchSeconds: one.seconds,
      conditions: [{ measure: one.at, from: Math.min(...at), to: Math.max(...at) }],
    }
    found.push({ change, chance: effect.chance })
  }
  const ohms = showsOhms(course)
    ? ohmsFromBuild(stretchesOf(course, packOhms.seconds, bySensor), run.log.model.machine.pack.resistance)
    : null
  if (ohms !== null) found.push(ohms)
  return {
    against: 'build',
    changes: judged(found),
    notCompared: [],
    notes: notesOf('build', [course], bySensor),
  }
}
