import { parentPort } from 'node:worker_threads'
import { serveJobs } from '../../shared-engine/jobs/serve.ts'
import { jobTable } from '../../shared-engine/jobs/table.ts'
import { threadTools } from './thread-tools.ts'

// The entry of a worker thread of the command line; built as a file of its own beside pitchline.cjs.
if (parentPort === null) throw new Error('this file is started as a thread, by threads.ts')
const port = parentPort
serveJobs(
  {
    post: (message, transfer) => port.postMessage(message, [...transfer]),
    listen: (listener) => void port.on('message', listener),
  },
  jobTable,
  threadTools,
)
