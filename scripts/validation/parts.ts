import { airDensityOf } from '../../shared-engine/machine/ground.ts'
import { stagePartOf } from '../../shared-engine/machine/stage.ts'
import { type ChainSizeId, chainSizeIds } from '../../shared-engine/reference/chains.ts'
import { materialIds, materialOf } from '../../shared-engine/reference/materials.ts'
import { z } from '../../shared-engine/reference/zod.ts'
import { beltLength } from '../../shared-engine/stages/belt/geometry.ts'
import { chainPowerRating } from '../../shared-engine/stages/chain/physics.ts'
import { contactRatioOf } from '../../shared-engine/stages/gear/geometry.ts'
import { fromEngine, toEngine } from '../../shared-engine/units/convert.ts'
import { angularSpeedOf } from '../../shared-engine/units/rpm.ts'
import { computation } from './case.ts'
import { directionOf, errorOf, errorsOf, shown } from './words.ts'

export const toothRoot = computation(
  { materials: z.array(z.enum(materialIds)), share: z.number() },
  ({ materials, share }) => {
    const found = materials.map((id) => {
      const { label, tensile, yield: once, root } = materialOf(id)
      if (root === null) throw new Error(`${id} is judged by no tooth root`)
      return { label, once, lasts: root, allowed: share * tensile }
    })
    const megapascals = (stress: number) => shown(fromEngine(stress, 'stress', 'MPa'))
    return {
      figure: found
        .map(
          ({ label, once, lasts, allowed }) =>
            `${label}: ${megapascals(once)} MPa once, ${megapascals(lasts)} for what lasts, against ${megapascals(allowed)}`,
        )
        .join('; '),
      error: found
        .map(
          ({ once, lasts, allowed }) => `${errorOf(once, allowed)} once, ${errorOf(lasts, allowed)} lasting`,
        )
        .join('; '),
      direction: directionOf(
        found.map(({ lasts, allowed }) => [lasts, allowed]),
        'safe side in what lasts; once is no promise of a season',
        'too much allowed',
      ),
    }
  },
)

function ratingOf(size: ChainSizeId, driverTeeth: number, rpm: number): number {
  const stage = stagePartOf({
    kind: 'chain',
    driverTeeth,
    drivenTeeth: 2 * driverTeeth,
    size,
    strands: 1,
    efficiencyPercent: 100,
    drivenInertiaGcm2: 0,
  })
  if (stage.kind !== 'chain') throw new Error('no chain')
  return chainPowerRating(stage, angularSpeedOf(rpm))
}

const rating = z.strictObject({ size: z.enum(chainSizeIds), rpm: z.number(), kilowatts: z.number() })

export const chainsEuropean = computation(
  { teeth: z.number(), ratings: z.array(rating) },
  ({ teeth, ratings }) => {
    const pairs = ratings.map(
      ({ size, rpm, kilowatts }) => [ratingOf(size, teeth, rpm), toEngine(kilowatts, 'watts', 'kW')] as const,
    )
    return {
      figure: `${pairs.map(([found]) => shown(fromEngine(found, 'watts', 'kW'))).join(', ')} kW`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'safe side: too strict', 'too much allowed'),
    }
  },
)

export const air = computation(
  { altitudeM: z.number(), celsius: z.number(), density: z.number() },
  ({ altitudeM, celsius, density }) => {
    const pairs = [[airDensityOf(altitudeM, celsius), density]] as const
    return {
      figure: `${shown(pairs[0][0], 6)} kg/m³`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'too thin', 'too dense'),
    }
  },
)

export const contactRatio = computation(
  { driverTeeth: z.number(), drivenTeeth: z.number(), degrees: z.number(), ratio: z.number() },
  ({ driverTeeth, drivenTeeth, degrees, ratio }) => {
    const angle = toEngine(degrees, 'angle', '°')
    const found = contactRatioOf({
      driverTeeth,
      drivenTeeth,
      sinPressureAngle: Math.sin(angle),
      cosPressureAngle: Math.cos(angle),
    })
    return {
      figure: shown(found),
      error: errorsOf([[found, ratio]]),
      direction: directionOf([[found, ratio]], 'low', 'high'),
    }
  },
)

export const beltLengthOf = computation(
  {
    smallInches: z.number(),
    largeInches: z.number(),
    centreInches: z.number(),
    lengthInches: z.number(),
  },
  ({ smallInches, largeInches, centreInches, lengthInches }) => {
    // A pitch of which ten teeth make an inch and π of diameter, so that pulleys have the diameters asked for.
    const pitch = toEngine(Math.PI / 10, 'length', 'in')
    const centre = toEngine(centreInches, 'length', 'in')
    const metres = beltLength(pitch, 10 * smallInches, 10 * largeInches, centre)
    const found = fromEngine(metres, 'length', 'in')
    return {
      figure: `${shown(found, 4)} in`,
      error: errorsOf([[found, lengthInches]]),
      direction: directionOf([[found, lengthInches]], 'short', 'long'),
    }
  },
)
