import { randomUUID } from 'node:crypto'
import { realpath } from 'node:fs/promises'
import path from 'node:path'
import { InTurn } from './in-turn.ts'

/** A file that a window works on, or was shown beside recovered work. */
export interface OpenFile {
  readonly handle: string
  /** Which window, by its number. */
  readonly owner: number
  /** Full path, links followed, so that one file has one name. */
  readonly file: string
  /** Reading, saving and comparing never overlap: each would judge the file by what the other is about to change. */
  readonly turn: InTurn
  /** The window works on it, so that no other may. */
  claimed: boolean
  /** What this window last read there or wrote there: what a save may replace. */
  fingerprints: readonly string[]
  /** What it was before saves of this window: a save asked for before the last one was answered still names one. */
  overtaken: readonly string[]
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

  /**
   * The window's open file of this name, or a new handle for it; `null` where another window works on it. Looks and
   * claims in one step: between the two, another window could do the same.
   */
  claim(owner: number, file: string): OpenFile | null {
    if (this.otherOwnerOf(owner, file) !== null) return null
    const opened = this.peek(owner, file)
    opened.claimed = true
    return opened
  }

  /** The same for a file that is looked at only: others may still have it. */
  peek(owner: number, file: string): OpenFile {
    const known = [...this.#byHandle.values()].find((one) => one.owner === owner && one.file === file)
    if (known) return known
    const state = { claimed: false, fingerprints: [], overtaken: [] }
    const opened: OpenFile = { handle: randomUUID(), owner, file, turn: new InTurn(), ...state }
    this.#byHandle.set(opened.handle, opened)
    return opened
  }

  /** `null` for a handle that is unknown, or another window's. */
  find(owner: number, handle: string): OpenFile | null {
    const opened = this.#byHandle.get(handle)
    return opened?.owner === owner ? opened : null
  }

  /** The window that works on a file, `null` where there is none. */
  ownerOf(file: string): number | null {
    return [...this.#byHandle.values()].find((one) => one.claimed && one.file === file)?.owner ?? null
  }

  /** The other window that works on a file, `null` where there is none. */
  otherOwnerOf(owner: number, file: string): number | null {
    const found = this.ownerOf(file)
    return found === owner ? null : found
  }

  release(owner: number, handle: string): void {
    const opened = this.find(owner, handle)
    if (!opened) return
    opened.claimed = false
    this.#byHandle.delete(handle)
  }

  of(owner: number): readonly OpenFile[] {
    return [...this.#byHandle.values()].filter((one) => one.owner === owner)
  }
}
