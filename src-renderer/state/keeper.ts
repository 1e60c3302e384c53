import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import type { Host, UnsavedWork } from '../host/host.ts'

/** Longest wait before unsaved work is kept, ms; with the host's own time a power cut costs at most 2 s of typing. */
const longestWait = 700

/**
 * Keeps unsaved work against a crash: at the end of each short wait, whatever it then is. Typing on does not put the
 * moment off. On a slow disk the next keep waits for the last one, and then keeps the newest: keeps never queue up.
 */
export class Keeper {
  readonly #host: Host
  readonly #failed: (mistakes: readonly Mistake[]) => void
  #timer: ReturnType<typeof setTimeout> | undefined
  #keeping = false
  /** What is to be kept once the last keep was answered, as it then is. */
  #next: (() => UnsavedWork) | null = null
  #kept = false
  #keeps = 0

  constructor(host: Host, failed: (mistakes: readonly Mistake[]) => void) {
    this.#host = host
    this.#failed = failed
  }

  /** How often the host was asked to keep work. */
  get keeps(): number {
    return this.#keeps
  }

  keep(work: () => UnsavedWork): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined
      this.#next = work
      void this.#keepNext()
    }, longestWait)
  }

  /** At once; says whether it was kept. */
  async keepNow(work: UnsavedWork): Promise<boolean> {
    this.#kept = true
    this.#keeps += 1
    const kept = await this.#host.keep(work)
    if (!kept.ok) this.#failed(kept.mistakes)
    return kept.ok
  }

  /** Nothing is unsaved any more. */
  forget(): void {
    clearTimeout(this.#timer)
    this.#timer = undefined
    this.#next = null
    if (this.#kept) void this.#host.forget()
    this.#kept = false
  }

  async #keepNext(): Promise<void> {
    if (this.#keeping) return
    this.#keeping = true
    try {
      while (this.#next !== null) {
        const work = this.#next()
        this.#next = null
        await this.keepNow(work)
      }
    } finally {
      this.#keeping = false
    }
  }
}
