import { withAssumed } from '../../shared-engine/assume/assumed.ts'
import { entryAt, withEntry } from '../../shared-engine/entries/edit.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { groundCoefficients, terrains } from '../../shared-engine/reference/ground.ts'

type StoredGround = StoredBuild['ground']

/** A ground of the list, to start from: its name with its numbers, and the entries that it sets. */
interface GroundPreset {
  readonly id: string
  readonly label: string
  readonly numbers: string
  readonly ground: StoredGround
}

const coefficientPresets: readonly GroundPreset[] = [...groundCoefficients].map(([id, row]) => {
  const { label, rollingCoefficient, gripCoefficient, slipPercent } = row
  return {
    id: `coefficient.${id}`,
    label,
    numbers: `rolling ${rollingCoefficient}, grip ${gripCoefficient}, slip ${slipPercent} %`,
    ground: { model: 'coefficient', rollingCoefficient, gripCoefficient, slipPercent },
  }
})

const soilPresets: readonly GroundPreset[] = [...terrains].map(([id, { label, soil }]) => ({
  id: `soil.${id}`,
  label,
  numbers: `n ${soil.n}, k_φ ${soil.kphi}, cohesion ${soil.cohesionKpa} kPa, friction ${soil.frictionDegrees}°`,
  ground: { model: 'soil', soil: { ...soil } },
}))

/** Grounds to start from, firm ones by coefficients first, then soils and snows by their measured parameters. */
export const groundPresets: readonly GroundPreset[] = [...coefficientPresets, ...soilPresets]

/** The preset whose numbers the ground has now; null for a ground of one's own. */
export function presetOf(ground: StoredGround): GroundPreset | null {
  return groundPresets.find((preset) => isSame(preset.ground, ground)) ?? null
}

function isSame(preset: StoredGround, ground: StoredGround): boolean {
  if (preset.model === 'soil') {
    if (ground.model !== 'soil') return false
    const of: Readonly<Record<string, unknown>> = ground.soil
    return Object.entries(preset.soil).every(([key, value]) => of[key] === value)
  }
  if (ground.model === 'soil') return false
  const { rollingCoefficient, gripCoefficient, slipPercent = 0 } = ground
  return (
    rollingCoefficient === preset.rollingCoefficient &&
    gripCoefficient === preset.gripCoefficient &&
    slipPercent === preset.slipPercent
  )
}

/** The build on a ground of the list; slope, air and altitude of the place stay. */
export function withPreset(stored: StoredBuild, { ground }: GroundPreset): StoredBuild {
  return withGround(stored, { ...placeOf(stored.ground), ...ground })
}

/** The other way of describing the ground, starting from the first of its list. */
export function withGroundModel(stored: StoredBuild, model: 'coefficient' | 'soil'): StoredBuild {
  if (stored.ground.model === model) return stored
  const [preset] =
    model === 'soil' ? soilPresets.filter(({ id }) => id === 'soil.snow-settled') : coefficientPresets
  return preset === undefined ? stored : withPreset(stored, preset)
}

function placeOf(ground: StoredGround) {
  const { skiFriction, gradePercent, airTemperatureC, altitudeM, turnFriction } = ground
  const place = { skiFriction, gradePercent, airTemperatureC, altitudeM, turnFriction }
  return Object.fromEntries(Object.entries(place).filter(([, value]) => value !== undefined))
}

/** The soil model needs the patch: where it is not known, an estimate from the loop stands in, marked as one. */
function withGround(stored: StoredBuild, ground: StoredGround): StoredBuild {
  const bare = groundEntries.reduce((build, key) => withEntry(build, `ground.${key}`, undefined), stored)
  const grounded = { ...bare, ground }
  if (ground.model !== 'soil') return grounded
  return patch.reduce(
    (build, path) => (entryAt(build, path) === undefined ? withAssumed(build, path) : build),
    grounded,
  )
}

const patch = ['vehicle.contactLengthMm', 'vehicle.contactWidthMm']

/** Entries of either model: what was said of them goes with them. */
const groundEntries = ['rollingCoefficient', 'gripCoefficient', 'slipPercent', 'soil']
