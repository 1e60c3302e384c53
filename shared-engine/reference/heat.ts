import table from './heat.json' with { type: 'json' }
import { piecewiseLinear } from '../numeric/table.ts'
import { type ChemistryId, chemistryIds } from './chemistry.ts'
import { assertTable, originShape, positive, type Origin } from './table.ts'
import { z } from './zod.ts'

const cellSchema = z.strictObject({ heatJPerKgK: positive, whPerKg: positive, ceilingVolts: positive })

const rises = (values: readonly number[]) =>
  values.every((value, index) => index === 0 || value > (values[index - 1] ?? value))

const patternRowSchema = z.strictObject({
  seconds: positive,
  speedPercent: z.number().min(0).max(150).optional(),
  speedKmh: z.number().min(0).max(200).optional(),
  gradePercent: z.number().optional(),
  turnPercent: z.number().min(0).max(100).optional(),
})

export const heatTableSchema = z.strictObject({
  about: z.string().min(1),
  cells: z.strictObject({ ...originShape, chemistries: z.record(z.enum(chemistryIds), cellSchema) }),
  coldCapacity: z
    .strictObject({ ...originShape, atC: z.array(z.number()).min(2), share: z.array(positive).min(2) })
    .refine((row) => rises(row.atC) && rises(row.share), 'a warmer cell gives more'),
  fuse: z
    .strictObject({
      ...originShape,
      timesRating: z.array(positive).min(2),
      seconds: z.array(positive).min(2),
    })
    .refine((row) => rises(row.timesRating), 'currents rise'),
  defaultPattern: z.strictObject({
    ...originShape,
    name: z.string().min(1),
    rows: z.array(patternRowSchema).min(1),
  }),
})

const read = assertTable('heat', heatTableSchema, table)

/** Where each part of the table comes from. */
export const heatOrigins: Readonly<Record<'cells' | 'coldCapacity' | 'fuse' | 'defaultPattern', Origin>> =
  read

/** Cells of a chemistry as the heat balance and the charger see them. */
interface CellHeat {
  /** J/(kg·K). */
  readonly specificHeat: number
  /** W·h/kg of the cells. */
  readonly wattHoursPerKg: number
  /** V of one cell that charging must not pass. */
  readonly ceilingVolts: number
}

/** Heat of a chemistry's cells. *Source:* published generic values by cathode, as `heat.json` says. */
export function cellHeatOf(id: ChemistryId): CellHeat {
  const { heatJPerKgK, whPerKg, ceilingVolts } = read.cells.chemistries[id]
  return { specificHeat: heatJPerKgK, wattHoursPerKg: whPerKg, ceilingVolts }
}

const coldShare = piecewiseLinear(read.coldCapacity.atC, read.coldCapacity.share, 'hold')

/**
 * Share of its charge that a cell gives at a temperature.
 *
 * Linear between the table's points, held past its ends.
 *
 * @param celsius °C of the cells
 * @returns 0 to 1
 * *Source:* common practice, from memory: `heat.json`.
 * @example coldCapacityShare(0) // 0.85
 */
export function coldCapacityShare(celsius: number): number {
  return coldShare(celsius)
}

const logSeconds = piecewiseLinear(
  read.fuse.timesRating.map((times) => Math.log(times)),
  read.fuse.seconds.map((seconds) => Math.log(seconds)),
  'hold',
)

/**
 * Shortest time after which a blade fuse opens.
 *
 * Straight between the table's points in the logarithms of both, held past its ends.
 *
 * @param times current over rating, at least 0
 * @returns s
 * *Source:* ISO 8820-3, from memory: `heat.json`.
 * @example fuseSeconds(2) // 0.15
 */
export function fuseSeconds(times: number): number {
  return Math.exp(logSeconds(Math.log(times)))
}

/** The pattern of a build that has none. *Source:* assumption. */
export const defaultPattern = read.defaultPattern
