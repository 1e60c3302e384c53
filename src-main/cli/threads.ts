import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import type { JobKind, JobPort, JobRange } from '../../shared-engine/jobs/job.ts'
import { lineOf, runJob, type JobEnd, type ThreadLine } from '../../shared-engine/jobs/run.ts'
import { serveJobs } from '../../shared-engine/jobs/serve.ts'
import { jobTable } from '../../shared-engine/jobs/table.ts'
import { threadTools } from './thread-tools.ts'
import type { Io } from './io.ts'
import { progressText } from './until-stopped.ts'
import { toEngine } from '../../shared-engine/units/convert.ts'

/** Most threads that a person may ask for. */
export const mostThreads = 64

/** As many threads as help: one for each core, within reason. */
export function usualThreads(): number {
  return Math.min(8, availableParallelism())
}

/** Where the thread's entry is built to, beside the file that this one is built into. */
const entry = fileURLToPath(new URL('./thread.cjs', import.meta.url))

interface Crew {
  readonly lines: readonly ThreadLine[]
  readonly dismiss: () => void
}

/** One thread is this one: starting another would only cost its start. */
async function crewOf(count: number, broken: (story: string) => void): Promise<Crew> {
  if (count === 1 || !existsSync(entry)) return ownThread()
  const { Worker } = await workerThreads()
  const workers = Array.from({ length: count }, () => new Worker(entry))
  for (const worker of workers) {
    worker.on('error', (error) => broken(error.stack ?? error.message))
    // Dismissed ones end too: by then nobody listens.
    worker.on('exit', (code) => broken(`a thread ended in the middle of its work, code ${code}`))
  }
  const lines = workers.map((worker) =>
    lineOf({
      post: (message, transfer) => worker.postMessage(message, [...transfer]),
      listen: (listener) => void worker.on('message', listener),
    }),
  )
  return { lines, dismiss: () => workers.forEach((worker) => void worker.terminate()) }
}

/** Loaded by those commands alone that use threads: it takes 5 ms. */
const workerThreads = () => import('node:worker_threads')

async function ownThread(): Promise<Crew> {
  const { MessageChannel } = await workerThreads()
  const { port1: near, port2: far } = new MessageChannel()
  const portOf = (port: typeof near): JobPort => ({
    post: (message, transfer) => port.postMessage(message, [...transfer]),
    listen: (listener) => void port.on('message', listener),
  })
  serveJobs(portOf(far), jobTable, threadTools)
  return { lines: [lineOf(portOf(near))], dismiss: () => near.close() }
}

/** ms between two looks at how far it is. */
const pace = 200

/** How work on threads ended, and what was found until then. */
interface Done<Outcome> {
  readonly end: JobEnd
  readonly outcome: () => Outcome
  /** The same as one part, for `pitchline merge`. */
  readonly gathered: () => unknown
}

/**
 * Does a job on threads, with a line of progress where a person watches. Ctrl-C stops it: what was found until then is
 * given back.
 *
 * @param only the items to do; all where left out
 */
export async function runOnThreads<Input, Part, Outcome>(
  kind: JobKind<Input, Part, Outcome>,
  input: Input,
  count: number,
  io: Io,
  only?: JobRange,
): Promise<Done<Outcome>> {
  let break_: (story: string) => void = () => {}
  const broken = new Promise<JobEnd>((resolve) => (break_ = (story) => resolve({ type: 'failed', story })))
  const crew = await crewOf(count, break_)
  const begun = performance.now()
  let shownAt = begun
  const heard = () => {
    const now = performance.now()
    if (now - shownAt < pace) return
    shownAt = now
    io.progress?.(progressText(job.done(), job.total, toEngine(now - begun, 'time', 'ms')))
  }
  const job = runJob(kind, input, 1, crew.lines, heard, only)
  const stop = () => job.stop()
  process.once('SIGINT', stop)
  try {
    const end = await Promise.race([job.end, broken])
    return { end, outcome: job.outcome, gathered: job.gathered }
  } finally {
    process.off('SIGINT', stop)
    io.progress?.('')
    crew.dismiss()
  }
}
