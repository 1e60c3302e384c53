import {
  readStoredBuild,
  readStoredBuildText,
  type Mistake,
  type Result,
  type StoredBuild,
} from '../../../shared-engine/index.ts'
import { mostCompared } from '../../../shared-engine/compare/compare.ts'
import { History } from '../../state/history.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'

/** A build kept beside the open one. */
interface Kept {
  readonly id: number
  readonly name: string
  readonly stored: StoredBuild
}

/** *Side by side*: up to three builds kept beside the open one, with an undo of their own: the build is untouched. */
export class Side implements QuestionState {
  readonly #workspace: Workspace
  readonly #history = new History<readonly Kept[]>([])
  #made = 0

  constructor(workspace: Workspace) {
    this.#workspace = workspace
  }

  get kept(): readonly Kept[] {
    return this.#history.document
  }

  get isFull(): boolean {
    return this.kept.length >= mostCompared - 1
  }

  /** What undoing would take back here; null for nothing. */
  get undoName(): string | null {
    return this.#history.undoName
  }

  undo(): void {
    const name = this.#history.undoName
    this.#history.undo()
    this.#workspace.notices.spoken = `Undone: ${name ?? ''}`
  }

  /** Keeps the open build as it stands now. */
  keepSnapshot(): void {
    const { files, session, notices } = this.#workspace
    const count = this.kept.filter((one) => one.name.startsWith(`${files.title}, snapshot`)).length
    const name = `${files.title}, snapshot ${count + 1}`
    if (this.#add(name, session.stored)) notices.spoken = `Kept beside the open build: ${name}`
  }

  /** Puts a demo build beside the open one. */
  addDemo(id: string): void {
    const demo = this.#workspace.host.demos.find((one) => one.id === id)
    if (demo !== undefined) this.#take(readStoredBuildText(demo.text), id)
  }

  /** Asks for a build's file and puts it beside the open one. */
  async addFile(): Promise<void> {
    const { host, files } = this.#workspace
    const opened = await host.open()
    if (opened === null) return
    if (!opened.ok) return this.#refuse('The file could not be opened.', opened.mistakes)
    const { handle, bytes, name } = opened.value
    // It is only looked at: another window may work on it.
    if (handle !== files.onDisk?.handle) host.release(handle)
    this.#take(readStoredBuild(bytes), name)
  }

  remove(kept: Kept): void {
    const others = this.kept.filter((one) => one.id !== kept.id)
    this.#history.change(`remove ${kept.name}`, others)
  }

  /** Takes a kept build into the open window, as one undoable step. */
  take(kept: Kept): void {
    const { session, notices } = this.#workspace
    const mistakes = session.change(`take ${kept.name}`, kept.stored)
    if (mistakes.length > 0) this.#refuse(`${kept.name} could not be taken.`, mistakes)
    else notices.spoken = `Taken: ${kept.name}. Undo takes it back.`
  }

  /** What was kept stays: it is what the next build is seen beside. */
  forget(): void {}

  #take(read: Result<StoredBuild>, name: string): void {
    if (!read.ok) this.#refuse(`${name} is not a build that can be opened.`, read.mistakes)
    else this.#add(read.value.name === '' ? name : read.value.name, read.value)
  }

  #add(name: string, stored: StoredBuild): boolean {
    if (this.isFull) return false
    this.#made += 1
    this.#history.change(`put ${name} beside it`, [...this.kept, { id: this.#made, name, stored }])
    return true
  }

  #refuse(what: string, mistakes: readonly Mistake[]): void {
    this.#workspace.notices.trouble(what, 'Nothing was changed, here or on disk.', mistakes)
  }
}
