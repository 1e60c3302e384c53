import table from './coolants.json' with { type: 'json' }
import { piecewiseLinear } from '../numeric/table.ts'
import { milli } from '../units/factors.ts'
import { assertTable, originShape, positive, rowOf } from './table.ts'
import { z } from './zod.ts'

export const coolantIds = ['water', 'glycol30', 'glycol40', 'glycol50', 'glycol60'] as const
export type CoolantId = (typeof coolantIds)[number]

const coolantSchema = z
  .strictObject({
    label: z.string().min(1),
    densityKgM3: positive,
    heatJPerKgK: positive,
    freezesC: z.number(),
    boilingRiseK: z.number().min(0),
    atC: z.array(z.number()).min(2),
    viscosityMpas: z.array(positive).min(2),
  })
  .refine((row) => row.atC.length === row.viscosityMpas.length, 'one viscosity for each temperature')
  .refine(
    (row) => row.viscosityMpas.every((value, at) => at === 0 || value < (row.viscosityMpas[at - 1] ?? 0)),
    'a warmer coolant is thinner',
  )

export const coolantTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  coolants: z.record(z.enum(coolantIds), coolantSchema),
})

const read = assertTable('coolants', coolantTableSchema, table)

interface Coolant {
  readonly label: string
  /** kg/m³ near 25 °C. */
  readonly density: number
  /** J/(kg·K) near 25 °C. */
  readonly specificHeat: number
  /** °C. */
  readonly freezes: number
  /** K by which it boils above water at the same pressure. */
  readonly boilingRise: number
}

const coolants: ReadonlyMap<string, Coolant> = new Map(
  Object.entries(read.coolants).map(([id, row]) => [
    id,
    {
      label: row.label,
      density: row.densityKgM3,
      specificHeat: row.heatJPerKgK,
      freezes: row.freezesC,
      boilingRise: row.boilingRiseK,
    },
  ]),
)

const logarithms: ReadonlyMap<string, (celsius: number) => number> = new Map(
  Object.entries(read.coolants).map(([id, row]) => [
    id,
    piecewiseLinear(
      row.atC,
      row.viscosityMpas.map((value) => Math.log(value * milli)),
      'hold',
    ),
  ]),
)

/** The coolant of an id. *Source:* IAPWS-95 and ASHRAE Handbook Fundamentals, compared as `coolants.json` says. */
export function coolantOf(id: CoolantId): Coolant {
  return rowOf(coolants, id)
}

/**
 * Viscosity of a coolant.
 *
 * ln μ is linear between the table's points and held past its ends.
 *
 * @param celsius °C
 * @returns μ, Pa·s
 * *Source:* IAPWS for water, ASHRAE Handbook Fundamentals for the mixtures: `coolants.json`.
 * @example coolantViscosity('water', 20) // 0.001002
 */
export function coolantViscosity(id: CoolantId, celsius: number): number {
  return Math.exp(rowOf(logarithms, id)(celsius))
}
