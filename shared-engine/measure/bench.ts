import { completeBuild, readStoredBuildValue } from '../entries/read.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import type { Machine } from '../machine/parts.ts'
import { buildSetter } from '../uncertainty/build.ts'
import { blankBuild } from './blank.ts'

/** A build under readings: the machine is made when a formula asks for it. */
class Source {
  readonly build: Build
  #machine: Machine | null = null

  constructor(build: Build) {
    this.build = build
  }

  get machine(): Machine {
    this.#machine ??= machineOf(withGroups(this.build))
    return this.#machine
  }
}

let blank: Build | null = null

/** What formulas fall back on where there is no build: entries' defaults, and required ones that are always given. */
export function blankOf(): Build {
  if (blank === null) {
    const read = readStoredBuildValue(blankBuild)
    if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
    blank = completeBuild(read.value)
  }
  return blank
}

/** A build with the groups that readings may put entries into. */
function withGroups(build: Build): Build {
  const { cooling, track } = blankOf()
  return {
    ...build,
    cooling: { ...cooling, ...build.cooling } as Build['cooling'],
    track: { ...build.track, tooth: { ...track.tooth, ...build.track.tooth } as Build['track']['tooth'] },
  }
}

interface Contents {
  readonly columns: ReadonlyMap<string, readonly number[]>
  readonly means: ReadonlyMap<string, number>
  readonly plain: ReadonlyMap<string, number>
  /** Names and paths that were given, or that build or default have. */
  readonly known: ReadonlySet<string>
  readonly words: ReadonlyMap<string, string>
  readonly source: Source
}

/** What the person read and gave, as a test's formulas see it. Never changes: an altered one is a new one. */
export class Bench {
  readonly #contents: Contents

  constructor(contents: Contents) {
    this.#contents = contents
  }

  /** A bench over a build whose entries are replaced by what was given by path. */
  static over(
    build: Build,
    entries: ReadonlyMap<string, number | string>,
    rest: Omit<Contents, 'source'>,
  ): Bench {
    let laid = build
    for (const [path, value] of entries) laid = withEntryOf(laid, path, value)
    return new Bench({ ...rest, source: new Source(laid) })
  }

  get rows(): number {
    return [...this.#contents.columns.values()][0]?.length ?? 0
  }

  /** Names of the columns that are there. */
  get columns(): readonly string[] {
    return [...this.#contents.columns.keys()]
  }

  /** Whether a column or list is there. */
  has(name: string): boolean {
    return this.#contents.columns.has(name) || this.#contents.means.has(name)
  }

  /** A column of the rows, in its bench unit. */
  column(name: string): readonly number[] {
    return this.#contents.columns.get(name) ?? []
  }

  /** Mean of a list; NaN of an empty one. */
  mean(name: string): number {
    return this.#contents.means.get(name) ?? NaN
  }

  /** Whether a given quantity is there: from the readings, from the build, or by default. */
  knows(name: string): boolean {
    return this.#contents.known.has(name)
  }

  plain(name: string): number {
    return this.#contents.plain.get(name) ?? NaN
  }

  word(name: string): string {
    return this.#contents.words.get(name) ?? ''
  }

  /** The entry in force at a path, in its bench unit; NaN where there is none. */
  entry(path: string): number {
    const value = valueAt(this.#contents.source.build, keysOf(path))
    return typeof value === 'number' ? value : NaN
  }

  /** The machine of the build with what was given put in. */
  get machine(): Machine {
    return this.#contents.source.machine
  }

  withColumn(name: string, values: readonly number[]): Bench {
    return new Bench({ ...this.#contents, columns: new Map(this.#contents.columns).set(name, values) })
  }

  withMean(name: string, value: number): Bench {
    return new Bench({ ...this.#contents, means: new Map(this.#contents.means).set(name, value) })
  }

  withPlain(name: string, value: number): Bench {
    return new Bench({ ...this.#contents, plain: new Map(this.#contents.plain).set(name, value) })
  }

  withEntry(path: string, value: number): Bench {
    const { build } = this.#contents.source
    return new Bench({ ...this.#contents, source: new Source(withEntryOf(build, path, value)) })
  }
}

function withEntryOf(build: Build, path: string, value: number | string): Build {
  if (typeof value === 'number') return buildSetter(build, [path])(Float64Array.of(value))
  const keys = keysOf(path)
  const [group = '', name = '', inner] = keys
  const holder = valueAt(build, [group]) as Readonly<Record<string, unknown>> | undefined
  if (inner === undefined) return { ...build, [group]: { ...holder, [name]: value } }
  const below = valueAt(build, [group, name]) as Readonly<Record<string, unknown>> | undefined
  return { ...build, [group]: { ...holder, [name]: { ...below, [inner]: value } } }
}
