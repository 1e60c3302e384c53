import { randomUUID } from 'node:crypto'
import { realpath } from 'node:fs/promises'
import path from 'node:path'

/** A file that a window works on. */
export interface OpenFile {
  readonly handle: string
  /** Which window, by its number. */
  readonly owner: number
  /** Full path, links followed, so that one file has one name. */
  readonly file: string
  /** What this window last read there or wrote there: what a save may replace. */
  fingerprints: readonly string[]
}

/** One name for one file: links followed where the file exists. */
export async function trueNameOf(file: string): Promise<string> {
  try {
    return await realpath(file)
  } catch {
    return path.resolve(file)
  }
}

/** Which window works on which file. The page knows files by handles, which no other window can use. */
export class OpenFiles {
  readonly #byHandle = new Map<string, OpenFile>()

  /** The window's open file of this name, or a new handle for it. */
  claim(owner: number, file: string): OpenFile {
    const known = [...this.#byHandle.values()].find((one) => one.owner === owner && one.file === file)
    if (known) return known
    const opened: OpenFile = { handle: randomUUID(), owner, file, fingerprints: [] }
    this.#byHandle.set(opened.handle, opened)
    return opened
  }

  /** `null` for a handle that is unknown, or another window's. */
  find(owner: number, handle: string): OpenFile | null {
    const opened = this.#byHandle.get(handle)
    return opened?.owner === owner ? opened : null
  }

  /** The other window that works on a file, `null` where there is none. */
  otherOwnerOf(owner: number, file: string): number | null {
    const other = [...this.#byHandle.values()].find((one) => one.owner !== owner && one.file === file)
    return other?.owner ?? null
  }

  release(owner: number, handle: string): void {
    if (this.find(owner, handle)) this.#byHandle.delete(handle)
  }

  releaseAll(owner: number): void {
    for (const opened of this.of(owner)) this.#byHandle.delete(opened.handle)
  }

  of(owner: number): readonly OpenFile[] {
    return [...this.#byHandle.values()].filter((one) => one.owner === owner)
  }
}
