import table from './magnets.json' with { type: 'json' }
import { assertTable, originShape } from './table.ts'
import { z } from './zod.ts'

export const magnetIds = ['ndfeb', 'smco', 'ferrite', 'ignore'] as const
type MagnetId = (typeof magnetIds)[number]

export const magnetTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  // Remanence falls with heat in every family in use; a positive row would be a slip of the pen.
  magnets: z.record(z.enum(magnetIds), z.number().min(-0.01).max(0)),
})

const read = assertTable('magnets', magnetTableSchema, table)

/**
 * Reversible change of a magnet's remanence with temperature, per kelvin about 20 °C.
 *
 * @param id - the family; `ignore` leaves the effect out
 * @returns 1/K, zero or negative
 *
 * *Source:* IEC 60404-8-1, typical values of the families; what was compared stands in `magnets.json`.
 *
 * @example magnetCoefficient('ferrite') // -0.002
 */
export function magnetCoefficient(id: MagnetId): number {
  return read.magnets[id]
}
