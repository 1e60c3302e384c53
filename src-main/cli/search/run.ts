import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import { readSpace } from '../../../shared-engine/search/space-read.ts'
import { planOf } from '../../../shared-engine/search/space.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import { searchJob } from '../../../shared-engine/jobs/search.ts'
import { contentOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit, exitOf } from '../exit.ts'
import type { Io } from '../io.ts'
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
  if (stored === null || space === null || threads === null) return exit.unreadable
  const plan = planOf(stored, space)
  if (!plan.ok) return report(io, spaceFile, plan.mistakes)
  const { end, outcome } = await runOnThreads(searchJob, { stored, space }, threads, io)
  if (end.type === 'failed') throw new Error(end.story)
  const stopped = end.type === 'stopped'
  if (stopped && outcome.looked === 0) return reportStopped(io, spaceFile)
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
