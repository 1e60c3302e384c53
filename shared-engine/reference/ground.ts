import table from './ground.json' with { type: 'json' }
import { assertTable, originShape } from './table.ts'
import { z } from './zod.ts'

const label = z.string().min(1)

export const groundTableSchema = z.strictObject({
  about: label,
  terrain: z.strictObject({
    ...originShape,
    kinds: z.record(
      z.string(),
      z.strictObject({
        label,
        n: z.number().positive(),
        kc: z.number(),
        kphi: z.number().positive(),
        cohesionKpa: z.number().min(0),
        frictionDegrees: z.number().min(0).max(60),
        shearModulusMm: z.number().positive(),
        snow: z.boolean().optional(),
      }),
    ),
  }),
  coefficient: z.strictObject({
    ...originShape,
    kinds: z.record(
      z.string(),
      z.strictObject({
        label,
        rollingCoefficient: z.number().min(0).max(2),
        gripCoefficient: z.number().positive().max(3),
        slipPercent: z.number().min(0).max(80),
      }),
    ),
  }),
})

const read = assertTable('ground', groundTableSchema, table)

/** A starting point for `ground.soil`, in the build's own units, so that it can be entered as it stands. */
interface Terrain {
  readonly label: string
  readonly soil: {
    readonly n: number
    readonly kc: number
    readonly kphi: number
    readonly cohesionKpa: number
    readonly frictionDegrees: number
    readonly shearModulusMm: number
    readonly snow?: boolean
  }
}

/** A starting point for the `coefficient` ground, in the build's own units. */
interface GroundCoefficients {
  readonly label: string
  readonly rollingCoefficient: number
  readonly gripCoefficient: number
  readonly slipPercent: number
}

/** Published terrain measurements by id. *Source:* Wong, Theory of Ground Vehicles, table 2.3; see `ground.json`. */
export const terrains: ReadonlyMap<string, Terrain> = new Map(
  Object.entries(read.terrain.kinds).map(([id, { label, snow, ...soil }]) => [
    id,
    { label, soil: snow === undefined ? soil : { ...soil, snow } },
  ]),
)

/** Grounds described by coefficients, by id. *Source:* common practice, no source; measure your own with a pull test. */
export const groundCoefficients: ReadonlyMap<string, GroundCoefficients> = new Map(
  Object.entries(read.coefficient.kinds),
)
