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

/**
 * A function that gives the build with other numbers at some paths. Groups on the way are copied, once each; the rest is
 * shared, so that it costs little ten thousand times over.
 *
 * @param paths entries that the build has
 */
export function buildSetter(build: Build, paths: readonly string[]): (values: Float64Array) => Build {
  const keys = paths.map((path) => keysOf(path))
  return (values) => {
    const root = { ...build } as unknown as Holder
    const copied = new Set<string>()
    keys.forEach((way, at) => {
      let holder = root
      let name = ''
      for (const key of way.slice(0, -1)) {
        name += `${key}.`
        if (!copied.has(name)) {
          const held = holder[key]
          holder[key] = Array.isArray(held) ? [...(held as unknown[])] : { ...(held as Holder) }
          copied.add(name)
        }
        holder = holder[key] as Holder
      }
      holder[way.at(-1) ?? ''] = values[at]
    })
    return root as unknown as Build
  }
}

/**
 * A function that says whether a build with other numbers at some paths still keeps the rules between entries: a load
 * height drawn above the tooth's tip is no build. Only rules that read one of the paths are asked again; the others hold
 * as they did.
 */
export function rulesKeeper(build: Build, paths: readonly string[]): (changed: Build) => boolean {
  const concerned = rules.filter((rule) => !evidenceRules.includes(rule) && readsOneOf(rule, build, paths))
  if (concerned.length === 0) return () => true
  const reader = new SoundReader()
  return (changed) => {
    reader.build = changed
    return concerned.every((rule) => rule(reader).length === 0)
  }
}

/**
 * Reads a build whose entries are sound, over and over: what a path means is looked up once. The reader of files looks
 * it up and checks it each time, which would cost more than the physics here.
 */
class SoundReader implements EntryReader {
  build: unknown = null
  private readonly keys = new Map<string, readonly string[]>()
  private readonly factors = new Map<string, (value: number) => number>()

  readonly raw = (path: string): unknown => {
    let keys = this.keys.get(path)
    if (keys === undefined) this.keys.set(path, (keys = keysOf(path)))
    return valueAt(this.build, keys)
  }
  readonly number = (path: string): number | undefined => {
    const value = this.raw(path)
    return typeof value === 'number' ? value : undefined
  }
  readonly si = (path: string): number | undefined => {
    const value = this.number(path)
    if (value === undefined) return undefined
    let factor = this.factors.get(path)
    if (factor === undefined) this.factors.set(path, (factor = engineFactorOf(path)))
    return factor(value)
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
