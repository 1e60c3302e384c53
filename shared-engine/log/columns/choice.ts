import { channelIds, logUnits } from '../../reference/columns.ts'
import { z } from '../../reference/zod.ts'
import { failed, succeeded, type Result } from '../../mistakes/mistake.ts'
import { shown } from '../../mistakes/shown.ts'
import { textOf } from '../../entries/utf8.ts'
import { refusal } from '../refusal.ts'
import { undoableRepairs } from '../repairs.ts'

const finite = z.number()

const columnChoiceSchema = z.strictObject({
  channel: z.enum(channelIds).nullable().optional(),
  unit: z
    .string()
    .refine((key) => logUnits.has(key), 'a unit of the table, lower case')
    .optional(),
  factor: finite.refine((value) => value !== 0, 'not 0').optional(),
  offset: finite.optional(),
})

const columnsChoiceSchema = z.strictObject({
  delimiter: z.string().length(1).optional(),
  decimal: z.enum(['.', ',']).optional(),
  rate: z.number().positive().max(1e6).optional(),
  rpmFactor: z.number().positive().max(1e6).optional(),
  columns: z.record(z.string(), columnChoiceSchema).optional(),
  /** Repairs that are not to be made. */
  asLogged: z.array(z.enum(undoableRepairs)).optional(),
})

/** What a person lays down about a log's columns: it wins over what the program would make of them. */
export type ColumnsChoice = z.output<typeof columnsChoiceSchema>
/** The same for one column. */
export type ColumnChoice = z.output<typeof columnChoiceSchema>

/**
 * Reads a file of columns.
 *
 * @param bytes JSON: `{ delimiter?, decimal?, rate?, rpmFactor?, columns?: { "<heading, or number from 1>": { channel?,
 * unit?, factor?, offset? } }, asLogged? }`
 * @returns the choice, or every mistake in it
 */
export function readColumns(bytes: Uint8Array): Result<ColumnsChoice> {
  const text = textOf(bytes)
  let value: unknown
  try {
    value = JSON.parse(text ?? '')
  } catch {
    return failed([refusal('columns', { path: 'the file of columns', value: 'no JSON in UTF-8' })])
  }
  const read = columnsChoiceSchema.safeParse(value)
  if (read.success) return succeeded(read.data)
  return failed(
    read.error.issues.map((issue) =>
      refusal('columns', {
        path: issue.path.length === 0 ? 'the file of columns' : issue.path.map(String).join('.'),
        value: shown(valueAt(value, issue.path)),
        allowed: issue.message,
      }),
    ),
  )
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let at = value
  for (const key of path)
    at = typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined
  return at
}
