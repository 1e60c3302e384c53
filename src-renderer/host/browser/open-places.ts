import type { Mistake, Result } from '../../../shared-engine/mistakes/mistake.ts'
import type { FileHandle, OpenedFile, SavedFile } from '../host.ts'
import { InTurn } from '../in-turn.ts'
import { addRecent } from './recent-places.ts'
import { download, pickPlace, writeTo, type Picked } from './pickers.ts'

interface OpenPlace {
  readonly name: string
  /** `null` where the browser can't write: then a save is a download. */
  readonly place: FileSystemFileHandle | null
  /** The bytes as read, for a file that can't be read again. */
  bytes: Uint8Array
  fingerprint: string
  toldOf: string | null
  /** Reading, saving and comparing never overlap: each would judge the file by what the other is about to change. */
  readonly turn: InTurn
}

const json = 'application/json'

async function fingerprintOf(bytes: Uint8Array): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new Uint8Array(bytes))
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** The files of this tab, by handle. */
export class OpenPlaces {
  readonly #open = new Map<FileHandle, OpenPlace>()

  async add({ file, place }: Picked): Promise<Result<OpenedFile>> {
    return guarded('cannot-read', file.name, async () => {
      const bytes = new Uint8Array(await file.arrayBuffer())
      const fingerprint = await fingerprintOf(bytes)
      const handle = crypto.randomUUID()
      const turn = new InTurn()
      this.#open.set(handle, { name: file.name, place, bytes, fingerprint, toldOf: null, turn })
      if (place) await addRecent(place)
      return { handle, name: file.name, bytes, fingerprint }
    })
  }

  async read(handle: FileHandle): Promise<Result<OpenedFile>> {
    const open = this.#open.get(handle)
    if (!open) return refused('request-refused', handle)
    const { name } = open
    return open.turn.run(() =>
      guarded('cannot-read', name, async () => {
        const bytes = open.place ? await bytesNow(open.place) : open.bytes
        open.fingerprint = await fingerprintOf(bytes)
        return { handle, name, bytes, fingerprint: open.fingerprint }
      }),
    )
  }

  async save(handle: FileHandle, text: string, fingerprint: string): Promise<Result<SavedFile>> {
    const open = this.#open.get(handle)
    if (!open) return refused('request-refused', handle)
    return open.turn.run(async () => {
      const { place, name } = open
      if (place && fingerprint !== 'overwrite') {
        const now = await guarded('cannot-read', name, async () => fingerprintOf(await bytesNow(place)))
        if (!now.ok) return now
        if (now.value !== fingerprint) return refused('file-changed-outside', name)
      }
      return this.#write(handle, open, text)
    })
  }

  async saveAs(suggestedName: string, text: string): Promise<Result<SavedFile> | null> {
    const chosen = await guarded('cannot-write', suggestedName, () => pickPlace(suggestedName, json))
    if (!chosen.ok) return chosen
    if (chosen.value === null) return null
    const place = chosen.value === 'download' ? null : chosen.value
    const name = place?.name ?? suggestedName
    const handle = crypto.randomUUID()
    const open = { name, place, bytes: new Uint8Array(), fingerprint: '', toldOf: null, turn: new InTurn() }
    const saved = await this.#write(handle, open, text)
    if (saved.ok) this.#open.set(handle, open)
    return saved
  }

  release(handle: FileHandle): void {
    this.#open.delete(handle)
  }

  /** Looks whether another program changed a file; each change is told once. */
  async look(told: (handle: FileHandle, gone: boolean) => void): Promise<void> {
    for (const [handle, open] of this.#open) {
      const { place } = open
      if (!place) continue
      await open.turn.run(async () => {
        const now = await bytesNow(place).then(fingerprintOf, () => 'gone')
        if (now !== open.fingerprint && now !== open.toldOf) told(handle, now === 'gone')
        open.toldOf = now === open.fingerprint ? null : now
      })
    }
  }

  /** A file that the page let go of meanwhile is written all the same, and stays let go of. */
  async #write(handle: FileHandle, open: OpenPlace, text: string) {
    const { name, place } = open
    return guarded<SavedFile>('cannot-write', name, async () => {
      const bytes = new TextEncoder().encode(text)
      const content = new Blob([bytes], { type: json })
      if (place) await writeTo(place, content)
      else download(name, content)
      const fingerprint = await fingerprintOf(bytes)
      Object.assign(open, { bytes, fingerprint, toldOf: null })
      if (place) await addRecent(place)
      return { handle, name, fingerprint }
    })
  }
}

async function bytesNow(place: FileSystemFileHandle): Promise<Uint8Array> {
  return new Uint8Array(await (await place.getFile()).arrayBuffer())
}

/** Why a file can't be had or written, as a value: what the browser throws is foreseen trouble here. */
export async function guarded<T>(
  code: Mistake['code'],
  name: string,
  attempt: () => Promise<T>,
): Promise<Result<T>> {
  try {
    return { ok: true, value: await attempt() }
  } catch (thrown) {
    const why = thrown instanceof Error ? thrown.message : String(thrown)
    return refused(code, `${name}: ${why}`)
  }
}

export function refused<T>(code: Mistake['code'], value: string): Result<T> {
  const kept = code === 'cannot-read' ? '' : 'your work in this window'
  return { ok: false, mistakes: [{ code, path: '', value, allowed: '', kept }] }
}
