import { createHash } from 'node:crypto'
import path from 'node:path'
import { z } from 'zod'
import { saveAtomically } from './atomic-save.ts'
import type { FileSystem } from './file-system.ts'
import { InTurn } from './in-turn.ts'

const most = 12
const listSchema = z.array(z.string()).max(100)

interface RecentPath {
  /** Stands for the path where the path may not be said. */
  readonly id: string
  readonly file: string
  readonly missing: boolean
}

const idOf = (file: string) => createHash('sha256').update(file).digest('hex').slice(0, 24)

/** The files opened and saved last, newest first, in a small file of the program's own data. */
export class RecentFiles {
  readonly #disk: FileSystem
  readonly #store: string
  /** Two files opened together must both be in the list. */
  readonly #turn = new InTurn()
  #files: readonly string[] | null = null

  constructor(disk: FileSystem, store: string) {
    this.#disk = disk
    this.#store = store
  }

  async list(): Promise<readonly RecentPath[]> {
    const files = await this.#read()
    return Promise.all(
      files.map(async (file) => ({ id: idOf(file), file, missing: !(await this.#isThere(file)) })),
    )
  }

  async fileOf(id: string): Promise<string | null> {
    return (await this.#read()).find((file) => idOf(file) === id) ?? null
  }

  add(file: string): Promise<void> {
    return this.#turn.run(async () => {
      const others = (await this.#read()).filter((one) => one !== file)
      await this.#write([file, ...others].slice(0, most))
    })
  }

  clear(): Promise<void> {
    return this.#turn.run(() => this.#write([]))
  }

  async #isThere(file: string): Promise<boolean> {
    try {
      return (await this.#disk.stat(file)).isFile
    } catch {
      return false
    }
  }

  async #read(): Promise<readonly string[]> {
    if (this.#files) return this.#files
    try {
      const text = new TextDecoder().decode(await this.#disk.readFile(this.#store))
      this.#files = listSchema.parse(JSON.parse(text)).slice(0, most)
    } catch {
      // Absent or damaged: a list of conveniences is begun anew, not worth a question.
      this.#files = []
    }
    return this.#files
  }

  async #write(files: readonly string[]): Promise<void> {
    this.#files = files
    const bytes = new TextEncoder().encode(JSON.stringify(files))
    // A list that can't be kept is no reason to trouble anybody: it holds until the window closes.
    await this.#disk.makeFolder(path.dirname(this.#store)).catch(() => undefined)
    await saveAtomically(this.#disk, { file: this.#store, bytes, replaces: 'anything' })
  }
}
