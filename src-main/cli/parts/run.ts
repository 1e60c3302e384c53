import type { JobKind } from '../../../shared-engine/jobs/job.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { runOnThreads } from '../threads.ts'
import { reportStopped } from '../trouble.ts'
import { partText } from './file.ts'
import { rangeOf, type WhichPart } from './option.ts'
import { packed } from './plain.ts'

/** Does one part of a job and prints it; gives the exit code. A part that was stopped is none. */
export async function runPart<Input extends object, Part, Outcome>(
  kind: JobKind<Input, Part, Outcome>,
  input: Input,
  part: WhichPart,
  threads: number,
  io: Io,
): Promise<number> {
  const range = rangeOf(part, kind.sizeOf(input))
  const { end, gathered } = await runOnThreads(kind, input, threads, io, range)
  if (end.type === 'failed') throw new Error(end.story)
  if (end.type === 'stopped') return reportStopped(io, `part ${part.number}/${part.of}`)
  io.out(
    partText({
      job: kind.name,
      part,
      input: Object.fromEntries(Object.entries(input)),
      found: packed(gathered()),
    }),
  )
  return exit.within
}
