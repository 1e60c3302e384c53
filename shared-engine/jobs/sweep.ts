import type { StoredBuild } from '../entries/schema.ts'
import {
  SweepMachine,
  sweepOfPoints,
  sweepPlanOf,
  type Sweep,
  type SweepPlan,
  type SweepPoint,
  type SweepRequest,
} from '../sweep/sweep.ts'
import type { JobKind } from './job.ts'

/** A build and what to vary in it; `sweepPlanOf` has accepted it. */
export interface SweepInput {
  readonly stored: StoredBuild
  readonly request: SweepRequest
}

/** Points of a sweep with their numbers. */
export type SweepPart = readonly { readonly at: number; readonly point: SweepPoint }[]

function plan({ stored, request }: SweepInput): SweepPlan {
  const made = sweepPlanOf(stored, request)
  if (!made.ok) throw new Error(`a sweep was begun with mistakes: ${JSON.stringify(made.mistakes)}`)
  return made.value
}

/** A sweep as a job: one item for each of its points. */
export const sweepJob: JobKind<SweepInput, SweepPart, Sweep> = {
  name: 'sweep',
  alone: true,
  sizeOf: (input) => plan(input).values.length,
  startWorker: (input) => {
    const { values, ...rest } = plan(input)
    const machine = new SweepMachine({ values, ...rest })
    let found: { at: number; point: SweepPoint }[] = []
    return {
      work: (from, to) =>
        values.slice(from, to).forEach((value, at) => {
          found.push({ at: from + at, point: machine.pointAt(value) })
        }),
      take: () => {
        const part = found
        found = []
        return { part, transfer: [] }
      },
    }
  },
  startCollector: (input) => {
    const parts: SweepPart[number][] = []
    return {
      add: (part) => void parts.push(...part),
      outcome: () => {
        const points = parts.toSorted((one, other) => one.at - other.at).map(({ point }) => point)
        return sweepOfPoints(plan(input), points)
      },
      gathered: () => parts,
    }
  },
}
