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

export interface Opened {
  handle: string
  name: string
  bytes: Uint8Array
  fingerprint: string
}
export type Saved = Omit<Opened, 'bytes'>

export interface FileParts {
  readonly disk: FileSystem
  readonly files: OpenFiles
  readonly recent: RecentFiles
  readonly outside: OutsideChanges
  /** Brings another window to the front. */
  readonly show: (owner: number) => void
  /** Told of each file opened or saved, for the system's own list. */
  readonly used: (file: string) => void
}

/** What windows do with files: the path of each stays here, the page gets a handle. */
export class FileService {
  readonly #parts: FileParts

  constructor(parts: FileParts) {
    this.#parts = parts
  }

  /** Reads a file for a window; one that another window works on is shown there instead. */
  async open(owner: number, wanted: string): Promise<Result<Opened>> {
    const { disk, files, show } = this.#parts
    const file = await trueNameOf(wanted)
    const other = files.otherOwnerOf(owner, file)
    if (other !== null) {
      show(other)
      return fileFailed('file-open-elsewhere', file, 'both windows as they were')
    }
    const read = await readWhole(disk, file)
    if (!read.ok) return read
    const opened = await this.#claim(owner, file, [read.value.fingerprint])
    return succeeded({ handle: opened.handle, name: path.basename(file), ...read.value })
  }

  /** Reads an open file again. What is read here is what a later save may replace. */
  async read(owner: number, handle: string): Promise<Result<Opened>> {
    const opened = this.#parts.files.find(owner, handle)
    if (!opened) return unknownHandle()
    const read = await readWhole(this.#parts.disk, opened.file)
    if (!read.ok) return read
    opened.fingerprints = [read.value.fingerprint]
    return succeeded({ handle, name: path.basename(opened.file), ...read.value })
  }

  async save(owner: number, handle: string, text: string, fingerprint: string): Promise<Result<Saved>> {
    const opened = this.#parts.files.find(owner, handle)
    if (!opened) return unknownHandle()
    const overwrite = fingerprint === 'overwrite'
    // What this window wrote itself counts too: the page misses it where the disk did not confirm a save.
    const known = opened.fingerprints.includes(fingerprint) ? opened.fingerprints : [fingerprint]
    return this.#write(opened, text, overwrite ? 'anything' : known)
  }

  /** Saves to a path that the person chose (their dialog asked about overwriting). */
  async saveAs(owner: number, wanted: string, text: string): Promise<Result<Saved>> {
    const { files, show } = this.#parts
    const file = await trueNameOf(wanted)
    const other = files.otherOwnerOf(owner, file)
    if (other !== null) {
      show(other)
      return fileFailed('file-open-elsewhere', file, 'both windows as they were')
    }
    const known = files.of(owner).some((one) => one.file === file)
    const opened = files.claim(owner, file)
    const saved = await this.#write(opened, text, 'anything')
    if (!saved.ok && !known) files.release(owner, opened.handle)
    return saved
  }

  release(owner: number, handle: string): void {
    if (!this.#parts.files.find(owner, handle)) return
    this.#parts.outside.unwatch(handle)
    this.#parts.files.release(owner, handle)
  }

  releaseAll(owner: number): void {
    for (const opened of this.#parts.files.of(owner)) this.release(owner, opened.handle)
  }

  /** Recovered work together with its file as it is now. */
  async withFile(owner: number, work: KeptWork) {
    const { files } = this.#parts
    const { id, name, text, keptAt } = work
    const bare = { id, name, text, keptAt, file: null, fileChangedSince: false }
    if (work.file === null || files.otherOwnerOf(owner, work.file) !== null) return bare
    const file = await this.open(owner, work.file)
    if (!file.ok) return bare
    return { ...bare, file: file.value, fileChangedSince: file.value.fingerprint !== work.fingerprint }
  }

  async #write(opened: OpenFile, text: string, replaces: readonly string[] | 'anything') {
    const bytes = new TextEncoder().encode(text)
    const before = opened.fingerprints
    const saved = await this.#saveKnowing(opened, bytes, replaces)
    if (!saved.ok) {
      if (saved.mistakes[0]?.code !== 'disk-unconfirmed') opened.fingerprints = before
      return saved
    }
    await this.#claim(opened.owner, opened.file, [saved.value])
    const name = path.basename(opened.file)
    return succeeded<Saved>({ handle: opened.handle, name, fingerprint: saved.value })
  }

  /** The new content is known before it is there, or the watcher would take our own save for another program's. */
  #saveKnowing(opened: OpenFile, bytes: Uint8Array, replaces: readonly string[] | 'anything') {
    opened.fingerprints = [...opened.fingerprints, fingerprintOf(bytes)]
    return saveAtomically(this.#parts.disk, { file: opened.file, bytes, replaces })
  }

  async #claim(owner: number, file: string, fingerprints: readonly string[]): Promise<OpenFile> {
    const { files, recent, outside, used } = this.#parts
    const opened = files.claim(owner, file)
    opened.fingerprints = fingerprints
    outside.watch(opened)
    used(file)
    await recent.add(file)
    return opened
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
