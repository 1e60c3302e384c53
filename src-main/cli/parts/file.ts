import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { z } from '../../../shared-engine/reference/zod.ts'
import { modelVersion } from '../../../shared-engine/constants.ts'
import { failed, succeeded, type Mistake, type Result } from '../../../shared-engine/mistakes/mistake.ts'
import { cannotRead } from '../build-file.ts'
import { jsonText } from '../json.ts'
import { mistake } from '../trouble.ts'

const format = 'pitchline-part'
const version = 1

const place = z.number().int().nonnegative()
const schema = z.strictObject({
  format: z.literal(format),
  version: z.literal(version),
  /** What computed it: another program may give other last digits. */
  program: z.strictObject({ version: z.string(), commit: z.string(), model: z.number(), engine: z.string() }),
  job: z.string(),
  part: z.strictObject({ number: place.min(1), of: place.min(1) }),
  input: z.record(z.string(), z.unknown()),
  found: z.unknown(),
  sum: z.string(),
})

/** One part of a divided run, as it stands in its file. */
export type PartFile = z.output<typeof schema>

/** This very program, and the machine code's maker below it. */
function programHere(): PartFile['program'] {
  const facts =
    typeof __PITCHLINE_VERSION__ === 'undefined' ? ['', ''] : [__PITCHLINE_VERSION__, __PITCHLINE_COMMIT__]
  const [own = '', commit = ''] = facts
  return { version: own, commit, model: modelVersion, engine: `V8 ${process.versions.v8}` }
}

const sumOf = (content: object) => createHash('sha256').update(JSON.stringify(content)).digest('hex')

/** A part as text. Its sum tells a file that a killed run or a full disk cut short, or that was changed, from a whole one. */
export function partText(content: Pick<PartFile, 'job' | 'part' | 'input' | 'found'>): string {
  const { job, part, input, found } = content
  // As it comes out of JSON again: a sum of anything else would not be found on reading.
  const whole = JSON.parse(
    JSON.stringify({ format, version, program: programHere(), job, part, input, found }),
  ) as object
  return jsonText({ ...whole, sum: sumOf(whole) })
}

/** The part in a file, or why there is none. */
export function readPart(file: string): Result<PartFile> {
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch (thrown) {
    return failed([cannotRead(thrown)])
  }
  if (text === '') return failed([damaged('nothing')])
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return failed([text.includes(format) ? damaged('no end') : notPart('no JSON')])
  }
  const read = schema.safeParse(value)
  if (!read.success) return failed([notPart(formatOf(value))])
  const { sum, ...content } = value as PartFile
  return sumOf(content) === sum ? succeeded(read.data) : failed([damaged('other content than was written')])
}

const damaged = (value: string): Mistake =>
  mistake('part-damaged', { value, allowed: 'a part as it was printed; compute it again' })

const notPart = (value: string): Mistake =>
  mistake('not-a-part', { value, allowed: 'what search, sweep or uncertainty print with --part' })

function formatOf(value: unknown): string {
  const given =
    value !== null && typeof value === 'object' ? (value as { format?: unknown }).format : undefined
  if (given === format) return 'a part of another version'
  return typeof given === 'string' ? `"${given}"` : 'something else'
}
