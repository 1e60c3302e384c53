import { placesOf } from '../entries/condition.ts'
import { allowedOf, entryTable, fieldOf, groups } from '../entries/fields.ts'
import { isListIndex, keysOf } from '../entries/path.ts'
import { completeBuild, readStoredBuildValue } from '../entries/read.ts'
import type { AxisFacts } from '../entries/rows/row.ts'
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

const mostValues = 10_000

const mistake = (code: MistakeCode, path: string, value: unknown, allowed: string): Mistake => ({
  code,
  path,
  value: value === undefined ? '' : shown(value),
  allowed,
  kept: '',
})

interface Variable extends AxisFacts {
  readonly path: string
}

/** What a search can vary in a build, as its rows say: a list's items in their order, each with its own entries. */
function variablesOf(stored: StoredBuild, by: keyof AxisFacts): readonly Variable[] {
  const build = completeBuild(stored)
  const entries = [...entryTable.fields].flatMap(([pattern, field]) => {
    const { axis } = field
    return axis === undefined ? [] : placesOf(pattern, field, build).map((path) => ({ path, ...axis }))
  })
  const parts = [...entryTable.groups].flatMap(([path, { axis }]) =>
    axis === undefined ? [] : [{ path, ...axis }],
  )
  return [...entries, ...parts].toSorted(
    (one, other) => one[by] - other[by] || (itemOf(one.path) ?? 0) - (itemOf(other.path) ?? 0),
  )
}

/** The place of the list's item that an entry belongs to. */
function itemOf(path: string): number | undefined {
  const place = keysOf(path).find(isListIndex)
  return place === undefined ? undefined : Number(place)
}

/** Every entry of a build that a search can vary, in the order in which it is offered. */
export function variablePathsOf(stored: StoredBuild): string[] {
  return variablesOf(stored, 'offered').map(({ path }) => path)
}

/** What a varied entry is called: with its reduction, counted from 1. */
export function axisLabelOf(path: string): string {
  const label = fieldOf(path)?.label ?? groups[path]?.label ?? path
  const item = itemOf(path)
  return item === undefined ? label : `${label}, stage ${item + 1}`
}

/** The axes of a space on a build, the slowest to change first; mistakes go into `mistakes`. */
export function axesOf(stored: StoredBuild, space: StoredSpace, mistakes: Mistake[]): SearchAxis[] {
  const possible = variablePathsOf(stored)
  for (const path of Object.keys(space.vary)) {
    if (!possible.includes(path)) {
      mistakes.push(mistake('cannot-vary', `vary.${path}`, undefined, possible.join(', ')))
    }
  }
  return variablesOf(stored, 'turns').flatMap(({ path }) => {
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
    // A list of what is owned may serve several entries: which one it is too much for is said.
    const allowed = listPath === at ? allowedOf(field) : `${allowedOf(field)}, for ${path}`
    mistakes.push(mistake('out-of-range', `${listPath}.${place}`, value, allowed))
  })
  reportTwice(values, listPath, mistakes)
  return { path, label: axisLabelOf(path), values, motors: null }
}

/** Numbers in the order given; null where they are not known. */
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
