import { assumedTrackDrag } from '../../shared-engine/assume/machine.ts'
import { gravity } from '../../shared-engine/constants.ts'
import { Footing, setFooting } from '../../shared-engine/ground/footing.ts'
import { snowFactor, snowStrength, usableCohesion } from '../../shared-engine/ground/snow-strength.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { groundCoefficients, terrains } from '../../shared-engine/reference/ground.ts'
import { z } from '../../shared-engine/reference/zod.ts'
import { fromEngine, toEngine } from '../../shared-engine/units/convert.ts'
import { buildOf, computation, storedBuild } from './case.ts'
import { directionOf, errorsOf, rangeError, shown } from './words.ts'

type Soil = NonNullable<ReturnType<typeof terrains.get>>['soil']

interface Patches {
  readonly massKg: number
  readonly loops: number
  readonly lengthMm: number
  readonly widthMm: number
}

function soilOf(id: string): Soil {
  const terrain = terrains.get(id)
  if (terrain === undefined) throw new Error(`no terrain ${id}`)
  return terrain.soil
}

/** Machine and footing of a mass on loops of that patch on a soil; what else a build wants plays no part. */
function onSoil(soil: Soil, { massKg, loops, lengthMm, widthMm }: Patches) {
  const stored = storedBuild('ride-on.build.json')
  const machine = machineOf(
    buildOf({
      ...stored,
      motor: { ...stored.motor, count: 1 },
      track: { ...stored.track, count: loops },
      vehicle: { massKg, contactLengthMm: lengthMm, contactWidthMm: widthMm },
      ground: { model: 'soil', soil },
    }),
  )
  const footing = new Footing()
  setFooting(footing, machine, 0, 1)
  return { machine, footing }
}

/** Compaction over weight. */
const compactionShare = ({ groundResistance, weight }: Footing) => groundResistance / weight

export const robotOnSoftSnow = computation({ ground: z.string(), share: z.number() }, ({ ground, share }) => {
  const coefficient = groundCoefficients.get(ground)?.rollingCoefficient ?? NaN
  const withDrag = coefficient + assumedTrackDrag(1) / gravity
  return {
    figure: `${shown(coefficient)} rolling; ${shown(withDrag)} with the drag that a new build starts with`,
    error: errorsOf([
      [coefficient, share],
      [withDrag, share],
    ]),
    direction: directionOf(
      [[coefficient, share]],
      'too little resistance where drag is left out',
      'too much',
    ),
  }
})

const patches = { loops: z.number(), lengthMm: z.number(), widthMm: z.number() }

export const firmGround = computation(
  { ...patches, massKg: z.number(), terrains: z.array(z.string()), low: z.number(), high: z.number() },
  ({ terrains: names, low, high, ...machine }) => {
    const shares = names.map((name) => compactionShare(onSoil(soilOf(name), machine).footing))
    const pairs = shares.map((share) => rangeError(share, low, high))
    const each = names.map(
      (name, at) => `${shown(shares[at] ?? NaN, 2)} ${terrains.get(name)?.label ?? name}`,
    )
    return {
      figure: `compaction alone: ${each.join(', ')}`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'too little resistance', 'too much resistance'),
    }
  },
)

export const settledSnowPull = computation(
  {
    terrain: z.string(),
    pressuresKpa: z.array(z.number()),
    lengthMm: z.number(),
    widthMm: z.number(),
    low: z.number(),
    high: z.number(),
  },
  ({ terrain, pressuresKpa, low, high, lengthMm, widthMm }) => {
    const soil = soilOf(terrain)
    const area = toEngine(lengthMm, 'length', 'mm') * toEngine(widthMm, 'length', 'mm')
    const pulls = pressuresKpa.map((kilopascals) => {
      const pressure = kilopascals * 1000
      const massKg = (pressure * area) / gravity
      const { footing, machine } = onSoil(soil, { massKg, loops: 1, lengthMm, widthMm })
      const { ground } = machine
      if (ground.model !== 'soil') throw new Error('no soil')
      const bare = area * usableCohesion(ground.cohesion, pressure) + footing.weight * ground.tanFriction
      const strength = bare * snowFactor(bare, area * snowStrength(pressure))
      const plain = area * ground.cohesion + footing.weight * ground.tanFriction
      return { plain: plain / footing.weight, pull: strength / footing.weight - compactionShare(footing) }
    })
    const pairs = pulls.map(({ pull }) => rangeError(pull, low, high))
    return {
      figure: `${pulls.map(({ pull }) => shown(pull, 2)).join(' to ')}; ${pulls
        .map(({ plain }) => shown(plain))
        .join(' to ')} by cohesion and friction alone`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'too little pull', 'too much pull'),
    }
  },
)

export const roadWheels = computation(
  { ...patches, terrain: z.string(), massKg: z.number(), peaks: z.array(z.number()) },
  ({ terrain, peaks, ...machine }) => {
    const soil = soilOf(terrain)
    const mean = onSoil(soil, machine).footing
    const under = peaks.map(
      (peak) => onSoil(soil, { ...machine, massKg: machine.massKg * peak }).footing.sinkage / mean.sinkage,
    )
    const millimetres = shown(fromEngine(mean.sinkage, 'length', 'mm'), 2)
    return {
      figure: `the mean everywhere: ${millimetres} mm deep; ${under
        .map((share) => shown(share, 2))
        .join(' to ')} times that by the same law under such peaks`,
      error: errorsOf(peaks.map((peak) => [1, peak])),
      direction: directionOf(
        under.map((share) => [1, share]),
        'too little sinkage and resistance',
        'too much',
      ),
    }
  },
)

export const twoTracks = computation(
  {
    weightKn: z.number(),
    soil: z.strictObject({
      n: z.number(),
      kc: z.number(),
      kphi: z.number(),
      cohesionKpa: z.number(),
      frictionDegrees: z.number(),
      shearModulusMm: z.number(),
    }),
    tracks: z.array(z.strictObject({ lengthMm: z.number(), widthMm: z.number(), kilonewtons: z.number() })),
  },
  ({ weightKn, soil, tracks }) => {
    const massKg = (weightKn * 1000) / gravity
    const pairs = tracks.map(({ kilonewtons, ...patch }) => {
      const { footing } = onSoil(soil, { ...patch, massKg, loops: 2 })
      return [footing.groundResistance / 1000, kilonewtons] as const
    })
    return {
      figure: `${pairs.map(([found]) => shown(found)).join(' and ')} kN`,
      error: errorsOf(pairs),
      direction: directionOf(pairs, 'too little', 'too much'),
    }
  },
)
