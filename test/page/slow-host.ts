import type {
  FileHandle,
  Host,
  OpenedFile,
  SavedFile,
  SavedText,
  UnsavedWork,
} from '../../src-renderer/host/host.ts'
import { Ask } from '../../src-renderer/state/ask.svelte.ts'
import { Files } from '../../src-renderer/state/files.svelte.ts'
import { Notices } from '../../src-renderer/state/notice.svelte.ts'
import { Session } from '../../src-renderer/state/session.svelte.ts'
import { newBuild } from '../../shared-engine/assume/start.ts'
import { withEntry, writeBuild, type Result } from '../../shared-engine/index.ts'

export type Delay = (what: string) => Promise<void>

/** A host with files in memory; every answer waits for `delay`, and a save lands when it is let go, not when asked. */
export class SlowHost {
  readonly texts = new Map<FileHandle, string>()
  readonly released: FileHandle[] = []
  readonly kept: UnsavedWork[] = []
  readonly keepsAtSave: number[] = []
  refusals: string[] = []
  readonly demos = []
  readonly facts = { kind: 'window', platform: 'linux', version: '', commit: '', runtime: '' } as const
  #named = 0
  readonly #delay: Delay

  constructor(delay: Delay) {
    this.#delay = delay
  }

  // The text itself serves as its fingerprint.
  async save(
    handle: FileHandle,
    { text, keeps }: SavedText,
    fingerprint: string,
  ): Promise<Result<SavedFile>> {
    this.keepsAtSave.push(keeps)
    await this.#delay('save')
    const [now] = [this.texts.get(handle)]
    if (fingerprint !== 'overwrite' && now !== fingerprint) {
      this.refusals.push(handle)
      const mistake = {
        code: 'file-changed-outside',
        path: '',
        value: handle,
        allowed: '',
        kept: '',
      } as const
      return { ok: false, mistakes: [mistake] }
    }
    this.texts.set(handle, text)
    await this.#delay('saved')
    return { ok: true, value: { handle, name: handle, fingerprint: text } }
  }

  async saveAs(_name: string, { text }: SavedText): Promise<Result<SavedFile>> {
    const handle = `file ${(this.#named += 1)}`
    await this.#delay('saveAs')
    this.texts.set(handle, text)
    await this.#delay('saved')
    return { ok: true, value: { handle, name: handle, fingerprint: text } }
  }

  async open(): Promise<Result<OpenedFile>> {
    await this.#delay('open')
    const handle = `file ${(this.#named += 1)}`
    const text = writeBuild(buildOf(handle, this.#named))
    this.texts.set(handle, text)
    const bytes = new TextEncoder().encode(text)
    return { ok: true, value: { handle, name: handle, bytes, fingerprint: text } }
  }

  release(handle: FileHandle): void {
    this.released.push(handle)
  }

  async keep(work: UnsavedWork): Promise<Result<null>> {
    await this.#delay('keep')
    this.kept.push(work)
    return { ok: true, value: null }
  }

  async forget(): Promise<void> {}
}

/** A build of a file, which its mass tells from all others. */
export const buildOf = (name: string, number: number) =>
  withEntry({ ...newBuild(), name }, 'vehicle.massKg', 100 + number)

/** A window's files on such a host, one of our demos open in it. */
export function window_(delay: Delay) {
  const host = new SlowHost(delay)
  const [session, ask, notices] = [new Session({ throttleAsked: null }), new Ask(), new Notices()]
  const files = new Files(host as unknown as Host, session, ask, notices, () => undefined)
  files.openDemo('')
  return { host, session, ask, notices, files }
}

export type Window = ReturnType<typeof window_>

/** Until what was answered has been heard. */
export const settle = () => new Promise((done) => setTimeout(done, 0))
let edits = 0
/** A change of the build that is told from every other. */
export const edit = ({ session }: Window) => session.setEntry('edit', 'name', `edit ${(edits += 1)}`)
