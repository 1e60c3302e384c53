import {
  readStoredBuild,
  readStoredBuildText,
  writeBuild,
  type Mistake,
  type Result,
  type StoredBuild,
} from '../../shared-engine/index.ts'
import type { FileHandle, Host, OpenedFile, RecoveredWork, SavedFile } from '../host/host.ts'
import type { Ask } from './ask.svelte.ts'
import { Keeper } from './keeper.ts'
import { startingPoint } from './starting-point.ts'
import type { Notices } from './notice.svelte.ts'
import type { Session } from './session.svelte.ts'

/** The file on disk that the open build belongs to. */
interface OnDisk {
  readonly handle: FileHandle
  readonly name: string
  readonly fingerprint: string
}

/** Opened at the first start: past some of its limits as it stands, so that there is something to find out. */
const firstDemo = 'quick-sled-puller'

/** Opening, saving and keeping: every way in which a build comes and goes. Nothing is lost unasked. */
export class Files {
  onDisk = $state.raw<OnDisk | null>(null)
  /** Work of an earlier window that was never saved, still to be offered. */
  recovered = $state.raw<readonly RecoveredWork[]>([])
  /** The file was changed, or removed, by another program. */
  changedOutside = $state.raw<'changed' | 'gone' | null>(null)
  readonly #keeper: Keeper
  readonly #host: Host
  readonly #session: Session
  readonly #ask: Ask
  readonly #notices: Notices
  readonly #opened: () => void

  constructor(host: Host, session: Session, ask: Ask, notices: Notices, opened: () => void) {
    this.#host = host
    this.#session = session
    this.#ask = ask
    this.#notices = notices
    this.#opened = opened
    this.#keeper = new Keeper(host, (mistakes) =>
      notices.trouble(
        'Your unsaved work could not be kept against a crash.',
        'It is still here: save it now.',
        mistakes,
      ),
    )
  }

  /** Name for the title: the build's own, or its file's where it has none. */
  get title(): string {
    const name = this.#session.isOpen ? this.#session.stored.name : ''
    return name === '' ? (this.onDisk?.name ?? 'New build') : name
  }

  /** What this window was opened for: a file, or our first demo. Unsaved work of before is offered beside it. */
  async start(): Promise<void> {
    const start = await this.#host.start()
    this.recovered = start.recovered
    const read = start.opened === null ? null : this.#take(start.opened)
    if (read === true) return
    const refused = this.#notices.shown
    this.openDemo(firstDemo)
    this.#notices.shown = refused // a file that could not be opened is told over the demo that stands in for it
  }

  openDemo(id: string): void {
    const { demos } = this.#host
    const demo = demos.find((one) => one.id === id) ?? demos[0]
    const read = demo === undefined ? null : readStoredBuildText(demo.text)
    if (read?.ok === true) this.#show(read.value, null, true)
    else this.#show(startingPoint(), null, true)
  }

  async newBuild(): Promise<void> {
    if (await this.#mayLeave()) this.#show(startingPoint(), null, true)
  }

  async chooseDemo(id: string): Promise<void> {
    if (await this.#mayLeave()) this.openDemo(id)
  }

  async open(): Promise<void> {
    if (!(await this.#mayLeave())) return
    const opened = await this.#host.open()
    if (opened !== null) this.#take(opened)
  }

  async openRecent(id: string): Promise<void> {
    if (await this.#mayLeave()) this.#take(await this.#host.openRecent(id))
  }

  async openDropped(file: File): Promise<void> {
    if (await this.#mayLeave()) this.#take(await this.#host.openDropped(file))
  }

  /** True where the build is on disk afterwards. */
  async save(overwrite = false): Promise<boolean> {
    const file = this.onDisk
    if (file === null) return this.saveAs()
    const stored = this.#session.stored
    const saved = await this.#host.save(
      file.handle,
      writeBuild(stored),
      overwrite ? 'overwrite' : file.fingerprint,
    )
    const code = saved.ok ? null : saved.mistakes[0]?.code
    if (code === 'file-changed-outside' || code === 'file-gone') {
      return this.#askAboutOverwriting(file.name, code === 'file-gone')
    }
    return this.#saved(saved, stored)
  }

  async saveAs(): Promise<boolean> {
    const stored = this.#session.stored
    const saved = await this.#host.saveAs(`${fileName(this.title)}.build.json`, writeBuild(stored))
    return saved === null ? false : this.#saved(saved, stored)
  }

  /** Back to what is on disk; asks first where work would be lost. */
  async revert(): Promise<void> {
    const file = this.onDisk
    if (file === null) return
    if (this.#session.isDirty) {
      const lines = ['What you changed since the last save is thrown away. This cannot be undone.']
      const choices = [{ answer: 'revert' as const, label: 'Revert' }]
      const title = `Go back to the saved ${file.name}?`
      if ((await this.#ask.choose({ title, lines, choices })) === null) return
    }
    this.#take(await this.#host.read(file.handle))
  }

  /** Takes recovered work into this window, as unsaved changes to the file it belongs to. */
  async takeRecovered(work: RecoveredWork): Promise<void> {
    if (!(await this.#mayLeave())) return
    const read = readStoredBuildText(work.text)
    if (!read.ok) {
      this.#notices.trouble(
        `${work.name} could not be recovered.`,
        'The open build is untouched.',
        read.mistakes,
      )
      return
    }
    this.#show(read.value, work.fileChangedSince ? null : work.file, false)
    this.recovered = this.recovered.filter((other) => other.id !== work.id)
    // Kept as this window's own work first: between the two, it is there twice rather than nowhere.
    const { title: name, onDisk } = this
    const { handle = null, fingerprint = null } = onDisk ?? {}
    const kept = await this.#host.keep({ name, text: work.text, handle, fingerprint })
    this.noteChange()
    if (kept.ok) await this.discardRecovered(work)
  }

  async discardRecovered(work: RecoveredWork): Promise<void> {
    await this.#host.discardRecovered(work.id)
    this.#letGo(work.file)
    this.recovered = this.recovered.filter((other) => other.id !== work.id)
  }

  /** Save, Discard or Cancel, then the window goes or stays. */
  async close(): Promise<void> {
    this.#host.answerClose(await this.#mayLeave())
  }

  /** Called with every change: unsaved work is kept within a second, and forgotten once it is saved. */
  noteChange(): void {
    if (!this.#session.isDirty) this.#keeper.forget()
    else {
      const { title, onDisk } = this
      const text = () => writeBuild(this.#session.stored)
      this.#keeper.keep(
        { name: title, handle: onDisk?.handle ?? null, fingerprint: onDisk?.fingerprint ?? null },
        text,
      )
    }
  }

  noteChangedOutside(handle: FileHandle, gone: boolean): void {
    if (this.onDisk?.handle === handle) this.changedOutside = gone ? 'gone' : 'changed'
  }

  #take(opened: Result<OpenedFile>): boolean {
    if (!opened.ok) return this.#refuse('The file could not be opened.', opened.mistakes)
    const read = readStoredBuild(opened.value.bytes)
    if (!read.ok)
      return this.#refuse(`${opened.value.name} is not a build that can be opened.`, read.mistakes)
    this.#show(read.value, opened.value, true)
    return true
  }

  #refuse(what: string, mistakes: readonly Mistake[]): false {
    this.#notices.trouble(what, 'Nothing was changed, here or on disk.', mistakes)
    return false
  }

  #show(stored: StoredBuild, file: OnDisk | null, saved: boolean): void {
    this.#session.open(stored, saved)
    const before = this.onDisk
    this.onDisk = file
    this.#letGo(before)
    this.changedOutside = null
    this.#notices.dismiss()
    this.#opened()
  }

  #saved(saved: Result<SavedFile>, stored: StoredBuild): boolean {
    if (!saved.ok) {
      const next = 'The file is as it was, and your work is still here: save it under another name.'
      this.#notices.trouble('The build could not be saved.', next, saved.mistakes)
      return false
    }
    const before = this.onDisk
    this.onDisk = saved.value
    this.#letGo(before)
    this.changedOutside = null
    this.#session.history.markSaved(stored)
    this.noteChange()
    this.#notices.done(`Saved as ${saved.value.name}`)
    return true
  }

  /** Another window may have a file that this one no longer works on. */
  #letGo(file: OnDisk | null): void {
    if (file !== null && file.handle !== this.onDisk?.handle) this.#host.release(file.handle)
  }

  async #askAboutOverwriting(name: string, gone: boolean): Promise<boolean> {
    const answer = await this.#ask.choose({
      title: gone ? `${name} is no longer where it was` : `${name} was changed by another program`,
      lines: [
        gone
          ? 'Your build is here, and can be saved there anew.'
          : 'Saving now would put your build in place of that change.',
      ],
      choices: [
        { answer: 'as', label: 'Save under another name' },
        { answer: 'over', label: gone ? 'Save it there again' : 'Overwrite it' },
      ],
    })
    if (answer === null) return false
    return answer === 'as' ? this.saveAs() : this.save(true)
  }

  /** Asks what becomes of unsaved work; false: stay. */
  async #mayLeave(): Promise<boolean> {
    if (!this.#session.isDirty) return true
    const answer = await this.#ask.choose({
      title: `Save the changes to ${this.title}?`,
      lines: ['If you discard them, they are gone.'],
      choices: [
        { answer: 'save', label: 'Save' },
        { answer: 'discard', label: 'Discard' },
      ],
    })
    if (answer === 'save') return this.save()
    if (answer === 'discard') this.#keeper.forget()
    return answer === 'discard'
  }
}

/** A build's name as a file name that every system takes. */
export function fileName(title: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  return plain === '' ? 'build' : plain.toLowerCase().slice(0, 60)
}
