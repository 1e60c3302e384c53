import { type EntryReader, entryReaderOf } from '../entries/entry-reader.ts'
import { fieldOf } from '../entries/fields.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import { rules } from '../entries/rules.ts'
import { evidenceRules } from '../entries/rules-evidence.ts'
import type { Rule } from '../entries/rule.ts'
import type { Build } from '../entries/schema.ts'
import { assertUnit } from '../units/convert.ts'
import { kindUnits } from '../units/table.ts'

type Holder = Record<string, unknown>

/** One group of the build that holds drawn numbers, or leads to one that does. */
class Way {
  /** Names of the numbers that it holds itself, and their places in the list of values. */
  readonly names: string[] = []
  readonly places: number[] = []
  readonly below = new Map<string, Way>()
  #values: number[] = []
  #made: Holder | null = null
  readonly #held: Holder

  constructor(held: Holder) {
    this.#held = held
  }

  /** The group below a key, made where it is new. */
  to(key: string): Way {
    let way = this.below.get(key)
    if (way === undefined) this.below.set(key, (way = new Way(this.#held[key] as Holder)))
    return way
  }

  /** The group with other numbers: the very one made last where none of them is another. */
  with(values: Float64Array): Holder {
    let same = this.#made !== null
    for (let at = 0; at < this.places.length; at += 1) {
      const value = values[this.places[at] ?? 0] ?? NaN
      if (value !== this.#values[at]) same = false
      this.#values[at] = value
    }
    const groups: [string, Holder][] = []
    for (const [key, way] of this.below) {
      const group = way.with(values)
      if (group !== this.#made?.[key]) same = false
      groups.push([key, group])
    }
    if (same && this.#made !== null) return this.#made
    const made: Holder = Array.isArray(this.#held)
      ? ([...(this.#held as unknown[])] as unknown as Holder)
      : { ...this.#held }
    for (let at = 0; at < this.names.length; at += 1) made[this.names[at] ?? ''] = this.#values[at]
    for (const [key, group] of groups) made[key] = group
    return (this.#made = made)
  }
}

/**
 * A function that gives the build with other numbers at some paths. Groups on the way are copied where a number in them is
 * another than the time before; the rest is shared, so that it costs little ten thousand times over.
 *
 * @param paths entries that the build has
 */
export function buildSetter(build: Build, paths: readonly string[]): (values: Float64Array) => Build {
  const root = new Way(build as unknown as Holder)
  paths.forEach((path, place) => {
    const keys = keysOf(path)
    let way = root
    for (const key of keys.slice(0, -1)) way = way.to(key)
    way.names.push(keys.at(-1) ?? '')
    way.places.push(place)
  })
  return (values) => root.with(values) as unknown as Build
}

/**
 * A function that says whether a build with other numbers at some paths still keeps the rules between entries: a load
 * height drawn above the tooth's tip is no build. Only rules that read one of the paths are asked again; the others hold
 * as they did.
 */
export function rulesKeeper(build: Build, paths: readonly string[]): (changed: Build) => boolean {
  const concerned = rules.filter((rule) => !evidenceRules.includes(rule) && readsOneOf(rule, build, paths))
  if (concerned.length === 0) return () => true
  const reader = new SoundReader(paths)
  return (changed) => {
    reader.build = changed
    return concerned.every((rule) => rule(reader).length === 0)
  }
}

/** What a path leads to. */
interface Known {
  readonly keys: readonly string[]
  /** Whether it is drawn; else its value is the same in every build. */
  readonly varies: boolean
  readonly value: unknown
  readonly factor: (value: number) => number
}

/**
 * Reads builds that differ in some entries, which are sound, over and over: what a path means is looked up once. The reader
 * of files looks it up and checks it each time, which would cost more than the physics here.
 */
class SoundReader implements EntryReader {
  build: unknown = null
  private readonly known = new Map<string, Known>()
  private readonly drawn: readonly string[]

  constructor(drawn: readonly string[]) {
    this.drawn = drawn
  }

  private knownOf(path: string): Known {
    const before = this.known.get(path)
    if (before !== undefined) return before
    const keys = keysOf(path)
    const varies = this.drawn.some((one) => `${one}.`.startsWith(`${path}.`))
    const known = { keys, varies, value: valueAt(this.build, keys), factor: engineFactorOf(path) }
    this.known.set(path, known)
    return known
  }

  readonly raw = (path: string): unknown => {
    const { varies, keys, value } = this.knownOf(path)
    return varies ? valueAt(this.build, keys) : value
  }
  readonly number = (path: string): number | undefined => {
    const value = this.raw(path)
    return typeof value === 'number' ? value : undefined
  }
  readonly si = (path: string): number | undefined => {
    const { varies, keys, value, factor } = this.knownOf(path)
    const entry = varies ? valueAt(this.build, keys) : value
    return typeof entry === 'number' ? factor(entry) : undefined
  }
  readonly word = (path: string): string | undefined => {
    const value = this.raw(path)
    return typeof value === 'string' ? value : undefined
  }
  readonly length = (path: string): number => {
    const list = this.raw(path)
    return Array.isArray(list) ? list.length : 0
  }
}

/** From an entry's bench unit to the engine's. */
function engineFactorOf(path: string): (value: number) => number {
  const kind = fieldOf(path)?.kind ?? 'none'
  const { times, per, plus } = assertUnit(kind, kindUnits[kind].bench)
  return (value) => (value * times + plus) / per
}

function readsOneOf(rule: Rule, build: Build, paths: readonly string[]): boolean {
  const inner = entryReaderOf(build)
  let read = false
  const note = (path: string) => {
    if (paths.some((one) => one === path || one.startsWith(`${path}.`))) read = true
  }
  const noting: EntryReader = {
    raw: (path) => (note(path), inner.raw(path)),
    number: (path) => (note(path), inner.number(path)),
    si: (path) => (note(path), inner.si(path)),
    word: (path) => (note(path), inner.word(path)),
    length: (path) => (note(path), inner.length(path)),
  }
  rule(noting)
  return read
}
