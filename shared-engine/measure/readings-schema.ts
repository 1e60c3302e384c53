import { allowedOf, fieldOf } from '../entries/fields.ts'
import { isJsonGroup } from '../entries/json-group.ts'
import { magnetIds } from '../reference/magnets.ts'
import { coolantIds } from '../reference/coolants.ts'
import { materialIds } from '../reference/materials.ts'
import { type Guide, mayBeNegative, withoutInstrument } from '../reference/measurements.ts'
import { z } from '../reference/zod.ts'
import { readingsFormat, readingsVersion } from './readings.ts'

/** More rows than a bench test has; each costs as much time as there are rows. */
const mostRows = 2000

const notBelowZero = 'a number of 0 or more'
/** No bench reads more in any unit of the tables; beyond it, squares of readings would leave what a number can hold. */
const mostReading = 1e12
const tooMuch = 'a number up to 1e12'

/** A number that was read: below zero only where its name may be. */
function readingOf(name: string) {
  if (name === 'direction') {
    const error = '1 or -1'
    return z.union([z.literal(1), z.literal(-1)], { error })
  }
  return mayBeNegative(name)
    ? z
        .number({ error: 'a number' })
        .min(-mostReading, { error: tooMuch })
        .max(mostReading, { error: tooMuch })
    : atLeastZero
}

const atLeastZero = z
  .number({ error: notBelowZero })
  .min(0, { error: notBelowZero })
  .max(mostReading, { error: tooMuch })

const instrumentSchema = z.strictObject(
  {
    percent: atLeastZero.default(0),
    digits: atLeastZero.default(0),
    resolution: atLeastZero.default(0),
    plusMinus: atLeastZero.default(0),
  },
  { error: 'percent, digits, resolution and plusMinus, each a number of 0 or more' },
)

/** Words that a name may be; null where it is a number. */
export function choicesOf(guide: Guide, name: string): readonly string[] | null {
  const choices = guide.choices?.[name]
  if (choices === undefined) return null
  if (typeof choices !== 'string') return choices
  if (name === 'motor.magnet') return magnetIds
  if (name === 'cooling.coolant') return coolantIds
  return [...materialIds, 'custom']
}

/** Names under `given` that a test knows. */
export function givenNames(guide: Guide): readonly string[] {
  const names = [...guide.given.map(({ name }) => name), ...Object.keys(guide.defaults)]
  return [...new Set(names)]
}

/** What a given number may be: in the range of its entry, or not below zero. */
function givenNumberOf(name: string) {
  const field = fieldOf(name)
  if (field === undefined) return readingOf(name)
  const { low = -Infinity, high = Infinity, whole = false } = field
  const error = allowedOf(field)
  const number = z.number({ error }).min(low, { error }).max(high, { error })
  return whole ? number.refine(Number.isInteger, { error }) : number
}

/** Which of the two forms is meant is seen from the value, so that each mistake is told against its own form. */
function givenSchemaOf(guide: Guide, name: string, value: unknown) {
  const choices = choicesOf(guide, name)
  if (choices !== null)
    return z.enum(choices as [string, ...string[]], { error: `one of ${choices.join(', ')}` })
  const number = givenNumberOf(name)
  if (typeof value !== 'object' || value === null) return number
  return z
    .strictObject({
      value: number,
      plusMinus: atLeastZero.optional(),
      plusMinusPercent: atLeastZero.optional(),
      shape: z.enum(['uniform', 'normal'], { error: 'one of uniform, normal' }).optional(),
    })
    .refine((given) => given.plusMinus === undefined || given.plusMinusPercent === undefined, {
      error: 'either plusMinus or plusMinusPercent',
    })
}

/** Optional columns that stand in any row: then they have to stand in all. */
function optionalColumnsIn(guide: Guide, rows: unknown): readonly string[] {
  if (!Array.isArray(rows)) return []
  return guide.optionalColumns.filter((name) =>
    rows.some((row: unknown) => isJsonGroup(row) && Object.hasOwn(row, name)),
  )
}

function rowsSchemaOf(guide: Guide, rows: unknown) {
  const columns = [...guide.rows, ...optionalColumnsIn(guide, rows)]
  const allowed = [...guide.rows, ...guide.optionalColumns].join(', ')
  const row = z.strictObject(Object.fromEntries(columns.map((name) => [name, readingOf(name)])), {
    error: `a row of ${allowed}`,
  })
  return z
    .array(row, { error: `a list of rows of ${allowed}` })
    .max(mostRows, { error: `at most ${mostRows} rows` })
}

function listsSchemaOf(guide: Guide) {
  const listOf = (name: string) =>
    z
      .array(readingOf(name), { error: 'a list of readings' })
      .max(mostRows, { error: `at most ${mostRows} readings` })
  return z.strictObject(
    {
      ...Object.fromEntries(guide.lists.map((name) => [name, listOf(name)])),
      ...Object.fromEntries(guide.optionalLists.map((name) => [name, listOf(name).optional()])),
    },
    { error: `lists of ${[...guide.lists, ...guide.optionalLists].join(', ')}` },
  )
}

/**
 * The schema of one test's readings. It looks at the value only to choose between forms that may both stand there.
 *
 * @param value what came out of JSON
 */
export function readingsSchemaOf(test: string, guide: Guide, value: Readonly<Record<string, unknown>>) {
  const names = [...guide.rows, ...guide.optionalColumns, ...guide.lists, ...guide.optionalLists]
  const read = names.filter((name) => !withoutInstrument(name))
  const given = isJsonGroup(value['given']) ? value['given'] : {}
  const hasLists = guide.lists.length + guide.optionalLists.length > 0
  return z.strictObject({
    format: z.literal(readingsFormat, { error: `"${readingsFormat}"` }),
    version: z.literal(readingsVersion, { error: `${readingsVersion}` }),
    test: z.literal(test, { error: `"${test}", the test that was asked for` }),
    name: text(120),
    notes: text(10_000),
    ...(guide.rows.length > 0 ? { rows: rowsSchemaOf(guide, value['rows']) } : {}),
    ...(hasLists
      ? { lists: guide.lists.length > 0 ? listsSchemaOf(guide) : listsSchemaOf(guide).optional() }
      : {}),
    instruments: z
      .strictObject(Object.fromEntries(read.map((name) => [name, instrumentSchema.optional()])), {
        error: `instruments of ${read.join(', ')}`,
      })
      .optional(),
    given: z
      .strictObject(
        Object.fromEntries(
          givenNames(guide).map((name) => [name, givenSchemaOf(guide, name, given[name]).optional()]),
        ),
        { error: 'numbers by entry path or name' },
      )
      .optional(),
  })
}

const text = (longest: number) => {
  const error = `text of at most ${longest} characters`
  return z.string({ error }).max(longest, { error }).optional()
}
