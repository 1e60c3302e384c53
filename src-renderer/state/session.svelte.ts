import {
  check,
  entryAt,
  completeBuild,
  readStoredBuildValue,
  withEntry,
  type Build,
  type Checked,
  type LimitRow,
  type Mistake,
  type StoredBuild,
} from '../../shared-engine/index.ts'
import { withAssumptions } from '../../shared-engine/assume/assumed.ts'
import { restsOf, type Rests } from '../../shared-engine/explain/rests.ts'
import { figureOf } from '../../shared-engine/figures/table.ts'
import { surenessOf, type Sureness } from '../../shared-engine/uncertainty/sureness.ts'
import { History } from './history.svelte.ts'
import type { Operating } from './operating.svelte.ts'

/** Least throttle that can be looked at, %: the least that a cap may be. */
const leastLook = 1

/** A build that is looked at and not taken, with words that tell it apart. */
interface Preview {
  readonly stored: StoredBuild
  readonly words: string
}

/**
 * The open build: its entries as stored, the same with defaults applied, and everything that follows from them,
 * recomputed at once with every change (a check takes well under a millisecond).
 *
 * A change that would make the build impossible is refused with its mistakes, so what is in force is always whole.
 */
export class Session {
  readonly #look: Pick<Operating, 'throttleAsked'>
  #history: History<StoredBuild> | null = $state.raw(null)

  /** False until the first build was opened. */
  get isOpen(): boolean {
    return this.#history !== null
  }

  get history(): History<StoredBuild> {
    if (this.#history === null) throw new Error('no build is open yet')
    return this.#history
  }

  /** What is looked at without being taken: a candidate of a search. It lapses with every change of the build. */
  #preview: (Preview & { readonly of: StoredBuild }) | null = $state.raw(null)
  readonly preview: Preview | null = $derived(
    this.#preview !== null && this.#preview.of === this.stored ? this.#preview : null,
  )
  /** The preview while there is one, else the open build, at its own throttle cap. */
  readonly #capped: Build = $derived(completeBuild(this.preview?.stored ?? this.stored))
  /** Throttle that the strip looks at, %, where it is below the build's cap; null: the cap itself. */
  readonly lookedAt: number | null = $derived.by(() => {
    const asked = this.#look.throttleAsked
    if (asked === null) return null
    const percent = Math.max(leastLook, asked * 100)
    return percent < this.#capped.controller.throttleCapPercent ? percent : null
  })
  /** Answered everywhere: the open build or the preview, at the throttle that is looked at. */
  readonly build: Build = $derived(
    this.lookedAt === null ? this.#capped : atThrottle(this.#capped, this.lookedAt),
  )
  readonly checked: Checked = $derived(check(this.build))
  /** The same at the build's own throttle cap: axes over throttle, and what is worked out for the build itself. */
  readonly atCap: Checked = $derived(this.lookedAt === null ? this.checked : check(this.#capped))
  /** The build before the last change, or the open one beside a preview, at the throttle looked at; null: nothing to hold it beside. */
  readonly former: Checked | null = $derived.by(() => {
    const stored = this.preview !== null ? this.stored : (this.#history?.former ?? null)
    if (stored === null) return null
    const build = completeBuild(stored)
    return check(this.lookedAt === null ? build : atThrottle(build, this.lookedAt))
  })
  /** What of it rests on numbers that nobody has entered. */
  readonly rests: Rests = $derived(restsOf(this.checked))
  /** How many figures the numbers deserve, by the open build at its own cap: looking changes nothing of it. */
  readonly #sureness: Sureness = $derived(
    surenessOf(this.preview === null ? this.atCap : check(completeBuild(this.stored))),
  )
  /** The same of what was asked for first, and of the plots round it. */
  readonly known: 2 | 3 | undefined = $derived(
    this.rests.topSpeed.length > 0 ? 2 : this.figuresOf('topSpeedMps'),
  )
  /** Limits that no assumed number moves to another standing; the rest accuse nobody until those are entered. */
  readonly firmLimits: readonly LimitRow[] = $derived(
    this.checked.limits.filter(({ id }) => !this.rests.limits.has(id)),
  )

  /** @param look what is only looked at and changes nothing */
  constructor(look: Pick<Operating, 'throttleAsked'>) {
    this.#look = look
  }

  /**
   * Significant figures of a figure or of what is held against a limit; undefined where all are known. A limit's are three:
   * with two a value past it could look like the limit itself.
   */
  figuresOf(subject: string): 2 | 3 | undefined {
    const figure = figureOf(subject)
    return figure === undefined ? 3 : this.#sureness.get(figure.name)
  }

  get stored(): StoredBuild {
    return this.history.document
  }

  get isDirty(): boolean {
    return this.isOpen && !this.history.isSaved
  }

  /** Shows another build's answers until told otherwise (null) or until the open build changes. */
  show(preview: Preview | null): void {
    this.#preview = preview === null ? null : { ...preview, of: this.stored }
  }

  /** Opens a build; `saved` says whether a file holds exactly this. */
  open(stored: StoredBuild, saved: boolean): void {
    if (this.#history === null) this.#history = new History(stored, saved)
    else this.#history.reset(stored, saved)
  }

  /** The entry as stored; undefined where it was left empty. */
  entry(path: string): unknown {
    return entryAt(this.stored, path)
  }

  /** Puts a whole changed build in force, its estimates made anew, or answers with what stands against it. */
  change(name: string, next: StoredBuild, group: string | null = null): readonly Mistake[] {
    const whole = withAssumptions(next)
    const read = readStoredBuildValue(whole)
    if (!read.ok) return read.mistakes
    this.history.change(name, whole, group)
    return []
  }

  /** Changes one entry; `undefined` empties it. */
  setEntry(name: string, path: string, value: unknown, group: string | null = null): readonly Mistake[] {
    return this.change(name, withEntry(this.stored, path, value), group)
  }
}

function atThrottle(build: Build, throttleCapPercent: number): Build {
  return { ...build, controller: { ...build.controller, throttleCapPercent } }
}
