import path from 'node:path'
import { MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads'

/** What a command line said, and its exit code. */
interface Answer {
  readonly code: number
  readonly out: string
  readonly err: string
}

let thread: Worker | null = null

/** ms, as a process of its own would have. */
const longest = 100_000

/**
 * What the built command line answers, by a thread that keeps the program read and compiled from one run to the next. The
 * caller waits without a turn of its event loop, as for a process.
 *
 * @throws where the thread cannot answer
 */
export function answerOf(words: readonly string[]): Answer {
  thread ??= started()
  const { port1: near, port2: far } = new MessageChannel()
  const done = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT))
  thread.postMessage({ words, far, done }, [far])
  const waited = Atomics.wait(done, 0, 0, longest)
  const answer = receiveMessageOnPort(near)?.message as Answer | undefined
  near.close()
  if (answer !== undefined) return answer
  // It may still be at work; the next run is not to wait for it.
  void thread.terminate()
  thread = null
  throw new Error(
    `pitchline ${words.join(' ')}: ${waited === 'timed-out' ? 'no answer' : 'the thread failed'}`,
  )
}

function started(): Worker {
  const worker = new Worker(path.join(import.meta.dirname, 'warm-thread.js'))
  worker.unref()
  return worker
}
