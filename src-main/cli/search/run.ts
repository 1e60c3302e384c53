import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import { readSpace } from '../../../shared-engine/search/space-read.ts'
import { planOf } from '../../../shared-engine/search/space.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import { searchJob, type SearchInput } from '../../../shared-engine/jobs/search.ts'
import { contentOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'
import { partOf } from '../parts/option.ts'
import { runPart } from '../parts/run.ts'
import { searchCsv, searchJson } from './data.ts'
import { systemOf, threadsOf } from '../option-values.ts'
import { runOnThreads } from '../threads.ts'
import { report, reportStopped } from '../trouble.ts'

/** Searches a space on a build and prints what holds; gives the exit code. */
export async function searchBuild(
  buildFile: string,
  spaceFile: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  if (readsInputTwice([buildFile, spaceFile], io)) return exit.unreadable
  // Both are read before either is given up, so that the mistakes of both are reported at once.
  const stored = contentOf(buildFile, readStoredBuild, io)
  const space = contentOf(spaceFile, readSpace, io)
  const threads = threadsOf(options, io)
  const part = partOf(options, io)
  if (stored === null || space === null || threads === null || part === undefined) return exit.unreadable
  const plan = planOf(stored, space)
  if (!plan.ok) return report(io, spaceFile, plan.mistakes)
  const input = { stored, space }
  if (part !== null) return runPart(searchJob, input, part, threads, io)
  const done = await runOnThreads(searchJob, input, threads, io)
  if (done.end.type === 'failed') throw new Error(done.end.story)
  const outcome = done.outcome()
  const stopped = done.end.type === 'stopped'
  if (stopped && outcome.looked === 0) return reportStopped(io, spaceFile)
  return tellSearch(input, outcome, stopped, options, io)
}

/** Prints what a search found; gives the exit code. */
export async function tellSearch(
  { stored, space }: SearchInput,
  outcome: SearchOutcome,
  stopped: boolean,
  options: OptionValues,
  io: Io,
): Promise<number> {
  const plan = planOf(stored, space)
  if (!plan.ok) throw new Error('a search was done on a space with mistakes')
  if (options['json'] === true) io.out(searchJson(plan.value, outcome, stopped))
  else if (options['csv'] === true) io.out(searchCsv(plan.value, outcome))
  else {
    const { searchText } = await import('./text.ts')
    io.out(searchText(plan.value, space.name ?? '', outcome, stopped, systemOf(options)))
  }
  return codeOf(outcome)
}

/** Found, and the best has nothing over its limit. */
function codeOf({ rows }: SearchOutcome): number {
  return rows[0] === undefined ? exit.over : exitOf(rows[0].limits)
}
