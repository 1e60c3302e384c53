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

  readonly build: Build = $derived(completeBuild(this.stored))
  readonly checked: Checked = $derived(check(this.build))

  get stored(): StoredBuild {
    return this.history.document
  }

  get isDirty(): boolean {
    return this.isOpen && !this.history.isSaved
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
