import type { UnsavedWork } from '../host.ts'

const prefix = 'pitchline.unsaved.'

export interface KeptWork {
  readonly id: string
  readonly name: string
  readonly text: string
  readonly keptAt: string
}

/**
 * Unsaved work in the browser's own storage, one entry for each tab. A tab holds a lock of its entry's name as long as
 * it lives, however it ends: an entry that nobody holds is recovered work.
 */
export class Unsaved {
  readonly #key = `${prefix}${crypto.randomUUID()}`

  /** Call once, before anything is kept. */
  hold(): void {
    void navigator.locks?.request(this.#key, () => new Promise(() => undefined))
  }

  /** Throws where the storage is full or forbidden. */
  keep({ name, text }: UnsavedWork): void {
    localStorage.setItem(this.#key, JSON.stringify({ name, text, keptAt: new Date().toISOString() }))
  }

  forget(): void {
    localStorage.removeItem(this.#key)
  }

  /** Newest first. */
  async recovered(): Promise<readonly KeptWork[]> {
    const { held = [] } = (await navigator.locks?.query()) ?? {}
    const living = new Set(held.map((lock) => lock.name))
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(prefix) && key !== this.#key && !living.has(key))
      .map(readEntry)
      .filter((work) => work !== null)
      .sort((a, b) => (a.keptAt < b.keptAt ? 1 : -1))
  }

  discard(id: string): void {
    localStorage.removeItem(`${prefix}${id}`)
  }
}

function readEntry(key: string): KeptWork | null {
  try {
    const { name, text, keptAt } = JSON.parse(localStorage.getItem(key) ?? '') as Record<string, unknown>
    if (typeof name !== 'string' || typeof text !== 'string' || typeof keptAt !== 'string') return null
    return { id: key.slice(prefix.length), name, text, keptAt }
  } catch {
    return null
  }
}
