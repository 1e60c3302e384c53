import { anyJob, type JobTable } from './job.ts'
import { changesJob } from './changes.ts'
import { driveJob } from './drive.ts'
import { fitJob } from './fit.ts'
import { logJob } from './log.ts'
import { measureJob } from './measure.ts'
import { remedyJob } from './remedy.ts'
import { searchJob } from './search.ts'
import { sweepJob } from './sweep.ts'
import { validateJob } from './validate.ts'
import { uncertaintyJob } from './uncertainty.ts'
import { uncertaintyDrawsJob, uncertaintyToldJob } from './uncertainty-parts.ts'

/** Every kind of long work that a thread knows. To add one: a file like search.ts, and a line here. */
export const jobTable: JobTable = new Map(
  [
    anyJob(searchJob),
    anyJob(sweepJob),
    anyJob(uncertaintyJob),
    anyJob(uncertaintyDrawsJob),
    anyJob(uncertaintyToldJob),
    anyJob(remedyJob),
    anyJob(driveJob),
    anyJob(logJob),
    anyJob(fitJob),
    anyJob(measureJob),
    anyJob(validateJob),
    anyJob(changesJob),
  ].map((kind) => [kind.name, kind]),
)
