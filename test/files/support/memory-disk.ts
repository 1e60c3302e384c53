import path from 'node:path'
import type { FileSystem } from '../../../src-main/files/file-system.ts'

/**
 * A disk in memory that forgets, at a power cut, whatever was not forced to it: contents since the last `sync` of a
 * file, and names since the last `syncFolder`. The calls of saving, one for one; each is counted, and `before` may
 * throw in the place of any.
 *
 * *Source:* what POSIX leaves open about `fsync` and `rename`, and the persistence models of Pillai et al.,
 * "All file systems are not created equal", OSDI 2014.
 */
export class MemoryDisk implements FileSystem {
  readonly calls: string[] = []
  /** Called before each call with its number and name; a throw is what the call throws. */
  before: (count: number, call: string) => void = () => undefined
  /** How much of what it is given a write takes. */
  writes: (wanted: number) => number = (wanted) => wanted
  #live = new Map<string, Content>()
  #durable = new Map<string, Content>()
  #pending: NameChange[] = []
  readonly #modes = new Map<Content, number>()
  readonly #owners = new Map<Content, readonly [owner: number, group: number]>()

  /** A file that has long been there. */
  put(file: string, text: string, mode = 0o644, owner: readonly [number, number] = [1000, 1000]): void {
    const bytes = new TextEncoder().encode(text)
    const content: Content = { cached: bytes, synced: bytes }
    this.#live.set(file, content)
    this.#durable.set(file, content)
    this.#modes.set(content, mode)
    this.#owners.set(content, owner)
  }

  /** What programs see now; `null` where there is no file. */
  seen(file: string): string | null {
    const content = this.#live.get(file)
    return content ? new TextDecoder().decode(content.cached) : null
  }

  names(): string[] {
    return [...this.#live.keys()]
  }

  modeOf(file: string): number | undefined {
    const content = this.#live.get(file)
    return content && this.#modes.get(content)
  }

  /**
   * Everything that a file may hold after a power cut at this moment: any of the names not yet forced may have come
   * through, in any combination, and of contents not yet forced nothing, all, or a part.
   */
  afterPowerCut(file: string): Set<string | null> {
    const found = new Set<string | null>()
    for (let chosen = 0; chosen < 2 ** this.#pending.length; chosen++) {
      const names = new Map(this.#durable)
      this.#pending.forEach((change, index) => {
        if (chosen & (1 << index)) applyTo(names, change)
      })
      const content = names.get(file)
      if (!content) found.add(null)
      else for (const bytes of survivorsOf(content)) found.add(new TextDecoder().decode(bytes))
    }
    return found
  }

  ownerOf(file: string): readonly [owner: number, group: number] | undefined {
    const content = this.#live.get(file)
    return content && this.#owners.get(content)
  }

  #call(name: string): void {
    this.calls.push(name)
    this.before(this.calls.length, name)
  }

  #contentOf(file: string): Content {
    const content = this.#live.get(file)
    if (!content) throw Object.assign(new Error(`no ${file}`), { code: 'ENOENT' })
    return content
  }

  #change(change: NameChange): void {
    applyTo(this.#live, change)
    this.#pending.push(change)
  }

  async readFile(file: string) {
    this.#call('readFile')
    return this.#contentOf(file).cached
  }

  async stat(file: string) {
    this.#call('stat')
    const content = this.#contentOf(file)
    const [owner, group] = this.#owners.get(content) ?? [0, 0]
    return {
      isFile: true,
      size: content.cached.length,
      mode: this.#modes.get(content) ?? 0o644,
      owner,
      group,
    }
  }

  async isLink(file: string) {
    this.#call('isLink')
    this.#contentOf(file)
    return false
  }

  async readLink(): Promise<string> {
    throw new Error('there are no links here')
  }

  async assertWritable() {
    this.#call('assertWritable')
  }

  async create(file: string, mode: number) {
    this.#call('create')
    if (this.#live.has(file)) throw Object.assign(new Error('exists'), { code: 'EEXIST' })
    const content: Content = { cached: new Uint8Array(), synced: new Uint8Array() }
    this.#modes.set(content, mode)
    this.#change({ set: file, content })
    return {
      write: async (bytes: Uint8Array) => {
        this.#call('write')
        const taken = bytes.subarray(0, this.writes(bytes.length))
        content.cached = new Uint8Array([...content.cached, ...taken])
        return taken.length
      },
      setMode: async (bits: number) => {
        this.#call('setMode')
        this.#modes.set(content, bits)
      },
      setOwner: async (owner: number, group: number) => {
        this.#call('setOwner')
        this.#owners.set(content, [owner, group])
      },
      sync: async () => {
        this.#call('sync')
        content.synced = content.cached
      },
      close: async () => this.#call('close'),
    }
  }

  async rename(from: string, to: string) {
    this.#call('rename')
    this.#change({ set: to, content: this.#contentOf(from), unset: from })
  }

  async remove(file: string) {
    this.#call('remove')
    this.#contentOf(file)
    this.#change({ unset: file })
  }

  async list(folder: string) {
    this.#call('list')
    return this.names()
      .filter((file) => path.dirname(file) === folder)
      .map((file) => path.basename(file))
  }

  async makeFolder() {
    this.#call('makeFolder')
  }

  async syncFolder() {
    this.#call('syncFolder')
    this.#durable = new Map(this.#live)
    this.#pending = []
  }
}

interface Content {
  cached: Uint8Array
  synced: Uint8Array
}

interface NameChange {
  readonly set?: string
  readonly content?: Content
  readonly unset?: string
}

function applyTo(names: Map<string, Content>, { set, content, unset }: NameChange): void {
  if (unset !== undefined) names.delete(unset)
  if (set !== undefined && content) names.set(set, content)
}

function survivorsOf({ cached, synced }: Content): Uint8Array[] {
  if (cached === synced) return [cached]
  return [synced, cached, cached.subarray(0, Math.floor(cached.length / 2))]
}
