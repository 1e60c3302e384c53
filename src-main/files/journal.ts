import { randomUUID } from 'node:crypto'
import path from 'node:path'
import { z } from 'zod'
import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import { saveAtomically } from './atomic-save.ts'
import type { FileSystem } from './file-system.ts'
import { codeOf } from './trouble.ts'

/** One window's unsaved work as it lies on the disk. */
const entrySchema = z.object({
  format: z.literal('pitchline-unsaved'),
  version: z.literal(1),
  name: z.string(),
  text: z.string(),
  /** The file it belongs to, and what that was when the work on it began. */
  file: z.string().nullable(),
  fingerprint: z.string().nullable(),
  keptAt: z.string(),
})

export type Kept = Omit<z.infer<typeof entrySchema>, 'format' | 'version'>
export type KeptWork = Kept & { readonly id: string }

const nameOf = (id: string) => `${id}.unsaved.json`
const idOf = (name: string) => /^([0-9a-f-]{36})\.unsaved\.json$/.exec(name)?.[1] ?? null

/**
 * Unsaved work, one file for each window, beside the program's own data: never in a build's folder. What the windows
 * of this run own is theirs; what is left from an earlier run is offered as recovered, and stays until the person
 * takes it or throws it away.
 */
export class Journal {
  readonly #disk: FileSystem
  readonly #folder: string
  readonly #living = new Set<string>()
  /** The last order per entry: writing and forgetting one entry never overlap. */
  readonly #queue = new Map<string, Promise<unknown>>()

  constructor(disk: FileSystem, folder: string) {
    this.#disk = disk
    this.#folder = folder
  }

  /** A place for one window's work, owned by this run. */
  begin(): string {
    const id = randomUUID()
    this.#living.add(id)
    return id
  }

  keep(id: string, work: Kept): Promise<Result<string>> {
    return this.#inTurn(id, async () => {
      const entry = { format: 'pitchline-unsaved', version: 1, ...work }
      const bytes = new TextEncoder().encode(JSON.stringify(entry))
      try {
        await this.#disk.makeFolder(this.#folder)
      } catch (thrown) {
        if (codeOf(thrown) === '') throw thrown
        // The write below meets the same trouble and tells it.
      }
      return saveAtomically(this.#disk, { file: this.#fileOf(id), bytes, replaces: 'anything' })
    })
  }

  forget(id: string): Promise<void> {
    return this.#inTurn(id, async () => {
      try {
        await this.#disk.remove(this.#fileOf(id))
      } catch (thrown) {
        if (codeOf(thrown) !== 'ENOENT') throw thrown
      }
    })
  }

  /** A window is gone without saying what becomes of its work: from now on that is recovered work. */
  leave(id: string): void {
    this.#living.delete(id)
  }

  /** Is there such recovered work, owned by no window? */
  async isRecovered(id: string): Promise<boolean> {
    return (await this.recovered()).some((work) => work.id === id)
  }

  /** Work that no window of this run owns, newest first. What can't be read is left alone, not thrown away. */
  async recovered(): Promise<readonly KeptWork[]> {
    const ids = (await this.#names()).map(idOf).filter((id) => id !== null && !this.#living.has(id))
    const all = await Promise.all(ids.map((id) => (id === null ? null : this.#read(id))))
    return all.filter((work) => work !== null).sort((a, b) => (a.keptAt < b.keptAt ? 1 : -1))
  }

  async #names(): Promise<readonly string[]> {
    try {
      return await this.#disk.list(this.#folder)
    } catch {
      return []
    }
  }

  async #read(id: string): Promise<KeptWork | null> {
    try {
      const text = new TextDecoder().decode(await this.#disk.readFile(this.#fileOf(id)))
      const { name, text: kept, file, fingerprint, keptAt } = entrySchema.parse(JSON.parse(text))
      return { id, name, text: kept, file, fingerprint, keptAt }
    } catch {
      return null
    }
  }

  #fileOf(id: string): string {
    return path.join(this.#folder, nameOf(id))
  }

  #inTurn<T>(id: string, order: () => Promise<T>): Promise<T> {
    const before = this.#queue.get(id) ?? Promise.resolve()
    const answer = before.then(order, order)
    this.#queue.set(
      id,
      answer.catch(() => undefined),
    )
    return answer
  }
}
