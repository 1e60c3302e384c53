import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import { failed, succeeded, type Result } from '../mistakes/mistake.ts'
import { guideOf } from '../reference/measurements.ts'
import { Bench, blankOf } from './bench.ts'
import { knownNames, missingOf, workedOut } from './missing.ts'
import type { Readings } from './readings.ts'

const isPath = (name: string) => fieldOf(name) !== undefined

/**
 * Readings laid beside the build, or what is missing.
 *
 * @param build with its tolerances; null where the readings stand for themselves
 */
export function layReadings(readings: Readings, build: Build | null): Result<Bench> {
  const guide = guideOf(readings.test)
  const standing = {
    given: new Set([...readings.given.keys(), ...readings.words.keys()]),
    read: new Set([...readings.columns.keys(), ...readings.lists.keys()]),
  }
  const mistakes = missingOf(guide, standing, build)
  if (mistakes.length > 0) return failed(mistakes)
  const plain = new Map<string, number>()
  const words = new Map<string, string>()
  for (const [name, standard] of Object.entries(guide.defaults)) {
    const inBuild = isPath(name) ? valueAt(build ?? {}, keysOf(name)) : undefined
    const value = readings.words.get(name) ?? readings.given.get(name)?.value ?? inBuild ?? standard
    if (typeof value === 'number') plain.set(name, value)
    else words.set(name, String(value))
  }
  for (const [name, { value }] of readings.given) if (!isPath(name)) plain.set(name, value)
  // What the build works out from its reductions is asked of the machine; only what was given stands by itself.
  const known = new Set([
    ...knownNames(guide, standing, build).filter((name) => !workedOut.has(name) || plain.has(name)),
    ...plain.keys(),
  ])
  const entries = new Map<string, number | string>([
    ...[...readings.given]
      .filter(([name]) => isPath(name))
      .map(([path, { value }]) => [path, value] as const),
    ...[...words].filter(([name]) => isPath(name)),
  ])
  const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / list.length
  const means = new Map([...readings.lists].map(([name, list]) => [name, mean(list)]))
  return succeeded(
    Bench.over(build ?? blankOf(), entries, { columns: readings.columns, means, plain, known, words }),
  )
}
