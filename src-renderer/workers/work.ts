import type { JobPort } from '../../shared-engine/jobs/job.ts'
import { serveJobs } from '../../shared-engine/jobs/serve.ts'
import { jobTable } from '../../shared-engine/jobs/table.ts'

/** Does the engine's jobs for whoever is at the other end of a port: in a thread of its own, or in the window's. */
export function workFor(port: JobPort): void {
  serveJobs(port, jobTable, { now: () => performance.now(), pause })
}

const channel = new MessageChannel()
const waiting: (() => void)[] = []
channel.port1.onmessage = () => waiting.shift()?.()

/** Comes back behind the messages that wait; a timer would come back 4 ms later than that. */
function pause(): Promise<void> {
  return new Promise((resolve) => {
    waiting.push(resolve)
    channel.port2.postMessage(null)
  })
}
