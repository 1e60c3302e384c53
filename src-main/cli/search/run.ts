import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import { readSpace } from '../../../shared-engine/search/space-read.ts'
import { planOf } from '../../../shared-engine/search/space.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import { searchJob } from '../../../shared-engine/jobs/search.ts'
import { contentOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { searchCsv, searchJson } from './data.ts'
import { mostThreads, runOnThreads, usualThreads } from '../threads.ts'
import { mistake, tell } from '../trouble.ts'

/** Searches a space on a build and prints what holds; gives the exit code. */
export async function searchBuild(
  buildFile: string,
  spaceFile: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  // Both are read before either is given up, so that the mistakes of both are told at once.
  const stored = contentOf(buildFile, readStoredBuild, io)
  const space = contentOf(spaceFile, readSpace, io)
  const threads = threadsOf(options['workers'], io)
  if (stored === null || space === null || threads === null) return exit.unreadable
  const plan = planOf(stored, space)
  if (!plan.ok) return tell(io, spaceFile, plan.mistakes)
  const { end, outcome } = await runOnThreads(searchJob, { stored, space }, threads, io)
  if (end.type === 'failed') throw new Error(end.story)
  const stopped = end.type === 'stopped'
  if (options['json'] === true) io.out(searchJson(plan.value, outcome, stopped))
  else if (options['csv'] === true) io.out(searchCsv(plan.value, outcome))
  else {
    const { searchText } = await import('./text.ts')
    const system = options['units'] === 'imperial' ? 'imperial' : 'metric'
    io.out(searchText(plan.value, space.name ?? '', outcome, stopped, system))
  }
  return codeOf(outcome)
}

/** Found, and the best has nothing over its limit. */
function codeOf({ rows }: SearchOutcome): number {
  const over = rows[0]?.limits.some((limit) => limit.standing === 'over') ?? true
  return over ? exit.over : exit.within
}

function threadsOf(typed: string | boolean | undefined, io: Io): number | null {
  if (typeof typed !== 'string') return usualThreads()
  const count = Number(typed)
  if (Number.isInteger(count) && count >= 1 && count <= mostThreads) return count
  const allowed = `a whole number, 1 to ${mostThreads}`
  tell(io, 'pitchline', [mistake('out-of-range', { path: '--workers', value: `"${typed}"`, allowed })])
  return null
}
