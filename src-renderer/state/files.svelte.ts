import { newBuild } from '../../shared-engine/assume/start.ts'
import {
  readStoredBuild,
  readStoredBuildText,
  writeBuild,
  type Mistake,
  type Result,
  type StoredBuild,
} from '../../shared-engine/index.ts'
import type { FileHandle, Host, OpenedFile, RecoveredWork, SavedFile, UnsavedWork } from '../host/host.ts'
import { InTurn } from '../host/in-turn.ts'
import type { Ask } from './ask.svelte.ts'
import { Keeper } from './keeper.ts'
import type { Notices } from './notice.svelte.ts'
import type { Session } from './session.svelte.ts'

/** The file on disk that the open build belongs to. */
interface OnDisk {
  readonly handle: FileHandle
  readonly name: string
  readonly fingerprint: string
}

/** Name of a build that was never given one. */
const unnamed = newBuild().name

/** Opened at the first start: past some of its limits as it stands, so that there is something to find out. */
const firstDemo = 'quick-sled-puller'

/** What a person saw when they asked for a save, and how often unsaved work had been kept by then. */
interface Shown {
  readonly stored: StoredBuild
  readonly keeps: number
}

const savedText = ({ stored, keeps }: Shown) => ({ text: writeBuild(stored), keeps })

/** Opening, saving and keeping: every way in which a build comes and goes. Nothing is lost unasked. */
export class Files {
  onDisk = $state.raw<OnDisk | null>(null)
  /** Whether the open build is one of our own demos. */
  isDemo = $state.raw(false)
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
  /** Saves go one after the other: a late one would put older text in the place of newer. */
  readonly #saves = new InTurn()
  /** Which opening the build in force came with: an answer that was for an earlier one is not about this build. */
  #opening = 0
  #isClosing = false

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
    if (read?.ok === true) {
      this.#show(read.value, null, true)
      this.isDemo = true
    } else this.#show(newBuild(), null, true)
  }

  /** True where there is a new one now: the person may keep the build that is open. */
  async newBuild(): Promise<boolean> {
    if (!(await this.#mayLeave())) return false
    this.#show(newBuild(), null, true)
    return true
  }

  /** True where it was opened: the person may keep the build that is open. */
  async chooseDemo(id: string): Promise<boolean> {
    if (!(await this.#mayLeave())) return false
    this.openDemo(id)
    return true
  }

  open(): Promise<void> {
    return this.#replaceBy(() => this.#host.open())
  }

  openRecent(id: string): Promise<void> {
    return this.#replaceBy(() => this.#host.openRecent(id))
  }

  openDropped(file: File): Promise<void> {
    return this.#replaceBy(() => this.#host.openDropped(file))
  }

  /** True where the build is on disk afterwards. */
  save(): Promise<boolean> {
    return this.#inTurn((shown) => (this.onDisk === null ? this.#writeAs(shown) : this.#write(shown)))
  }

  saveAs(): Promise<boolean> {
    return this.#inTurn((shown) => this.#writeAs(shown))
  }

  /** Back to what is on disk: a step like any other, so that undo brings back what was changed since, unasked. */
  async revert(): Promise<void> {
    const file = this.onDisk
    if (file === null) return
    const opening = this.#opening
    const opened = await this.#host.read(file.handle)
    if (opening === this.#opening) this.#take(opened, (stored, from) => this.#goBack(stored, from))
    else if (opened.ok) this.#letGo(opened.value)
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
    // Read again: from now on the file is this window's, if it still is what it was and no other has it.
    const file = work.file === null ? null : await this.#host.read(work.file.handle)
    const isSame = file?.ok === true && file.value.fingerprint === work.file?.fingerprint
    const own = isSame && !work.fileChangedSince ? file.value : null
    const saved = own === null ? null : readStoredBuild(own.bytes)
    if (saved?.ok === true) {
      // Undo comes back to the file as it is, from where it can be seen what was recovered.
      this.#show(saved.value, own, true)
      this.#session.history.change('recover unsaved work', read.value)
    } else this.#show(read.value, own, false)
    this.recovered = this.recovered.filter((other) => other.id !== work.id)
    // Kept as this window's own work first: between the two, it is there twice rather than nowhere.
    if (await this.#keeper.keepNow({ ...this.#work(), text: work.text })) await this.discardRecovered(work)
  }

  async discardRecovered(work: RecoveredWork): Promise<void> {
    await this.#host.discardRecovered(work.id)
    this.#letGo(work.file)
    this.recovered = this.recovered.filter((other) => other.id !== work.id)
  }

  /** Save, Discard or Cancel, then the window goes or stays. */
  async close(): Promise<void> {
    if (this.#isClosing) return
    this.#isClosing = true
    try {
      const close = await this.#mayLeave()
      if (close) this.#keeper.forget()
      this.#host.answerClose(close)
    } finally {
      this.#isClosing = false
    }
  }

  /** Called with every change: unsaved work is kept within a second, and forgotten once it is saved. */
  noteChange(): void {
    if (this.#session.isDirty) this.#keeper.keep(() => this.#work())
    else this.#keeper.forget()
  }

  noteChangedOutside(handle: FileHandle, gone: boolean): void {
    if (this.onDisk?.handle === handle) this.changedOutside = gone ? 'gone' : 'changed'
  }

  #take(
    opened: Result<OpenedFile>,
    show = (stored: StoredBuild, file: OpenedFile) => this.#show(stored, file, true),
  ): boolean {
    if (!opened.ok && opened.mistakes.some(({ code }) => code === 'request-refused'))
      return this.#refuse('What was dropped is no file of this computer: save it first, then open it.', [])
    if (!opened.ok) return this.#refuse('The file could not be opened.', opened.mistakes)
    const read = readStoredBuild(opened.value.bytes)
    if (!read.ok)
      return this.#refuse(`${opened.value.name} is not a build that can be opened.`, read.mistakes)
    show(read.value, opened.value)
    this.#tellOfChanges(opened.value.name, read.notes)
    return true
  }

  /** The file's own build in force again, its mark of being saved with it. */
  #goBack(stored: StoredBuild, file: OnDisk): void {
    const { history } = this.#session
    // The very document that was saved, where the file still holds it: undo past this step comes to it as saved.
    const isSame = history.saved !== null && writeBuild(history.saved) === writeBuild(stored)
    const there = isSame && history.saved !== null ? history.saved : stored
    // A save that still waits for its turn would put what was given up onto the disk.
    this.#opening += 1
    history.change(`go back to the saved ${file.name}`, there)
    history.markSaved(there)
    this.onDisk = file
    this.changedOutside = null
    this.#notices.dismiss()
  }

  /** A file of an earlier version was brought up to this one: what was added and assumed stands in sight until it is read. */
  #tellOfChanges(name: string, notes: readonly string[] = []): void {
    if (notes.length === 0) return
    const what = `${name} is of an earlier version and was brought up to this one here.`
    this.#notices.tell(what, 'The file is as it was until you save.', notes)
  }

  #refuse(what: string, mistakes: readonly Mistake[]): false {
    this.#notices.trouble(what, 'Nothing was changed, here or on disk.', mistakes)
    return false
  }

  #show(stored: StoredBuild, file: OnDisk | null, saved: boolean): void {
    this.#opening += 1
    this.#session.open(stored, saved)
    this.isDemo = false
    const before = this.onDisk
    this.onDisk = file
    this.#letGo(before)
    this.changedOutside = null
    this.#notices.dismiss()
    this.#opened()
  }

  /** The open build as unsaved work. */
  #work(): UnsavedWork {
    const { title: name, onDisk } = this
    const { handle = null, fingerprint = null } = onDisk ?? {}
    return { name, handle, fingerprint, text: writeBuild(this.#session.stored) }
  }

  /** Gives up the open build for what is fetched; asks again about what was changed while that took its time. */
  async #replaceBy(fetch: () => Promise<Result<OpenedFile> | null>): Promise<void> {
    if (!(await this.#mayLeave())) return
    const given = this.#session.stored
    const opened = await fetch()
    if (opened === null) return
    if (this.#session.stored === given || (await this.#mayLeave())) this.#take(opened)
    else if (opened.ok) this.#letGo(opened.value)
  }

  /** Saves the build as it is now, once the saves before are done; not where it was given up meanwhile. */
  #inTurn(write: (shown: Shown) => Promise<boolean>): Promise<boolean> {
    const [shown, opening] = [{ stored: this.#session.stored, keeps: this.#keeper.keeps }, this.#opening]
    return this.#saves.run(async () => opening === this.#opening && write(shown))
  }

  async #write(shown: Shown, overwrite = false): Promise<boolean> {
    const file = this.onDisk
    if (file === null) return this.#writeAs(shown)
    const opening = this.#opening
    const fingerprint = overwrite ? 'overwrite' : file.fingerprint
    const saved = await this.#host.save(file.handle, savedText(shown), fingerprint)
    const code = saved.ok ? null : saved.mistakes[0]?.code
    if (opening === this.#opening && (code === 'file-changed-outside' || code === 'file-gone')) {
      return this.#askAboutOverwriting(file.name, code === 'file-gone', shown)
    }
    return this.#saved(saved, shown.stored, opening)
  }

  async #writeAs(shown: Shown): Promise<boolean> {
    const opening = this.#opening
    const saved = await this.#host.saveAs(`${fileName(this.title)}.build.json`, savedText(shown))
    return saved === null ? false : this.#saved(saved, shown.stored, opening)
  }

  #saved(saved: Result<SavedFile>, stored: StoredBuild, opening: number): boolean {
    if (opening !== this.#opening) return this.#savedLate(saved)
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
    if (stored.name === unnamed) void this.#offerName(saved.value.name, opening)
    return true
  }

  /** A build that nobody has named yet may take the name of the file that it was saved in, and is saved with it. */
  async #offerName(file: string, opening: number): Promise<void> {
    const name = file.replace(/(\.build)?\.json$/i, '')
    if (name === '' || name === fileName(unnamed)) return
    const title = `Call this build “${name}”, as its file?`
    const lines = ['Its name stands in the title, on the sheet and under every picture.']
    const choices = [{ answer: 'name' as const, label: 'Call it so' }]
    const answer = await this.#ask.choose({ title, lines, choices })
    const { stored } = this.#session
    if (answer === null || opening !== this.#opening || stored.name !== unnamed) return
    const wasClean = !this.#session.isDirty
    if (this.#session.change(`call it ${name}`, { ...stored, name }).length === 0 && wasClean)
      await this.save()
  }

  /** The answer came after the build had been given up for another one, which has nothing to do with it. */
  #savedLate(saved: Result<SavedFile>): boolean {
    if (saved.ok) this.#letGo(saved.value)
    else {
      const next = 'Its file is as it was. The build that is open now is untouched.'
      this.#notices.trouble('The build that was open before could not be saved.', next, saved.mistakes)
    }
    return saved.ok
  }

  /** Another window may have a file that this one no longer works on. */
  #letGo(file: OnDisk | null): void {
    if (file !== null && file.handle !== this.onDisk?.handle) this.#host.release(file.handle)
  }

  async #askAboutOverwriting(name: string, gone: boolean, shown: Shown): Promise<boolean> {
    const opening = this.#opening
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
    if (answer === null || opening !== this.#opening) return false
    return answer === 'as' ? this.#writeAs(shown) : this.#write(shown, true)
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
    return answer === 'save' ? this.save() : answer === 'discard'
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
