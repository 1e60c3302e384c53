import { fromEngine, toEngine } from '../units/convert.ts'
import table from './chains.json' with { type: 'json' }
import { assertTable, fromMillimetres, originShape, positive, rowOf } from './table.ts'
import { z } from './zod.ts'

export const chainTableSchema = z.strictObject({
  about: z.string().min(1),
  ...originShape,
  strandFactors: z.record(z.enum(['1', '2', '3', '4']), positive),
  strandFactorsSource: z.string().min(10),
  sizes: z.record(
    z.string().regex(/^[0-9]{2}[0-9A-C]$/),
    z.strictObject({
      pitch: positive,
      roller: positive,
      innerWidth: positive,
      minTensileKn: positive,
      massKgM: positive,
      kr: positive,
      platesFactor: positive,
    }),
  ),
})

const read = assertTable('chains', chainTableSchema, table)

/** A size of roller chain, in SI; one strand. */
interface ChainSize {
  /** m. */
  readonly pitch: number
  /** The same in inches: the power rating is written in them. */
  readonly pitchInches: number
  readonly rollerDiameter: number
  readonly innerWidth: number
  /** F_u, N, minimum tensile strength. */
  readonly minTensile: number
  /** kg/m. */
  readonly massPerMetre: number
  /** K_r of the roller-impact rating (hp, rpm, inches). */
  readonly rollerFactor: number
  /** c of the link-plate rating (hp, rpm, inches). */
  readonly platesFactor: number
  /** c P^(3 − 0.07 P): the pitch's part of Shigley's eq. 17-32, worked out once. */
  readonly platesTerm: number
  /** 1000 K_r P^0.8: the pitch's part of Shigley's eq. 17-33. */
  readonly rollerTerm: number
}

export type ChainSizeId = keyof typeof table.sizes

function sizeOf(row: (typeof read.sizes)[string]): ChainSize {
  const pitchInches = fromEngine(fromMillimetres(row.pitch), 'length', 'in')
  return {
    pitch: fromMillimetres(row.pitch),
    pitchInches,
    rollerDiameter: fromMillimetres(row.roller),
    innerWidth: fromMillimetres(row.innerWidth),
    minTensile: toEngine(row.minTensileKn, 'force', 'kN'),
    massPerMetre: row.massKgM,
    rollerFactor: row.kr,
    platesFactor: row.platesFactor,
    ...ratingTerms(row.platesFactor, row.kr, pitchInches),
  }
}

/** The 1000 of eq. 17-33. */
const rollerScale = 1000

/** The pitch's part of both power ratings, pitch in inches. *Source:* Shigley, eqs. 17-32 and 17-33. */
function ratingTerms(platesFactor: number, rollerFactor: number, inches: number) {
  return {
    platesTerm: platesFactor * inches ** (3 - 0.07 * inches),
    rollerTerm: rollerScale * rollerFactor * inches ** 0.8,
  }
}

const sizes: ReadonlyMap<string, ChainSize> = new Map(
  Object.entries(read.sizes).map(([id, row]) => [id, sizeOf(row)]),
)

/** In the order of the table, small to large; keys that look like numbers would come first in an object. */
export const chainSizeIds: readonly ChainSizeId[] = (Object.keys(read.sizes) as ChainSizeId[]).sort(
  (one, other) => rowOf(sizes, one).pitch - rowOf(sizes, other).pitch || (one < other ? -1 : 1),
)

/** The size of an id. *Source:* ISO 606, ANSI B29.1; rating constants Shigley, eqs. 17-32 and 17-33; see `chains.json`. */
export function chainSizeOf(id: ChainSizeId): ChainSize {
  return rowOf(sizes, id)
}

const factors = [1, 2, 3, 4].map((strands) => read.strandFactors[String(strands) as '1' | '2' | '3' | '4'])

/**
 * How many times the rating of one strand several strands carry.
 *
 * @param strands - 1 to 4
 *
 * *Source:* Shigley's Mechanical Engineering Design, table 17-23.
 *
 * @example strandFactor(3) // 2.5
 */
export function strandFactor(strands: number): number {
  const factor = factors[strands - 1]
  if (factor === undefined) throw new Error(`no factor for ${strands} strands`)
  return factor
}
