import { courseOf, has, hasAll, isUsable, notesOf, type ToldRun } from './course.ts'
import { effectOf, scatterOf, type Effect } from './difference.ts'
import { lessCellMeans, matchedOf, type Row } from './matched.ts'
import { ohmsBetween, showsOhms } from './pack-ohms.ts'
import { predictedBy, type Predicted } from './predicted.ts'
import { compared, packOhms, type Compared } from './quantity.ts'
import { judged, type Chanced, type Changes, type NotCompared } from './result.ts'
import { stretchesOf, type Course, type Measure, type Stretch } from './stretch.ts'

type Both<T> = readonly [before: T, after: T]

/** The conditions of a comparison that both runs know, with the widths of their cells. */
type Conditions = readonly (readonly [Measure, number | null])[]

const runs = [0, 1] as const

/**
 * Two runs compared, each read against the build that it was driven with: what was before and after under like conditions.
 *
 * Stretches of both fall into cells of speed (or current, or volts on the motor), temperature and charge; those of cells in
 * which both have some are compared. Inside a cell a line takes out what is left of the first condition; of temperature and
 * charge that is what the first run's build says of them.
 *
 * *Source:* comparison within strata: Cochran, *Biometrics* 24 (1968), from memory.
 */
export function changesBetween(before: ToldRun, after: ToldRun): Changes {
  const courses = [courseOf(before), courseOf(after)] as const
  const predicted = predictedBy(courses[0])
  const bySensor = courses.every((one) => has(one, 'speed'))
  const found: Chanced[] = []
  const notCompared: NotCompared[] = []
  const cut = new Map<number, Both<readonly Stretch[]>>()
  const stretchesFor = (seconds: number) => {
    const stretches = cut.get(seconds) ?? [
      stretchesOf(courses[0], seconds, bySensor),
      stretchesOf(courses[1], seconds, bySensor),
    ]
    cut.set(seconds, stretches)
    return stretches
  }
  const put = (outcome: Chanced | NotCompared) => {
    if ('condition' in outcome) notCompared.push(outcome)
    else found.push(outcome)
  }
  for (const one of compared) {
    if (one.of === 'motorAmps' && courses[0].currents.source !== courses[1].currents.source) continue
    if (courses.every((course) => hasAll(course, one)))
      put(changeOf(one, stretchesFor(one.seconds), courses, predicted))
  }
  if (courses.every(showsOhms)) put(ohmsBetween(stretchesFor(packOhms.seconds)))
  return { against: 'log', changes: judged(found), notCompared, notes: notesOf('log', courses, bySensor) }
}

function changeOf(
  one: Compared,
  stretches: Both<readonly Stretch[]>,
  courses: Both<Course>,
  predicted: Predicted,
): Chanced | NotCompared {
  const refused = (measure: Measure | null, reaches: NotCompared['reaches'] = null): NotCompared => ({
    id: one.id,
    condition: measure,
    reaches,
  })
  const conditions = conditionsOf(one, stretches)
  const rows = rowsOf(one, conditions, stretches, courses)
  if (runs.some((run) => !rows.some((row) => row.run === run))) return refused(null)
  const matched = matchedOf(
    rows,
    conditions.map(([, width]) => width),
  )
  if ('condition' in matched)
    return refused(conditions[matched.condition ?? -1]?.[0] ?? null, matched.reaches)
  const alike = matched.rows
  const common = commonOf(alike)
  const moved = alike.map(({ value, means }) => value - predicted.moved(one.of, means, common))
  const within = (values: readonly number[]) => lessCellMeans(values, matched.cells)
  const beside = one.steady ? [...one.lines, 'acceleration' as const] : one.lines
  const effect = effectOf(
    within(alike.map(({ run }) => run)),
    [one.at, ...beside].map((measure) => within(alike.map(({ means }) => means[measure]))),
    within(moved),
    alike.map(({ run, window }, at) => alike[at - 1]?.run === run && alike[at - 1]?.window === window - 1),
    new Set(matched.cells).size,
  )
  if (effect === null) return refused(null)
  const open = runs.map((run) => predicted.open(one.of, common, courses[run].charge.uncertainty))
  return chancedOf(one, conditions, alike, moved, effect, Math.hypot(...open))
}

/** What both runs know of what has to be alike. */
function conditionsOf({ at, also }: Compared, stretches: Both<readonly Stretch[]>): Conditions {
  const known = (measure: Measure) =>
    stretches.every((list) => list.some(({ means }) => Number.isFinite(means[measure])))
  return [
    [at, null],
    ...also.flatMap(({ measure, width }) => (known(measure) ? [[measure, width] as const] : [])),
  ]
}

function rowsOf(
  one: Compared,
  conditions: Conditions,
  stretches: Both<readonly Stretch[]>,
  courses: Both<Course>,
): readonly Row[] {
  return runs.flatMap((run) =>
    stretches[run].flatMap(({ window, means }): Row[] => {
      const held = conditions.map(([measure]) => means[measure])
      const value = means[one.of]
      const whole = [value, ...held].every(Number.isFinite) && isUsable(one, means, courses[run])
      return whole ? [{ run, window, value, conditions: held, means }] : []
    }),
  )
}

/** The mean of all that was alike. */
function commonOf(rows: readonly Row[]): Stretch['means'] {
  const [first] = rows
  const names = Object.keys(first?.means ?? {}) as Measure[]
  const mean = (name: Measure) => rows.reduce((sum, { means }) => sum + means[name], 0) / rows.length
  return Object.fromEntries(names.map((name) => [name, mean(name)])) as Record<Measure, number>
}

/** @param open standard uncertainty of the difference from what is not known of the charge */
function chancedOf(
  { id, seconds }: Compared,
  conditions: Conditions,
  alike: readonly Row[],
  moved: readonly number[],
  effect: Effect,
  open: number,
): Chanced {
  const count = (run: 0 | 1) => alike.filter((row) => row.run === run).length
  const mean = moved.reduce((sum, value) => sum + value, 0) / alike.length
  const before = mean - (count(1) / alike.length) * effect.value
  const left = (run: 0 | 1) => scatterOf(effect.left.filter((_, at) => alike[at]?.run === run))
  const widened = effect.widenedBy(open)
  const change = {
    id,
    before,
    after: before + effect.value,
    difference: effect.value,
    within: widened.within,
    told: false,
    scatter: [left(0), left(1)] as const,
    stretches: [count(0), count(1)] as const,
    stretchSeconds: seconds,
    conditions: conditions.map(([measure], at) => {
      const all = alike.map((row) => row.conditions[at] ?? NaN)
      return { measure, from: Math.min(...all), to: Math.max(...all) }
    }),
  }
  return { change, chance: widened.chance }
}
