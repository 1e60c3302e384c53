import { jobRequestSchema, type JobPort, type JobRequest, type JobTable, type JobWorker } from './job.ts'

/** What a thread brings along that the engine does not have: a clock, and a way to let messages in. */
export interface ThreadTools {
  /** ms, from any moment on. */
  readonly now: () => number
  /** Resolves after waiting messages have been heard. */
  readonly pause: () => Promise<void>
}

/** ms between two looks at the messages: a Stop is heard long before 100 ms, a window is never held for 50 ms. */
const longestSlice = 8
const firstSlice = 16

/**
 * A thread's whole life: opens jobs, does ranges one after the other in short slices, and lets go of a job in the
 * middle of a range when it is closed.
 *
 * @param port the line to the asking side
 * @param table the kinds of job that this thread knows
 */
export function serveJobs(port: JobPort, table: JobTable, tools: ThreadTools): void {
  /** Runs that were asked for and not closed; those of them that are opened. */
  const wanted = new Set<number>()
  const opened = new Map<number, JobWorker<unknown>>()
  let slice = firstSlice
  let queue = Promise.resolve()

  const doRange = async ({ run, from, to }: Extract<JobRequest, { type: 'range' }>) => {
    let at = from
    while (at < to) {
      const worker = opened.get(run)
      if (worker === undefined) return
      let end = Math.min(to, at + slice)
      const begun = tools.now()
      if (worker.some === undefined) worker.work(at, end)
      else end = worker.some(at, end)
      const spent = Math.max(tools.now() - begun, 0.05)
      // Halfway to the size that would have taken the whole time, so that one slow slice does not decide alone.
      slice = Math.max(1, Math.round((slice + Math.min(slice * 4, ((end - at) * longestSlice) / spent)) / 2))
      at = end
      await tools.pause()
    }
    const worker = opened.get(run)
    if (worker === undefined) return
    const { part, transfer } = worker.take()
    port.post({ type: 'part', run, from, to, part }, transfer)
  }

  const guarded = async (run: number, work: () => void | Promise<void>) => {
    try {
      await work()
    } catch (bug) {
      wanted.delete(run)
      opened.delete(run)
      port.post(
        { type: 'failed', run, story: bug instanceof Error ? (bug.stack ?? bug.message) : String(bug) },
        [],
      )
    }
  }

  const open = async ({ run, job, input }: Extract<JobRequest, { type: 'open' }>) => {
    const kind = await table.get(job)?.()
    if (kind === undefined) throw new Error(`no job "${job}"`)
    // Closed while its kind was loaded, or before its turn came.
    if (!wanted.has(run)) return
    slice = firstSlice
    opened.set(run, kind.startWorker(input))
  }

  port.listen((message) => {
    const request = jobRequestSchema.parse(message)
    if (request.type === 'close') {
      wanted.delete(request.run)
      opened.delete(request.run)
      return
    }
    if (request.type === 'open') wanted.add(request.run)
    queue = queue.then(() =>
      guarded(request.run, () => (request.type === 'open' ? open(request) : doRange(request))),
    )
  })
}
