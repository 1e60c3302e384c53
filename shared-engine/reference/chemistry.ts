import { toEngine } from '../units/convert.ts'
import table from './chemistry.json' with { type: 'json' }
import { piecewiseLinear } from '../numeric/table.ts'
import { assertTable, originShape, positive, rowOf } from './table.ts'
import { z } from './zod.ts'

export const chemistryIds = ['lipo', 'lihv', 'liion', 'lifepo4'] as const
export type ChemistryId = (typeof chemistryIds)[number]

const rises = (values: readonly number[]) =>
  values.every((value, index) => index === 0 || value > (values[index - 1] ?? value))

const chemistrySchema = z
  .strictObject({
    label: z.string().min(1),
    floorVolts: positive,
    storageVolts: positive,
    soc: z.array(z.number().min(0).max(100)).min(2).refine(rises, 'charge must rise from row to row'),
    volts: z.array(positive).min(2).refine(rises, 'voltage must rise with charge'),
  })
  .refine((row) => row.soc.length === row.volts.length, 'one voltage for each charge')
  .refine((row) => row.soc[0] === 0 && row.soc.at(-1) === 100, 'the curve runs from 0 to 100 %')

export const chemistryTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  resistanceDoublingK: positive,
  resistanceDoublingNote: z.string().min(1),
  chemistries: z.record(z.enum(chemistryIds), chemistrySchema),
})

const read = assertTable('chemistry', chemistryTableSchema, table)

/** A cell chemistry: its resting curve and what the trade treats as its floor under load. */
interface Chemistry {
  readonly label: string
  /** V per cell under load. */
  readonly floorVolts: number
  /** V per cell for storage. */
  readonly storageVolts: number
  /** Charge of each point of the curve, 0 to 1, and its resting volts. */
  readonly charge: readonly number[]
  readonly volts: readonly number[]
}

const chemistries: ReadonlyMap<string, Chemistry> = new Map(
  Object.entries(read.chemistries).map(([id, row]) => [
    id,
    {
      label: row.label,
      floorVolts: row.floorVolts,
      storageVolts: row.storageVolts,
      charge: row.soc.map((percent) => toEngine(percent, 'fraction', '%')),
      volts: row.volts,
    },
  ]),
)

const curves: ReadonlyMap<string, (charge: number) => number> = new Map(
  [...chemistries].map(([id, { charge, volts }]) => [id, piecewiseLinear(charge, volts, 'hold')]),
)

/** The chemistry of an id. */
export function chemistryOf(id: ChemistryId): Chemistry {
  return rowOf(chemistries, id)
}

/**
 * Resting voltage of one cell at a state of charge, piecewise-linear between the table's points, held past its ends.
 *
 * `ocv(soc) = V_k + (V_{k+1} − V_k) (soc − soc_k)/(soc_{k+1} − soc_k)`
 *
 * @param id - the chemistry
 * @param charge - state of charge, 0 to 1
 * @returns V, never null
 *
 * *Source:* common practice, no source; curves compared with published ones as `chemistry.json` says.
 *
 * @example openCircuitVolts('lipo', 1) // 4.2
 */
export function openCircuitVolts(id: ChemistryId, charge: number): number {
  return rowOf(curves, id)(charge)
}

/** What the trade treats as the floor of one loaded cell, V. *Source:* common practice, no source. */
export function floorVolts(id: ChemistryId): number {
  return chemistryOf(id).floorVolts
}

/** Coldest and warmest temperature, °C, between which the rule for a cell's resistance holds. */
export const resistanceRuleRange = { coldest: -20, warmest: 45 } as const

/**
 * Resistance of a cell at a temperature over its resistance at 25 °C.
 *
 * `r(T)/r25 = 2^((25 − T)/20)`, `T` held to −20…45 °C
 *
 * @param temperature - °C
 * @returns a ratio, 0.5 to 4.8
 *
 * *Source:* common practice, no source; measured cells beside it in `chemistry.json`.
 *
 * @example cellResistanceFactor(5) // 2
 */
export function cellResistanceFactor(temperature: number): number {
  const held = Math.min(Math.max(temperature, resistanceRuleRange.coldest), resistanceRuleRange.warmest)
  return 2 ** ((25 - held) / read.resistanceDoublingK)
}
