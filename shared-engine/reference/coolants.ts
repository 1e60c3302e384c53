import table from './coolants.json' with { type: 'json' }
import { assertTable, type Origin, originShape, positive, rowOf } from './table.ts'
import { z } from './zod.ts'

export const coolantIds = ['water', 'glycol30', 'glycol50'] as const
export type CoolantId = (typeof coolantIds)[number]

export const coolantTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  coolants: z.record(
    z.enum(coolantIds),
    z.strictObject({ label: z.string().min(1), densityKgM3: positive, heatJPerKgK: positive }),
  ),
})

const read = assertTable('coolants', coolantTableSchema, table)

export const coolantOrigin: Origin = read

interface Coolant {
  readonly label: string
  /** kg/m³ near 25 °C. */
  readonly density: number
  /** J/(kg·K) near 25 °C. */
  readonly specificHeat: number
}

const coolants: ReadonlyMap<string, Coolant> = new Map(
  Object.entries(read.coolants).map(([id, row]) => [
    id,
    { label: row.label, density: row.densityKgM3, specificHeat: row.heatJPerKgK },
  ]),
)

/** The coolant of an id. *Source:* IAPWS-95 and ASHRAE Handbook Fundamentals, compared as `coolants.json` says. */
export function coolantOf(id: CoolantId): Coolant {
  return rowOf(coolants, id)
}
