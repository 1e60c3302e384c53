import table from './materials.json' with { type: 'json' }
import { assertTable, fromMegapascals, type Origin, originShape, positive, rowOf } from './table.ts'
import { z } from './zod.ts'

const materialSchema = z.strictObject({
  label: z.string().min(1),
  family: z.enum(['metal', 'polymer', 'rubber']),
  tensile: positive,
  yield: positive,
  shear: positive,
  bearing: positive,
  densityKgM3: positive,
  modulus: positive,
})

export const materialTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  materials: z.record(z.string().regex(/^[a-z0-9-]+$/), materialSchema),
})

const read = assertTable('materials', materialTableSchema, table)

export const materialOrigin: Origin = read

/** Typical strengths of a material at room temperature, Pa; for a first estimate. */
export interface Material {
  readonly label: string
  readonly family: 'metal' | 'polymer' | 'rubber'
  readonly tensile: number
  readonly yield: number
  readonly shear: number
  readonly bearing: number
  /** kg/m³. */
  readonly density: number
  /** Young's modulus at small strain, Pa. */
  readonly modulus: number
}

/** An id of the table; which ids there are is data, so it is text. */
export type MaterialId = keyof typeof table.materials

const materials: ReadonlyMap<string, Material> = new Map(
  Object.entries(read.materials).map(([id, row]) => [
    id,
    {
      label: row.label,
      family: row.family,
      tensile: fromMegapascals(row.tensile),
      yield: fromMegapascals(row.yield),
      shear: fromMegapascals(row.shear),
      bearing: fromMegapascals(row.bearing),
      density: row.densityKgM3,
      modulus: fromMegapascals(row.modulus),
    },
  ]),
)

export const materialIds: readonly MaterialId[] = Object.keys(read.materials) as MaterialId[]

/**
 * The material of an id, in Pa and kg/m³.
 *
 * *Source:* typical handbook values; what was compared stands in `materials.json`. A test of one's own part beats it.
 *
 * @example materialOf('pom').tensile // 65e6
 */
export function materialOf(id: MaterialId): Material {
  return rowOf(materials, id)
}

/** Whether a word is an id of the table. */
export function isMaterialId(word: string): word is MaterialId {
  return materials.has(word)
}
