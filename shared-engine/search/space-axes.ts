import { allowedOf, fieldOf } from '../entries/fields.ts'
import { readStoredBuildValue } from '../entries/read.ts'
import type { StoredBuild } from '../entries/schema.ts'
import type { MistakeCode } from '../mistakes/catalogue.ts'
import type { Mistake } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import { withMotor } from './candidate-build.ts'
import type { MotorChoice, SpaceValues, StoredSpace } from './space-schema.ts'

/** One entry that a search varies, with the values it tries. */
export interface SearchAxis {
  /** As in the build: `stages.0.driverTeeth`; `motor` is the whole group. */
  readonly path: string
  readonly label: string
  /** Values in the entry's bench unit; places in `motors` where that is the axis. */
  readonly values: readonly number[]
  readonly motors: readonly MotorChoice[] | null
}

const stageEntry = /^stages\.(0|[1-5])\.(driverTeeth|drivenTeeth|ratio)$/
const others = ['track.sprocketTeeth', 'pack.series', 'motor', 'controller.throttleCapPercent']
const mostValues = 10_000

const mistake = (code: MistakeCode, path: string, value: unknown, allowed: string): Mistake => ({
  code,
  path,
  value: value === undefined ? '' : shown(value),
  allowed,
  kept: '',
})

/** Every entry of a build that a search can vary, from the motor to the ground. */
export function variablePathsOf(stored: StoredBuild): string[] {
  const stages = (stored.stages ?? []).flatMap((stage, at) =>
    stage.kind === 'fixed'
      ? [`stages.${at}.ratio`]
      : [`stages.${at}.driverTeeth`, `stages.${at}.drivenTeeth`],
  )
  return [...stages, ...others]
}

/** What a varied entry is called: with its reduction, counted from 1. */
export function axisLabelOf(path: string): string {
  if (path === 'motor') return 'Motor'
  const stage = stageEntry.exec(path)?.[1]
  const label = fieldOf(path)?.label ?? path
  return stage === undefined ? label : `${label}, stage ${Number(stage) + 1}`
}

/** The axes of a space on a build, the slowest to change first; mistakes go into `mistakes`. */
export function axesOf(stored: StoredBuild, space: StoredSpace, mistakes: Mistake[]): SearchAxis[] {
  const possible = variablePathsOf(stored)
  for (const path of Object.keys(space.vary)) {
    if (!possible.includes(path)) {
      mistakes.push(mistake('cannot-vary', `vary.${path}`, undefined, possible.join(', ')))
    }
  }
  // Track last: its parts are ready made, and nothing before it has to be put together again.
  const order = [
    'motor',
    'pack.series',
    'controller.throttleCapPercent',
    ...possible.filter((path) => stageEntry.test(path)),
    'track.sprocketTeeth',
  ]
  return order.flatMap((path) => {
    const given = Object.hasOwn(space.vary, path) ? space.vary[path] : undefined
    if (given === undefined) return []
    const axis =
      path === 'motor' ? motorAxisOf(stored, given, mistakes) : numberAxisOf(path, given, space, mistakes)
    return axis === null ? [] : [axis]
  })
}

type Given = StoredSpace['vary'][string]

const isMotors = (given: Given): given is MotorChoice[] =>
  Array.isArray(given) && typeof given[0] === 'object'

function motorAxisOf(stored: StoredBuild, given: Given, mistakes: Mistake[]): SearchAxis | null {
  if (!isMotors(given)) {
    mistakes.push(
      mistake('wrong-shape', 'vary.motor', given, 'a list of motors, each with "name" and "motor"'),
    )
    return null
  }
  given.forEach(({ motor }, at) => {
    const read = readStoredBuildValue(withMotor(stored, motor))
    if (read.ok) return
    for (const one of read.mistakes) mistakes.push({ ...one, path: `vary.motor.${at}.${one.path}` })
  })
  const names = given.map((choice) => choice.name)
  reportTwice(names, 'vary.motor', mistakes)
  return { path: 'motor', label: axisLabelOf('motor'), values: given.map((_, at) => at), motors: given }
}

function numberAxisOf(
  path: string,
  given: Given,
  space: StoredSpace,
  mistakes: Mistake[],
): SearchAxis | null {
  const at = `vary.${path}`
  if (isMotors(given)) {
    mistakes.push(mistake('wrong-shape', at, given, 'numbers; motors belong to "motor"'))
    return null
  }
  const field = fieldOf(path)
  if (field === undefined) throw new Error(`${path} is not in the table of fields`)
  const values = valuesOf(given, at, space, mistakes)
  if (values === null) return null
  const { low = -Infinity, high = Infinity, whole } = field
  const listPath = typeof given === 'string' ? `owned.${given}` : at
  values.forEach((value, place) => {
    if (value >= low && value <= high && (whole !== true || Number.isInteger(value))) return
    mistakes.push(mistake('out-of-range', `${listPath}.${place}`, value, `${allowedOf(field)}, for ${path}`))
  })
  reportTwice(values, listPath, mistakes)
  return { path, label: axisLabelOf(path), values, motors: null }
}

/** Numbers in the order given; null where they cannot be told. */
function valuesOf(given: SpaceValues, at: string, space: StoredSpace, mistakes: Mistake[]): number[] | null {
  if (typeof given === 'string') {
    const owned =
      space.owned !== undefined && Object.hasOwn(space.owned, given) ? space.owned[given] : undefined
    if (owned !== undefined) return nonEmpty(owned, `owned.${given}`, mistakes)
    const names = Object.keys(space.owned ?? {})
    mistakes.push(
      mistake('unknown-list', at, given, names.length === 0 ? 'a list in "owned"' : names.join(', ')),
    )
    return null
  }
  if (Array.isArray(given)) return nonEmpty(given, at, mistakes)
  const { from, to, step } = given
  if (!(step > 0)) mistakes.push(mistake('out-of-range', `${at}.step`, step, 'above 0'))
  if (!(to >= from)) mistakes.push(mistake('out-of-range', `${at}.to`, to, `from ${from}`))
  if (!(step > 0) || !(to >= from)) return null
  const count = Math.floor((to - from) / step + 1e-9) + 1 // a step that fits a whole number of times is not lost
  if (count > mostValues) {
    mistakes.push({
      ...mistake('too-many', at, undefined, `at most ${mostValues.toLocaleString('en')} values`),
      value: `${count} values`,
    })
    return null
  }
  return Array.from({ length: count }, (_, place) => Number((from + place * step).toPrecision(12)))
}

function nonEmpty(values: readonly number[], at: string, mistakes: Mistake[]): number[] | null {
  if (values.length > 0 && values.length <= mostValues) return [...values]
  const found = values.length === 0 ? 'an empty list' : `a list of ${values.length}`
  mistakes.push({
    ...mistake('wrong-length', at, undefined, `1 to ${mostValues.toLocaleString('en')} values`),
    value: found,
  })
  return null
}

function reportTwice(values: readonly (number | string)[], at: string, mistakes: Mistake[]): void {
  const seen = new Set<number | string>()
  const twice = new Set(values.filter((value) => seen.size === seen.add(value).size))
  for (const value of twice) mistakes.push(mistake('listed-twice', at, value, ''))
}
