import { readFileSync } from 'node:fs'
import { readStoredBuild } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { SearchGathering, type SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import { Searcher } from '../../../shared-engine/search/search.ts'
import { readSpaceValue } from '../../../shared-engine/search/space-read.ts'
import { planOf, type SearchPlan } from '../../../shared-engine/search/space.ts'

/** One of the demo builds. */
export function demo(name: string): StoredBuild {
  const read = readStoredBuild(readFileSync(new URL(`../../../examples/${name}.build.json`, import.meta.url)))
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return read.value
}

/** A space without its head, on a build. */
export function planned(stored: StoredBuild, space: object): SearchPlan {
  const read = readSpaceValue({ format: 'pitchline-space', version: 1, ...space })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  const plan = planOf(stored, read.value)
  if (!plan.ok) throw new Error(JSON.stringify(plan.mistakes))
  return plan.value
}

/** The search in ranges of a length, the last range first where `backwards`. */
export function searched(plan: SearchPlan, length = plan.total, backwards = false): SearchOutcome {
  const ranges: [number, number][] = []
  for (let from = 0; from < plan.total; from += length)
    ranges.push([from, Math.min(plan.total, from + length)])
  if (backwards) ranges.reverse()
  const gathering = new SearchGathering(plan)
  // A searcher for every other range, so that kept parts and fresh ones both take part.
  let searcher = new Searcher(plan)
  ranges.forEach(([from, to], at) => {
    if (at % 2 === 0) searcher = new Searcher(plan)
    searcher.look(from, to)
    gathering.add(searcher.take())
  })
  return gathering.outcome()
}
