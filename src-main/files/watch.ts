import { watch as watchFolder, type FSWatcher } from 'node:fs'
import path from 'node:path'
import type { FileSystem } from './file-system.ts'
import type { OpenFile } from './open-files.ts'
import { fingerprintNow } from './read.ts'

/** Long enough for an editor to finish writing, short enough to be noticed at once. */
const settleMilliseconds = 200

type ChangedOutside = (opened: OpenFile, gone: boolean) => void

/**
 * Notices when another program changes or removes an open file. Folders are watched, not files: most programs save by
 * putting a new file in the old one's place. Each change is reported once.
 */
export class OutsideChanges {
  readonly #disk: FileSystem
  readonly #report: ChangedOutside
  readonly #watchers = new Map<string, FSWatcher>()
  /** Looks that wait for their turn: on a slow disk one is enough. */
  readonly #looking = new Map<string, Promise<void>>()
  readonly #timers = new Map<string, NodeJS.Timeout>()
  /** Handle → the state last reported (`null`: gone), so that one change is one message. */
  readonly #lastReported = new Map<string, string | null>()

  constructor(disk: FileSystem, report: ChangedOutside) {
    this.#disk = disk
    this.#report = report
  }

  watch(opened: OpenFile): void {
    if (this.#watchers.has(opened.handle)) return
    try {
      const watcher = watchFolder(path.dirname(opened.file), { persistent: false }, () => this.#soon(opened))
      watcher.on('error', () => this.unwatch(opened.handle))
      this.#watchers.set(opened.handle, watcher)
    } catch {
      // Some disks can't be watched; the look on every return to the window remains.
    }
  }

  unwatch(handle: string): void {
    this.#watchers.get(handle)?.close()
    this.#watchers.delete(handle)
    clearTimeout(this.#timers.get(handle))
    this.#timers.delete(handle)
    this.#lastReported.delete(handle)
  }

  /** Compares the file with what its window last read or wrote, not while it is being read or written. */
  look(opened: OpenFile): Promise<void> {
    const { handle } = opened
    const pending = this.#looking.get(handle)
    if (pending) return pending
    const looking = opened.turn.run(() => {
      this.#looking.delete(handle)
      return opened.claimed ? this.#compare(opened) : Promise.resolve()
    })
    this.#looking.set(handle, looking)
    return looking
  }

  async #compare(opened: OpenFile): Promise<void> {
    let now: string | null
    try {
      now = await fingerprintNow(this.#disk, opened.file)
    } catch {
      // Half-written, or held for a moment: the next look will show.
      return
    }
    if (now !== null && opened.fingerprints.includes(now)) {
      this.#lastReported.delete(opened.handle)
      return
    }
    if (this.#lastReported.has(opened.handle) && this.#lastReported.get(opened.handle) === now) return
    this.#lastReported.set(opened.handle, now)
    this.#report(opened, now === null)
  }

  #soon(opened: OpenFile): void {
    clearTimeout(this.#timers.get(opened.handle))
    this.#timers.set(
      opened.handle,
      setTimeout(() => void this.look(opened), settleMilliseconds),
    )
  }
}
