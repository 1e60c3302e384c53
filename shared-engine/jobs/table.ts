import { anyJob, type JobSource, type JobTable } from './job.ts'
import { driveJob } from './drive.ts'
import { remedyJob } from './remedy.ts'
import { searchJob } from './search.ts'
import { sweepJob } from './sweep.ts'
import { uncertaintyJob } from './uncertainty.ts'
import { uncertaintyDrawsJob, uncertaintyToldJob } from './uncertainty-parts.ts'

/** What follows every change of a build: there from a thread's start. */
const atOnce = [
  anyJob(searchJob),
  anyJob(sweepJob),
  anyJob(uncertaintyJob),
  anyJob(uncertaintyDrawsJob),
  anyJob(uncertaintyToldJob),
  anyJob(remedyJob),
  anyJob(driveJob),
]

/**
 * Every kind of long work that a thread knows. To add one: a file like search.ts, and a line here. What reads logs and
 * readings is a third of it all, and is loaded where there are any.
 */
export const jobTable: JobTable = new Map<string, JobSource>([
  ...atOnce.map((kind) => [kind.name, () => kind] as const),
  ['log', async () => anyJob((await import('./log.ts')).logJob)],
  ['fit', async () => anyJob((await import('./fit.ts')).fitJob)],
  ['measure', async () => anyJob((await import('./measure.ts')).measureJob)],
  ['validate', async () => anyJob((await import('./validate.ts')).validateJob)],
  ['changes', async () => anyJob((await import('./changes.ts')).changesJob)],
])
