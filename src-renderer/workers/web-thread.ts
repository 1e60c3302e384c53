import type { JobPort } from '../../shared-engine/jobs/job.ts'

/** A thread beside the window's own, whatever it is made of. */
export interface Thread {
  readonly port: JobPort
  /** Ends it on purpose; it says no more. */
  readonly end: () => void
}

/** How a thread was lost: it never came up, or it came to an end that nobody asked for. */
export type Loss = 'never-up' | 'ended'

/** What a thread says once, when its lock is held. */
export interface SignOfLife {
  readonly alive: string
}

/** ms that a worker has to say that it lives; long, for busy machines: without it the work is done, but in the window's own thread. */
const upWithin = 20_000

/**
 * A worker as a thread whose end is noticed. A worker that is ended, by the system for want of memory or by anybody, says
 * nothing about it: no event is raised. So each holds a lock under a name of its own for as long as it lives; the browser
 * hands the lock on when its holder is gone, and whoever waits for it knows.
 *
 * @param make makes the worker under a name
 * @param lost called once, with how; never after `end`
 * *Source:* Web Locks API (W3C): a lock is released when its agent terminates.
 */
export function webThread(make: (name: string) => Worker, lost: (how: Loss) => void): Thread {
  const name = `pitchline ${crypto.randomUUID()}`
  const worker = make(name)
  const waiting = new AbortController()
  let over = false
  const slow = setTimeout(() => lose('never-up'), 'locks' in navigator ? upWithin : 2 ** 31 - 1)
  const lose = (how: Loss) => {
    if (over) return
    over = true
    clearTimeout(slow)
    waiting.abort()
    lost(how)
  }
  // A thread says its own troubles in messages: an error event means that it never came up.
  worker.onerror = () => lose('never-up')
  worker.addEventListener('message', ({ data }: MessageEvent<Partial<SignOfLife>>) => {
    if (data.alive !== name) return
    clearTimeout(slow)
    navigator.locks.request(name, { signal: waiting.signal }, () => lose('ended')).catch(() => {}) // given up by `end`
  })
  return {
    port: {
      post: (message, transfer) => worker.postMessage(message, [...transfer]),
      listen: (listener) => (worker.onmessage = ({ data }: MessageEvent<unknown>) => listener(data)),
    },
    end: () => {
      over = true
      clearTimeout(slow)
      waiting.abort()
      worker.terminate()
    },
  }
}
