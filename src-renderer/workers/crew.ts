import type { JobPort } from '../../shared-engine/jobs/job.ts'
import { lineOf, type ThreadLine } from '../../shared-engine/jobs/run.ts'
import type { Loss, Thread } from './web-thread.ts'

/** Makes a thread, and says how it was lost where it is. */
export type MakeThread = (lost: (how: Loss) => void) => Thread

/**
 * Threads that do one job together. Each is made when a job first asks for that many: a thread reads and compiles all of
 * the work for itself, which takes longer than a small job does.
 */
export class Crew {
  readonly #make: MakeThread | null
  readonly #most: number
  readonly #lost: (how: Loss) => void
  readonly #ownPort: () => JobPort
  readonly #threads: Thread[] = []
  readonly #lines: ThreadLine[] = []

  /**
   * @param make null: all is done in the window's own thread
   * @param most threads
   * @param lost called once for each thread that ends unasked
   * @param ownPort the window's own thread, where no other can be had
   */
  constructor(make: MakeThread | null, most: number, lost: (how: Loss) => void, ownPort: () => JobPort) {
    this.#make = make
    this.#most = most
    this.#lost = lost
    this.#ownPort = ownPort
  }

  /** @returns lines to as many threads, or to as many as there may be; at least one */
  lines(count: number): readonly ThreadLine[] {
    const wanted = Math.max(1, Math.min(count, this.#most))
    while (this.#lines.length < wanted && this.#grow());
    return this.#lines.slice(0, wanted)
  }

  end(): void {
    for (const thread of this.#threads) thread.end()
  }

  /** @returns whether there may be another one after it */
  #grow(): boolean {
    try {
      if (this.#make === null) throw new Error('there are no threads')
      const thread = this.#make(this.#lost)
      this.#threads.push(thread)
      this.#lines.push(lineOf(thread.port))
      return true
    } catch {
      if (this.#lines.length === 0) this.#lines.push(lineOf(this.#ownPort())) // threads are not allowed here
      return false
    }
  }
}
