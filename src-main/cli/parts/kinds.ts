import { readBuildValue, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { JobKind } from '../../../shared-engine/jobs/job.ts'
import { searchJob } from '../../../shared-engine/jobs/search.ts'
import { sweepJob } from '../../../shared-engine/jobs/sweep.ts'
import { uncertaintyJob } from '../../../shared-engine/jobs/uncertainty.ts'
import type { Mistake, Result } from '../../../shared-engine/mistakes/mistake.ts'
import { planOf } from '../../../shared-engine/search/space.ts'
import { readSpaceValue } from '../../../shared-engine/search/space-read.ts'
import { z } from '../../../shared-engine/reference/zod.ts'
import { sweepPlanOf } from '../../../shared-engine/sweep/sweep.ts'
import { fewestSamples, mostSamples } from '../../../shared-engine/uncertainty/samples.ts'
import type { OptionValues } from '../command.ts'
import type { Io } from '../io.ts'
import { mistake } from '../trouble.ts'
import { tellSearch } from '../search/run.ts'
import { tellSweep } from '../sweep/run.ts'
import { tellUncertainty } from '../uncertainty/run.ts'

/** A kind of work that several computers can share. */
interface DividedKind<Input, Part, Outcome> {
  readonly job: JobKind<Input, Part, Outcome>
  /** What is wrong with an input that stands in a file; empty where it can be worked with. */
  readonly mistakesIn: (input: Input) => readonly Mistake[]
  /** Prints the whole answer as the command itself does; gives the exit code. */
  readonly tell: (input: Input, outcome: Outcome, options: OptionValues, io: Io) => number | Promise<number>
}

type AnyDividedKind = DividedKind<unknown, unknown, unknown>

const any = <Input, Part, Outcome>(kind: DividedKind<Input, Part, Outcome>) => kind as AnyDividedKind

const mistakesOf = (result: Result<unknown>) => (result.ok ? [] : result.mistakes)

const request = z.strictObject({
  path: z.string(),
  from: z.number(),
  to: z.number(),
  steps: z.number(),
  figures: z.array(z.string()),
})
const draws = z.object({
  samples: z.number().int().min(fewestSamples).max(mostSamples),
  seed: z.number().int().nonnegative(),
})

/** What a schema says against a value, as a mistake of the file. */
const unlike = (schema: z.ZodType, value: unknown): readonly Mistake[] =>
  schema.safeParse(value).success ? [] : [mistake('not-a-part', { value: 'an input of another shape' })]

const kinds: readonly AnyDividedKind[] = [
  any({
    job: searchJob,
    mistakesIn: ({ stored, space }) => {
      const read = [...mistakesOf(readStoredBuildValue(stored)), ...mistakesOf(readSpaceValue(space))]
      return read.length > 0 ? read : mistakesOf(planOf(stored, space))
    },
    tell: (input, outcome, options, io) => tellSearch(input, outcome, false, options, io),
  }),
  any({
    job: sweepJob,
    mistakesIn: ({ stored, request: asked }) => {
      const read = [...mistakesOf(readStoredBuildValue(stored)), ...unlike(request, asked)]
      return read.length > 0 ? read : mistakesOf(sweepPlanOf(stored, asked))
    },
    tell: ({ stored }, outcome, options, io) => tellSweep(stored.name, outcome, options, io),
  }),
  any({
    job: uncertaintyJob,
    mistakesIn: (input) => [...mistakesOf(readBuildValue(input.build)), ...unlike(draws, input)],
    tell: (_, outcome, options, io) => {
      if (outcome === null) throw new Error('all parts are in, and none has a sample')
      return tellUncertainty(outcome, false, options, io)
    },
  }),
]

/** The kinds by the names of their jobs. */
export const dividedKinds: ReadonlyMap<string, AnyDividedKind> = new Map(
  kinds.map((kind) => [kind.job.name, kind]),
)
