import table from './measurements.json' with { type: 'json' }
import { assertTable } from './table.ts'
import { z } from './zod.ts'

const words = z.array(z.string().min(1))

const guideSchema = z.strictObject({
  title: z.string().min(1),
  need: words,
  steps: words.min(1),
  cautions: words.min(1),
  readings: z.record(z.string(), z.string().min(1)),
  trap: z.string().min(1),
  source: z.string().min(10),
  rows: words,
  optionalColumns: words,
  lists: words,
  optionalLists: words,
  least: z.number().int().positive(),
  once: words,
  given: z.array(
    z.strictObject({
      name: z.string().min(1),
      with: z.string().optional(),
      optional: z.literal(true).optional(),
    }),
  ),
  defaults: z.record(z.string(), z.union([z.number(), z.string(), z.null()])),
  choices: z.record(z.string(), z.union([z.string(), words])).optional(),
  results: z.array(z.strictObject({ name: z.string(), path: z.string(), unit: z.string() })).min(1),
  figures: z.array(z.strictObject({ name: z.string(), unit: z.string() })),
  fitOn: z.string().nullable(),
})

const measurementTableSchema = z.strictObject({
  note: z.string().min(10),
  mayBeNegative: words,
  withoutInstrument: words,
  mayBeZero: words,
  tests: z.record(z.string(), guideSchema),
})

/** What a guided test reads, needs and gives, and how it is done. */
export type Guide = z.output<typeof guideSchema>

export type TestId = keyof typeof table.tests

let read: z.output<typeof measurementTableSchema> | null = null

/** Checked when it is first asked for: a command that measures nothing need not wait for it. */
function measurements(): z.output<typeof measurementTableSchema> {
  read ??= assertTable('measurements', measurementTableSchema, table)
  return read
}

/** Every guided test, in the order in which they are listed. */
export const testIds = Object.keys(table.tests) as readonly TestId[]

/** Whether a word names a guided test. */
export function isTestId(word: string): word is TestId {
  return Object.hasOwn(table.tests, word)
}

/** The guide of a test: steps, cautions, readings, source. */
export function guideOf(test: TestId): Guide {
  const guide = measurements().tests[test]
  if (guide === undefined) throw new Error(`no guided test ${test}`)
  return guide
}

/** Whether a reading of this name may be below zero. */
export const mayBeNegative = (name: string): boolean => measurements().mayBeNegative.includes(name)

/** Whether a name is a count or a label, read without an instrument. */
export const withoutInstrument = (name: string): boolean => measurements().withoutInstrument.includes(name)

/** Whether a result of this name may be zero: a drag, a slip, an error. */
export const mayBeZero = (name: string): boolean => measurements().mayBeZero.includes(name)
