import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import type { Mistake } from '../mistakes/mistake.ts'
import { readingMistake } from './mistake.ts'
import type { Guide } from '../reference/measurements.ts'
import { choicesOf } from './readings-schema.ts'

/** Names that a build gives through its reductions, not by an entry. */
export const workedOut: ReadonlySet<string> = new Set(['ratio', 'efficiencyPercent', 'equivalentMassKg'])

/** Names that stand in readings, sound or not. */
interface Standing {
  readonly given: ReadonlySet<string>
  /** Columns and lists. */
  readonly read: ReadonlySet<string>
}

const isPath = (name: string) => fieldOf(name) !== undefined

/** Whether something is in force where the entry is absent. */
function hasStandard(path: string): boolean {
  const field = fieldOf(path)
  return field?.default !== undefined || field?.defaultFrom !== undefined
}

/** Whether a given quantity is to be had: from the readings, from the build, or without a build by default. */
function isThere({ given }: Standing, build: Build | null, name: string): boolean {
  if (given.has(name)) return true
  if (workedOut.has(name)) return build !== null
  if (!isPath(name)) return false
  return build === null ? hasStandard(name) : valueAt(build, keysOf(name)) !== undefined
}

/** Given quantities that readings ask for; one that goes with a column or list only where that is there. */
const wantedOf = (guide: Guide, { read }: Standing) =>
  guide.given.filter((given) => given.with === undefined || read.has(given.with))

/** Names of given quantities that are to be had. */
export function knownNames(guide: Guide, standing: Standing, build: Build | null): readonly string[] {
  return wantedOf(guide, standing)
    .map(({ name }) => name)
    .filter((name) => isThere(standing, build, name))
}

/** What is asked for and nowhere to be had. */
export function missingOf(guide: Guide, standing: Standing, build: Build | null): readonly Mistake[] {
  const numbers = wantedOf(guide, standing)
    .filter(({ name, optional }) => optional !== true && !isThere(standing, build, name))
    .map(({ name }) => missing(name, build, null))
  const named = Object.entries(guide.defaults)
    .filter(([name, standard]) => standard === null && !standing.given.has(name))
    .filter(([name]) => valueAt(build ?? {}, keysOf(name)) === undefined)
    .map(([name]) => missing(name, build, choicesOf(guide, name)))
  return [...numbers, ...named]
}

function missing(name: string, build: Build | null, choices: readonly string[] | null): Mistake {
  const what = choices === null ? 'a number' : `one of ${choices.join(', ')}`
  const own = !isPath(name) && !workedOut.has(name)
  const where = build !== null ? '; the build does not have it' : own ? '' : ', or --build with it'
  return readingMistake(`given.${name}`, `${what}, here${where}`, undefined)
}
