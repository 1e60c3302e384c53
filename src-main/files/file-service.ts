import path from 'node:path'
import { failed, succeeded, type Result } from '../../shared-engine/mistakes/mistake.ts'
import { saveAtomically } from './atomic-save.ts'
import type { FileSystem } from './file-system.ts'
import type { KeptWork } from './journal.ts'
import { trueNameOf, type OpenFile, type OpenFiles } from './open-files.ts'
import { fingerprintOf, readWhole } from './read.ts'
import type { RecentFiles } from './recent.ts'
import { fileFailed } from './trouble.ts'
import type { OutsideChanges } from './watch.ts'

interface Opened {
  handle: string
  name: string
  bytes: Uint8Array
  fingerprint: string
}
type Saved = Omit<Opened, 'bytes'>

/** What a window saves. */
interface SavedText {
  readonly text: string
  /** How many times the window had asked for its unsaved work to be kept when it showed this text. */
  readonly keeps: number
}

interface FileParts {
  readonly disk: FileSystem
  readonly files: OpenFiles
  readonly recent: RecentFiles
  readonly outside: OutsideChanges
  /** Brings another window to the front. */
  readonly show: (owner: number) => void
  /** Called with each file opened or saved, for the system's own list. */
  readonly used: (file: string) => void
  /** Called with what a window is about to save, before it is on the disk; `keeps` as {@link SavedText} has it. */
  readonly saving: (owner: number, fingerprint: string, keeps: number) => Promise<void>
}

/** What windows do with files: the path of each stays here, the page gets a handle. */
export class FileService {
  readonly #parts: FileParts

  constructor(parts: FileParts) {
    this.#parts = parts
  }

  /** Reads a file for a window; one that another window works on is shown there instead. */
  async open(owner: number, wanted: string): Promise<Result<Opened>> {
    const { disk, files } = this.#parts
    const file = await trueNameOf(wanted)
    const opened = files.claim(owner, file)
    if (!opened) return this.#elsewhere(owner, file)
    return opened.turn.run(async () => {
      const read = await readWhole(disk, file)
      if (!read.ok) {
        this.#dropUnused(opened)
        return read
      }
      await this.#settle(opened, read.value.fingerprint, [])
      return succeeded({ handle: opened.handle, name: path.basename(file), ...read.value })
    })
  }

  /** Reads an open file again. What is read here is what a later save may replace. */
  async read(owner: number, handle: string): Promise<Result<Opened>> {
    const { disk, files } = this.#parts
    const opened = files.find(owner, handle)
    if (!opened) return unknownHandle()
    if (!files.claim(owner, opened.file)) return this.#elsewhere(owner, opened.file)
    return opened.turn.run(async () => {
      const read = await readWhole(disk, opened.file)
      if (!read.ok) return read
      await this.#settle(opened, read.value.fingerprint, [])
      return succeeded({ handle, name: path.basename(opened.file), ...read.value })
    })
  }

  async save(owner: number, handle: string, saved: SavedText, fingerprint: string): Promise<Result<Saved>> {
    const { files } = this.#parts
    const opened = files.find(owner, handle)
    if (!opened) return unknownHandle()
    if (!files.claim(owner, opened.file)) return this.#elsewhere(owner, opened.file)
    return opened.turn.run(() => {
      if (fingerprint === 'overwrite') return this.#write(opened, saved, 'anything')
      // What this window wrote itself counts too: the page misses it where the disk did not confirm a save, and where
      // it asked for this save before the last one was answered.
      const ours = [...opened.fingerprints, ...opened.overtaken].includes(fingerprint)
      return this.#write(opened, saved, ours ? opened.fingerprints : [fingerprint])
    })
  }

  /** Saves to a path that the person chose (their dialog asked about overwriting). */
  async saveAs(owner: number, wanted: string, text: SavedText): Promise<Result<Saved>> {
    const file = await trueNameOf(wanted)
    const opened = this.#parts.files.claim(owner, file)
    if (!opened) return this.#elsewhere(owner, file)
    return opened.turn.run(async () => {
      const saved = await this.#write(opened, text, 'anything')
      if (!saved.ok) this.#dropUnused(opened)
      return saved
    })
  }

  release(owner: number, handle: string): void {
    if (!this.#parts.files.find(owner, handle)) return
    this.#parts.outside.unwatch(handle)
    this.#parts.files.release(owner, handle)
  }

  releaseAll(owner: number): void {
    for (const opened of this.#parts.files.of(owner)) this.release(owner, opened.handle)
  }

  /**
   * Recovered work together with its file as it is now, which stays free for other windows until this one reads it;
   * `null` where the file holds it already, or holds what was saved after it was kept: then nothing is left to recover.
   */
  async withFile(owner: number, work: KeptWork) {
    const { disk, files } = this.#parts
    const { id, name, text, keptAt } = work
    const bare = { id, name, text, keptAt, file: null, fileChangedSince: false }
    if (work.file === null) return bare
    const file = await trueNameOf(work.file)
    const read = await readWhole(disk, file)
    if (!read.ok) return bare
    const { fingerprint } = read.value
    const isSaved =
      fingerprint === work.savedAs || fingerprint === fingerprintOf(new TextEncoder().encode(text))
    if (isSaved) return null
    if (files.otherOwnerOf(owner, file) !== null) return bare
    const { handle } = files.peek(owner, file)
    const fileChangedSince = fingerprint !== work.fingerprint && !work.known.includes(fingerprint)
    return { ...bare, file: { handle, name: path.basename(file), ...read.value }, fileChangedSince }
  }

  async #write(opened: OpenFile, { text, keeps }: SavedText, replaces: readonly string[] | 'anything') {
    const bytes = new TextEncoder().encode(text)
    const before = opened.fingerprints
    const saved = await this.#saveKnowing(opened, bytes, keeps, replaces)
    if (!saved.ok) {
      if (saved.mistakes[0]?.code !== 'disk-unconfirmed') opened.fingerprints = before
      return saved
    }
    const overtaken = [...opened.overtaken, ...before].filter((one) => one !== saved.value)
    await this.#settle(opened, saved.value, overtaken)
    const name = path.basename(opened.file)
    return succeeded<Saved>({ handle: opened.handle, name, fingerprint: saved.value })
  }

  /** The new content is known before it is there: unsaved work kept meanwhile names it too. */
  async #saveKnowing(
    opened: OpenFile,
    bytes: Uint8Array,
    keeps: number,
    replaces: readonly string[] | 'anything',
  ) {
    const fingerprint = fingerprintOf(bytes)
    opened.fingerprints = [...opened.fingerprints, fingerprint]
    await this.#parts.saving(opened.owner, fingerprint, keeps)
    return saveAtomically(this.#parts.disk, { file: opened.file, bytes, replaces })
  }

  /** The file is what this window read or wrote. */
  async #settle(opened: OpenFile, fingerprint: string, overtaken: readonly string[]): Promise<void> {
    const { recent, outside, used } = this.#parts
    opened.fingerprints = [fingerprint]
    // A person's own changes between two answers are few; this bounds what a page gone wrong can pile up.
    opened.overtaken = overtaken.slice(-100)
    // The window may have let go of it, or closed, before the disk answered.
    if (opened.claimed) outside.watch(opened)
    used(opened.file)
    await recent.add(opened.file)
  }

  #elsewhere<T>(owner: number, file: string): Result<T> {
    const other = this.#parts.files.otherOwnerOf(owner, file)
    if (other !== null) this.#parts.show(other)
    return fileFailed('file-open-elsewhere', file, 'both windows as they were')
  }

  /** A file that was never read or written is none that this window works on. */
  #dropUnused(opened: OpenFile): void {
    if (opened.fingerprints.length === 0) this.release(opened.owner, opened.handle)
  }
}

function unknownHandle<T>(): Result<T> {
  return failed([
    {
      code: 'request-refused',
      path: '',
      value: 'a file that this window has not opened',
      allowed: '',
      kept: 'your work in this window',
    },
  ])
}
