import type { UnsavedWork } from '../host.ts'

const prefix = 'pitchline.unsaved.'
const store = 'work'

interface KeptWork {
  readonly id: string
  readonly name: string
  readonly text: string
  readonly keptAt: string
}

/**
 * Unsaved work in the browser's own database, one entry for each tab. A tab holds a lock of its entry's name as long as
 * it lives, however it ends: an entry that nobody holds is recovered work.
 *
 * Each entry is forced to the disk before it counts as kept (`durability: 'strict'`). `localStorage` is no place for
 * it: a browser writes that from its memory at leisure, and one that crashed lost half a minute of typing.
 */
export class Unsaved {
  readonly #id = crypto.randomUUID()
  #opening: Promise<IDBDatabase> | null = null

  /** Call once, before anything is kept. */
  hold(): void {
    void navigator.locks?.request(prefix + this.#id, () => new Promise(() => undefined))
  }

  /** Throws where the storage is full or forbidden. */
  async keep({ name, text }: UnsavedWork): Promise<void> {
    const entry: KeptWork = { id: this.#id, name, text, keptAt: new Date().toISOString() }
    await this.#write((work) => work.put(entry))
  }

  forget(): Promise<void> {
    return this.discard(this.#id)
  }

  /** Newest first; none where the storage is forbidden. */
  async recovered(): Promise<readonly KeptWork[]> {
    const { held = [] } = (await navigator.locks?.query()) ?? {}
    const living = new Set(held.map((lock) => lock.name))
    return (await this.#all())
      .filter(({ id }) => id !== this.#id && !living.has(prefix + id))
      .sort((a, b) => (a.keptAt < b.keptAt ? 1 : -1))
  }

  async discard(id: string): Promise<void> {
    // What can't be thrown away is offered once more: no reason to trouble anybody.
    await this.#write((work) => work.delete(id)).catch(() => undefined)
  }

  async #all(): Promise<readonly KeptWork[]> {
    try {
      const reading = (await this.#database()).transaction(store).objectStore(store).getAll()
      return (await settled(reading)) as KeptWork[]
    } catch {
      return []
    }
  }

  async #write(order: (work: IDBObjectStore) => unknown): Promise<void> {
    const database = await this.#database()
    const writing = database.transaction(store, 'readwrite', { durability: 'strict' })
    order(writing.objectStore(store))
    await new Promise<void>((done, failed) => {
      writing.oncomplete = () => done()
      writing.onabort = () => failed(writing.error ?? new Error('the database failed'))
    })
  }

  #database(): Promise<IDBDatabase> {
    this.#opening ??= opened().catch((thrown: unknown) => {
      this.#opening = null
      throw thrown
    })
    return this.#opening
  }
}

async function opened(): Promise<IDBDatabase> {
  const opening = indexedDB.open('pitchline-unsaved', 1)
  opening.onupgradeneeded = () => opening.result.createObjectStore(store, { keyPath: 'id' })
  return settled(opening)
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((done, failed) => {
    request.onsuccess = () => done(request.result)
    request.onerror = () => failed(request.error ?? new Error('the database failed'))
  })
}
