/** One undoable change: what it is called and the whole document after it. Documents are immutable and share parts. */
interface Step<T> {
  readonly name: string
  /** Changes that follow each other with the same group are one step: a field being typed into, a slider dragged. */
  readonly group: string | null
  readonly document: T
}

/** Steps kept; the oldest are forgotten first. A step costs a few hundred bytes, since documents share their parts. */
const mostSteps = 1000

/**
 * A document with undo and redo of everything, by name, and a mark at the state that is on disk.
 *
 * Undoing all the way gives the very document it started from, and redoing all the way the very last one: whole
 * documents are kept, not differences. The saved mark is a document too, so that undoing to it makes it clean again.
 */
export class History<T> {
  #steps = $state.raw<readonly Step<T>[]>([])
  /** Index of the document in force. */
  #at = $state.raw(0)
  #saved = $state.raw<T | null>(null)
  /** False once the group was closed: the next change starts a new step even in the same group. */
  #groupOpen = false
  /** The document before the last change; null where the last thing done was no change. */
  #former = $state.raw<T | null>(null)

  constructor(start: T, saved = true) {
    this.reset(start, saved)
  }

  /** Forgets all steps and starts anew, on opening another document. */
  reset(start: T, saved = true): void {
    this.#steps = [{ name: '', group: null, document: start }]
    this.#at = 0
    this.#saved = saved ? start : null
    this.#groupOpen = false
    this.#former = null
  }

  /** What the last change was made to, to be held beside what came of it; nothing after undo and redo. */
  get former(): T | null {
    return this.#former
  }

  /** The former document is no longer to be held beside the present one. */
  forgetFormer(): void {
    this.#former = null
  }

  get document(): T {
    return this.#step(this.#at).document
  }

  /** The document that is on disk; null where none is. */
  get saved(): T | null {
    return this.#saved
  }

  /** Whether the document in force is the one on disk. */
  get isSaved(): boolean {
    return this.document === this.#saved
  }

  /** Name of the change that undo would take back; null where there is none. */
  get undoName(): string | null {
    return this.#at > 0 ? this.#step(this.#at).name : null
  }

  get redoName(): string | null {
    return this.#at < this.#steps.length - 1 ? this.#step(this.#at + 1).name : null
  }

  /** Number of steps that can be taken back. */
  get depth(): number {
    return this.#at
  }

  /** Puts a new document in force; what had been undone is cut off. A change to the same document is none. */
  change(name: string, document: T, group: string | null = null): void {
    if (document === this.document) return
    const joins = this.#groupOpen && group !== null && this.#at > 0 && this.#step(this.#at).group === group
    // A step that the disk holds is not overwritten: undo must be able to come back to it.
    const kept = this.#steps.slice(0, joins && !this.isSaved ? this.#at : this.#at + 1)
    this.#former = joins && this.#former !== null ? this.#former : this.document
    const steps = [...kept, { name, group, document }].slice(-mostSteps)
    this.#steps = steps
    this.#at = steps.length - 1
    this.#groupOpen = group !== null
  }

  /** Ends a group: a field was left, a slider let go. */
  closeGroup(): void {
    this.#groupOpen = false
  }

  /** Takes the last change back if it belongs to this group: Escape in a field. */
  abandon(group: string): void {
    if (this.#at > 0 && this.#step(this.#at).group === group && this.#groupOpen) {
      this.#steps = this.#steps.slice(0, this.#at)
      this.#at -= 1
      this.#former = null
    }
    this.#groupOpen = false
  }

  undo(): void {
    this.#former = null
    if (this.#at > 0) this.#at -= 1
    this.#groupOpen = false
  }

  redo(): void {
    this.#former = null
    if (this.#at < this.#steps.length - 1) this.#at += 1
    this.#groupOpen = false
  }

  /** The document in force is on disk now. */
  markSaved(document: T = this.document): void {
    this.#saved = document
    this.#groupOpen = false
  }

  #step(index: number): Step<T> {
    const step = this.#steps[index]
    if (step === undefined) throw new Error(`no step ${index} of ${this.#steps.length}`)
    return step
  }
}
