import table from './belts.json' with { type: 'json' }
import { assertTable, fromMillimetres, originShape, positive, rowOf } from './table.ts'
import { z } from './zod.ts'

export const beltTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  widthExponent: positive,
  fullMeshTeeth: z.int().positive(),
  meshStep: positive,
  profiles: z.record(
    z.string().regex(/^[A-Z0-9.]+$/),
    z.strictObject({
      pitch: positive,
      referenceWidth: positive,
      allowableTensionN: positive.optional(),
      massKgM: positive,
    }),
  ),
})

const read = assertTable('belts', beltTableSchema, table)

/** A profile of synchronous belt, in SI. */
interface BeltProfile {
  /** m. */
  readonly pitch: number
  /** m, the width that rating and mass are for. */
  readonly referenceWidth: number
  /** N at the reference width; null where there is no open rating and the maker's is needed. */
  readonly allowableTension: number | null
  /** kg per metre of belt of the reference width. */
  readonly massPerMetre: number
}

export type BeltProfileId = keyof typeof table.profiles

const profiles: ReadonlyMap<string, BeltProfile> = new Map(
  Object.entries(read.profiles).map(([id, row]) => [
    id,
    {
      pitch: fromMillimetres(row.pitch),
      referenceWidth: fromMillimetres(row.referenceWidth),
      allowableTension: row.allowableTensionN ?? null,
      massPerMetre: row.massKgM,
    },
  ]),
)

export const beltProfileIds: readonly BeltProfileId[] = Object.keys(read.profiles) as BeltProfileId[]

/** The profile of an id. *Source:* ISO 5296, DIN 7721, ISO 13050; ratings ISO 5295, first edition; see `belts.json`. */
export function beltProfileOf(id: BeltProfileId): BeltProfile {
  return rowOf(profiles, id)
}

/** Power of width with which the allowable tension grows. *Source:* ISO 5295, first edition. */
export const beltWidthExponent = read.widthExponent

/**
 * Part of a belt's allowable tension that remains with few teeth in mesh.
 *
 * `K_z = 1` for six or more, else `1 − 0.2 (6 − z_m)`; zero or negative below two: such a belt holds nothing.
 *
 * @param teethInMesh - z_m, whole number on the small pulley
 * @returns K_z, at most 1
 *
 * *Source:* ISO 5295, first edition.
 *
 * @example beltMeshFactor(4) // 0.6
 */
export function beltMeshFactor(teethInMesh: number): number {
  return 1 - read.meshStep * Math.max(0, read.fullMeshTeeth - teethInMesh)
}
