import type { StoredBuild } from '../entries/schema.ts'
import { planOf, type SearchPlan } from '../search/space.ts'
import { SearchGathering, type SearchOutcome } from '../search/outcome.ts'
import { Searcher, type SearchPart } from '../search/search.ts'
import type { StoredSpace } from '../search/space-schema.ts'
import type { JobKind } from './job.ts'

/** What a search is made of: plain data, that every thread makes its own plan of. `planOf` has accepted it. */
export interface SearchInput {
  readonly stored: StoredBuild
  readonly space: StoredSpace
}

function plan({ stored, space }: SearchInput): SearchPlan {
  const made = planOf(stored, space)
  if (!made.ok)
    throw new Error(`a search was begun on a space with mistakes: ${JSON.stringify(made.mistakes)}`)
  return made.value
}

/** The gearing search; its items are candidates. */
export const searchJob: JobKind<SearchInput, SearchPart, SearchOutcome> = {
  name: 'search',
  sizeOf: (input) => plan(input).total,
  startWorker: (input) => {
    const searcher = new Searcher(plan(input))
    return {
      work: (from, to) => searcher.look(from, to),
      take: () => {
        const part = searcher.take()
        return { part, transfer: buffersOf(part) }
      },
    }
  },
  startCollector: (input) => {
    const gathering = new SearchGathering(plan(input))
    return {
      add: (part) => gathering.add(part),
      outcome: () => gathering.outcome(),
      gathered: () => gathering.gathered(),
    }
  },
}

/** The lists of a part that can be handed over; rows are few and are copied. */
function buffersOf({ map, front }: SearchPart): ArrayBuffer[] {
  const lists = [...Object.values(map), ...(front === null ? [] : Object.values(front))]
  return lists.map((list: Float64Array) => list.buffer as ArrayBuffer)
}
