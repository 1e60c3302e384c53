import { randomUUID } from 'node:crypto'
import path from 'node:path'
import { z } from 'zod'
import type { Result } from '../../shared-engine/mistakes/mistake.ts'
import { saveAtomically } from './atomic-save.ts'
import type { FileSystem } from './file-system.ts'
import { InTurn } from './in-turn.ts'
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
  /** What else that file may hold by this window's own doing: a save that was not answered yet. */
  known: z.array(z.string()).default([]),
  /** A save that began after this was kept: where the file holds that, this is not unsaved any more. */
  savedAs: z.string().nullable().default(null),
  keptAt: z.string(),
})

type Entry = Omit<z.infer<typeof entrySchema>, 'format' | 'version'>
type Kept = Omit<Entry, 'savedAs'>
export type KeptWork = Entry & { readonly id: string }

const nameOf = (id: string) => `${id}.unsaved.json`
const idOf = (name: string) => /^([0-9a-f-]{36})\.unsaved\.json$/.exec(name)?.[1] ?? null
/** Whose work a kill ended the writing of. */
const halfOf = (name: string) =>
  /^\.([0-9a-f-]{36})\.unsaved\.json\.[0-9a-f]{12}\.new$/.exec(name)?.[1] ?? null

/** One window's place in the journal. */
interface Place {
  /** Writing and forgetting never overlap. */
  readonly turn: InTurn
  /** What lies on the disk, `null` for nothing; and which of the window's keeps that was, from 1. */
  kept: Entry | null
  keptAs: number
  /** Keeps that the window has asked for. */
  keeps: number
  /** Not yet being written. */
  waiting: { readonly newest: { work: Kept; keep: number }; readonly answer: Promise<Result<string>> } | null
}

/**
 * Unsaved work, one file for each window, beside the program's own data: never in a build's folder. What the windows
 * of this run own is theirs; what is left from an earlier run is offered as recovered, and stays until the person
 * takes it or throws it away.
 */
export class Journal {
  readonly #disk: FileSystem
  readonly #folder: string
  readonly #living = new Set<string>()
  readonly #places = new Map<string, Place>()

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

  /** On a disk slower than the typing, work that waits to be written is replaced by newer work, not queued before it. */
  keep(id: string, work: Kept): Promise<Result<string>> {
    const place = this.#placeOf(id)
    place.keeps += 1
    if (place.waiting) {
      Object.assign(place.waiting.newest, { work, keep: place.keeps })
      return place.waiting.answer
    }
    const newest = { work, keep: place.keeps }
    const answer = place.turn.run(() => {
      if (place.waiting?.newest === newest) place.waiting = null
      const entry = { ...newest.work, savedAs: null }
      place.kept = entry
      place.keptAs = newest.keep
      return this.#write(id, entry)
    })
    place.waiting = { newest, answer }
    return answer
  }

  /**
   * What is kept is about to be saved: noted first, so that a kill right after the save leaves nothing to recover. Saves wait
   * for one another; what was kept meanwhile is newer than what is saved, and stays unsaved.
   *
   * @param keeps how many keeps the window had asked for when the text that is saved was what it showed
   */
  async saving(id: string, fingerprint: string, keeps: number): Promise<void> {
    const place = this.#placeOf(id)
    // What is kept from now on may be newer than what is saved: it is not put in the place of what waits.
    place.waiting = null
    await place.turn.run(async () => {
      if (place.kept === null) return
      const { kept, keptAs } = place
      place.kept =
        keptAs > keeps ? { ...kept, known: [...kept.known, fingerprint] } : { ...kept, savedAs: fingerprint }
      await this.#write(id, place.kept)
    })
  }

  async #write(id: string, entry: Entry): Promise<Result<string>> {
    const bytes = new TextEncoder().encode(
      JSON.stringify({ format: 'pitchline-unsaved', version: 1, ...entry }),
    )
    try {
      await this.#disk.makeFolder(this.#folder)
    } catch (thrown) {
      if (codeOf(thrown) === '') throw thrown
      // The write below meets the same trouble and reports it.
    }
    return saveAtomically(this.#disk, { file: this.#fileOf(id), bytes, replaces: 'anything' })
  }

  forget(id: string): Promise<void> {
    const place = this.#placeOf(id)
    place.waiting = null
    return place.turn.run(async () => {
      place.kept = null
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
    const names = await this.#names()
    await this.#removeHalves(names)
    const ids = names.map(idOf).filter((id) => id !== null && !this.#living.has(id))
    const all = await Promise.all(ids.map((id) => (id === null ? null : this.#read(id))))
    return all.filter((work) => work !== null).sort((a, b) => (a.keptAt < b.keptAt ? 1 : -1))
  }

  /** What an earlier run was killed over in the writing: no later save of the same name takes it away. */
  async #removeHalves(names: readonly string[]): Promise<void> {
    const halves = names.filter((name) => {
      const id = halfOf(name)
      return id !== null && !this.#living.has(id)
    })
    for (const name of halves) await this.#disk.remove(path.join(this.#folder, name)).catch(() => undefined)
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
      const { format: _format, version: _version, ...entry } = entrySchema.parse(JSON.parse(text))
      return { id, ...entry }
    } catch {
      return null
    }
  }

  #placeOf(id: string): Place {
    const place = this.#places.get(id) ?? {
      turn: new InTurn(),
      kept: null,
      keptAs: 0,
      keeps: 0,
      waiting: null,
    }
    this.#places.set(id, place)
    return place
  }

  #fileOf(id: string): string {
    return path.join(this.#folder, nameOf(id))
  }
}
