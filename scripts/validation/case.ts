import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { Build, StoredBuild } from '../../shared-engine/entries/schema.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import { z } from '../../shared-engine/reference/zod.ts'

/** Where measurements and inputs lie. */
const folder = path.join('test', 'validation')

const words = z.string().min(1)

const common = { id: words, group: words, measured: words, source: words, builder: words }

const computedCase = z.strictObject({
  ...common,
  inputs: z.record(z.string(), z.unknown()),
  assumed: words.optional(),
})

const reportedCase = z.strictObject({ ...common, inputs: z.null(), reported: words, direction: words })

const casesSchema = z.strictObject({ about: words, cases: z.array(z.union([computedCase, reportedCase])) })

/** A measurement; one without inputs can't be compared with anything and says what was reported of it. */
export type ValidationCase = z.infer<typeof computedCase> | z.infer<typeof reportedCase>

/** All of them, in the order of the page; throws where the file is not what it should be. */
export function validationCases(): readonly ValidationCase[] {
  const file = path.join(folder, 'measured.json')
  return casesSchema.parse(JSON.parse(readFileSync(file, 'utf8'))).cases
}

/** What the program says of a case, as the page's cells. */
export interface Compared {
  readonly figure: string
  readonly error: string
  readonly direction: string
}

/** How a case is computed: its inputs checked, then put through the engine. */
export type Computation = (inputs: unknown) => Compared

/** A computation whose inputs have a shape. */
export function computation<Shape extends z.ZodRawShape>(
  shape: Shape,
  compute: (inputs: z.infer<z.ZodObject<Shape, z.core.$strict>>) => Compared,
): Computation {
  const schema = z.strictObject(shape)
  return (inputs) => compute(schema.parse(inputs))
}

/** A build as the engine reads it; throws with its mistakes. */
export function buildOf(stored: unknown): Build {
  const read = readBuildValue(stored)
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return read.value
}

/** A stored build beside the measurements. */
export function storedBuild(name: string): StoredBuild {
  return JSON.parse(readFileSync(path.join(folder, name), 'utf8')) as StoredBuild
}
