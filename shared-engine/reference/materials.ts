import table from './materials.json' with { type: 'json' }
import {
  assertTable,
  fromMegapascals,
  fromPercent,
  fromPerMillionKelvin,
  originShape,
  positive,
  rowOf,
} from './table.ts'
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
  endurance: positive,
  workTensile: positive,
  workShear: positive,
  workBearing: positive,
  flank: positive.nullable(),
  root: positive.nullable(),
  expansion: positive,
  knockdownPercent: positive,
})

export const materialTableSchema = z.strictObject({
  about: z.string().min(1),
  version: z.literal(2),
  columns2: z.record(z.string(), z.string()),
  ...originShape,
  materials: z.record(z.string().regex(/^[a-z0-9-]+$/), materialSchema),
})

const read = assertTable('materials', materialTableSchema, table)

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
  /** Stress that it bears for good under full reversal, polished, Pa. */
  readonly endurance: number
  /** What a drive tooth bears for good where the load comes and goes, Pa. */
  readonly workTensile: number
  readonly workShear: number
  readonly workBearing: number
  /** Pressure that a gear's flank bears for good, Pa; null where it is not judged. */
  readonly flank: number | null
  /** Nominal stress that a gear's tooth root bears for good, Pa; null where it is not judged. */
  readonly root: number | null
  /** Linear, 1/K. */
  readonly expansion: number
  /** What printing leaves of the strength where the build does not say, 0 to 1. */
  readonly knockdown: number
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
      endurance: fromMegapascals(row.endurance),
      workTensile: fromMegapascals(row.workTensile),
      workShear: fromMegapascals(row.workShear),
      workBearing: fromMegapascals(row.workBearing),
      flank: row.flank === null ? null : fromMegapascals(row.flank),
      root: row.root === null ? null : fromMegapascals(row.root),
      expansion: fromPerMillionKelvin(row.expansion),
      knockdown: fromPercent(row.knockdownPercent),
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
