import type { Mistake } from '../../shared-engine/mistakes/mistake.ts'
import type { Host, UnsavedWork } from '../host/host.ts'

/** Longest wait before unsaved work is kept, ms; with the host's own time a power cut costs at most 2 s of typing. */
const longestWait = 700

/**
 * Keeps unsaved work against a crash: at the end of each short wait, whatever it then is. Typing on does not put the
 * moment off.
 */
export class Keeper {
  readonly #host: Host
  readonly #failed: (mistakes: readonly Mistake[]) => void
  #timer: ReturnType<typeof setTimeout> | undefined
  #kept = false

  constructor(host: Host, failed: (mistakes: readonly Mistake[]) => void) {
    this.#host = host
    this.#failed = failed
  }

  keep(work: Omit<UnsavedWork, 'text'>, text: () => string): void {
    this.#timer ??= setTimeout(() => {
      this.#timer = undefined
      this.#kept = true
      void this.#host.keep({ ...work, text: text() }).then((kept) => {
        if (!kept.ok) this.#failed(kept.mistakes)
      })
    }, longestWait)
  }

  /** Nothing is unsaved any more. */
  forget(): void {
    clearTimeout(this.#timer)
    this.#timer = undefined
    if (this.#kept) void this.#host.forget()
    this.#kept = false
  }
}
