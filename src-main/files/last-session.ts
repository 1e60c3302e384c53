import path from 'node:path'
import { z } from 'zod'
import { saveAtomically } from './atomic-save.ts'
import type { FileSystem } from './file-system.ts'
import { InTurn } from './in-turn.ts'

const most = 8
const listSchema = z.array(z.string()).max(100)

/** The files that windows worked on when the program was last left, in a small file of its own data: opened again. */
export class LastSession {
  readonly #disk: FileSystem
  readonly #store: string
  readonly #turn = new InTurn()

  constructor(disk: FileSystem, store: string) {
    this.#disk = disk
    this.#store = store
  }

  /** Full paths that are still there; none where nothing was noted, or what was noted cannot be read. */
  async files(): Promise<readonly string[]> {
    try {
      const text = new TextDecoder().decode(await this.#disk.readFile(this.#store))
      const noted = listSchema.parse(JSON.parse(text)).slice(0, most)
      const there = await Promise.all(noted.map((file) => this.#isThere(file)))
      return noted.filter((_, index) => there[index] === true)
    } catch {
      return [] // absent or damaged: a convenience, not worth a question
    }
  }

  /** Replaces what was noted by what is open now. */
  note(files: readonly string[]): Promise<void> {
    return this.#turn.run(async () => {
      const bytes = new TextEncoder().encode(JSON.stringify(files.slice(0, most)))
      // What cannot be noted is not opened again: no reason to trouble anybody.
      await this.#disk.makeFolder(path.dirname(this.#store)).catch(() => undefined)
      await saveAtomically(this.#disk, { file: this.#store, bytes, replaces: 'anything' })
    })
  }

  async #isThere(file: string): Promise<boolean> {
    try {
      return (await this.#disk.stat(file)).isFile
    } catch {
      return false
    }
  }
}
