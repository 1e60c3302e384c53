import type { ThreadTools } from '../../shared-engine/jobs/serve.ts'

/** Node's clock, and the turn of its event loop in which waiting messages are heard. */
export const threadTools: ThreadTools = {
  now: () => performance.now(),
  pause: () => new Promise((resolve) => setImmediate(resolve)),
}
