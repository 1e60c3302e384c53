import table from './gears.json' with { type: 'json' }
import { piecewiseLinear } from '../numeric/table.ts'
import { assertTable, originShape, positive } from './table.ts'
import { z } from './zod.ts'

export const finishIds = ['cast', 'milled', 'hobbed', 'ground'] as const
type FinishId = (typeof finishIds)[number]

const text = z.string().min(1)

export const gearTableSchema = z.strictObject({
  about: text,
  version: z.literal(2),
  lewis: z
    .strictObject({
      ...originShape,
      pressureAngleDegrees: positive,
      teeth: z.array(z.int().positive()).min(2),
      Y: z.array(positive).min(2),
      rackY: positive,
    })
    .refine((lewis) => lewis.teeth.length === lewis.Y.length, 'one form factor for each number of teeth'),
  dynamicFactor: z.strictObject({ ...originShape, cast: text, milled: text, hobbed: text, ground: text }),
  dynamicFactorRangeMps: z.strictObject({
    cast: positive,
    milled: positive,
    hobbed: positive,
    ground: positive,
  }),
  dynamicFactorRangeSource: text,
})

const read = assertTable('gears', gearTableSchema, table)

/**
 * Speed of the pitch line up to which the dynamic factor of a finish is used.
 *
 * @returns m/s
 * *Source:* common practice, from memory; that of ground teeth an *assumption*.
 * @example dynamicFactorRange('milled') // 20
 */
export function dynamicFactorRange(finish: FinishId): number {
  return read.dynamicFactorRangeMps[finish]
}

/** Degrees, of the tooth form for which the form factors hold. */
export const lewisPressureAngleDegrees = read.lewis.pressureAngleDegrees

const mostTeeth = read.lewis.teeth.at(-1) ?? 0

const formFactorAt = piecewiseLinear(read.lewis.teeth, read.lewis.Y, 'extend')

/** Worked out once for every whole number of teeth: a search asks millions of times. */
const formFactors = Float64Array.from({ length: mostTeeth + 1 }, (_, teeth) => formFactorAt(teeth))

/**
 * Lewis form factor of a full-depth 20° spur tooth loaded at its tip: linear between the rows, the row of 400 above it,
 * and below 10 teeth the line through the rows of 10 and 11.
 *
 * @param teeth - whole number of teeth, 4 to 1,000
 * @returns Y, dimensionless, with the module: `σ = W_t/(b m Y)`
 *
 * *Source:* Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 14-2 and example 14-4; rows 10 and 11
 * common practice; below 10 an *assumption*.
 *
 * @example lewisFormFactor(18) // 0.309
 */
export function lewisFormFactor(teeth: number): number {
  return formFactors[Math.min(teeth, mostTeeth)] ?? 0
}

/**
 * How much a tooth's load grows with the speed of the pitch line, by the finish of the teeth.
 *
 * `cast (3.05 + V)/3.05`, `milled (6.1 + V)/6.1`, `hobbed (3.56 + √V)/3.56`, `ground √((5.56 + √V)/5.56)`
 *
 * @param finish - how the teeth were made
 * @param speed - V, speed of the pitch line, m/s, zero or more
 * @returns K_v, 1 at standstill
 *
 * *Source:* Shigley's Mechanical Engineering Design, eqs. 14-6a to 14-6d.
 *
 * @example dynamicFactor('milled', 6.1) // 2
 */
export function dynamicFactor(finish: FinishId, speed: number): number {
  switch (finish) {
    case 'cast':
      return (3.05 + speed) / 3.05
    case 'milled':
      return (6.1 + speed) / 6.1
    case 'hobbed':
      return (3.56 + Math.sqrt(speed)) / 3.56
    case 'ground':
      return Math.sqrt((5.56 + Math.sqrt(speed)) / 5.56)
  }
}
