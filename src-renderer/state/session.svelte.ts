import {
  check,
  entryAt,
  completeBuild,
  readStoredBuildValue,
  withEntry,
  type Build,
  type Checked,
  type Mistake,
  type StoredBuild,
} from '../../shared-engine/index.ts'
import { History } from './history.svelte.ts'

/** A build that is looked at and not taken, with words that tell it apart. */
export interface Preview {
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
  /** Answered everywhere: the preview while there is one, else the open build. */
  readonly build: Build = $derived(completeBuild(this.preview?.stored ?? this.stored))
  readonly checked: Checked = $derived(check(this.build))

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

  /** Puts a whole changed build in force, or answers with what stands against it. */
  change(name: string, next: StoredBuild, group: string | null = null): readonly Mistake[] {
    const read = readStoredBuildValue(next)
    if (!read.ok) return read.mistakes
    this.history.change(name, next, group)
    return []
  }

  /** Changes one entry; `undefined` empties it. */
  setEntry(name: string, path: string, value: unknown, group: string | null = null): readonly Mistake[] {
    return this.change(name, withEntry(this.stored, path, value), group)
  }
}
