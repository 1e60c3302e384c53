import { beltProfileOf, beltProfileIds } from '../../shared-engine/reference/belts.ts'
import { chainSizeIds, chainSizeOf } from '../../shared-engine/reference/chains.ts'
import { chemistryIds, chemistryOf } from '../../shared-engine/reference/chemistry.ts'
import { coolantIds, coolantOf } from '../../shared-engine/reference/coolants.ts'
import { magnetCoefficient, magnetIds } from '../../shared-engine/reference/magnets.ts'
import { materialIds, materialOf } from '../../shared-engine/reference/materials.ts'
import { formatText } from '../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../shared-engine/units/kinds.ts'

const find = <Id extends string>(ids: readonly Id[], value: string): Id | undefined =>
  ids.find((id) => id === value)

/** The numbers that a choice brings, beside it: what a builder compares by. Empty where it brings none. */
export function factsOf(path: string, value: string, system: UnitSystem): string {
  const key = path.split('.').at(-1) ?? ''
  if (/material$/i.test(key)) return materialFacts(path, value, system)
  if (key === 'profile') return beltFacts(value, system)
  if (key === 'size') return chainFacts(value, system)
  if (key === 'chemistry') return chemistryFacts(value)
  if (key === 'coolant') return coolantFacts(value, system)
  if (key === 'magnet') return magnetFacts(value)
  return ''
}

function materialFacts(path: string, value: string, system: UnitSystem): string {
  const id = find(materialIds, value)
  if (id === undefined) return ''
  const { shear, tensile, bearing, yield: proof } = materialOf(id)
  const stress = (strength: number) => formatText(strength, 'stress', system)
  if (!path.includes('tooth')) return `yield ${stress(proof)}`
  return `shear ${stress(shear)}, tensile ${stress(tensile)}, bearing ${stress(bearing)}`
}

function beltFacts(value: string, system: UnitSystem): string {
  const id = find(beltProfileIds, value)
  if (id === undefined) return ''
  const { pitch, referenceWidth, allowableTension } = beltProfileOf(id)
  const length = (metres: number) => formatText(metres, 'length', system)
  const rating =
    allowableTension === null
      ? 'no open rating: enter the maker’s'
      : `${formatText(allowableTension, 'force', system)} at ${length(referenceWidth)}`
  return `pitch ${length(pitch)}, ${rating}`
}

function chainFacts(value: string, system: UnitSystem): string {
  const id = find(chainSizeIds, value)
  if (id === undefined) return ''
  const { pitch, minTensile, massPerMetre } = chainSizeOf(id)
  const words = [formatText(pitch, 'length', system), formatText(minTensile, 'force', system)] as const
  return `pitch ${words[0]}, breaks above ${words[1]}, ${formatText(massPerMetre, 'linearDensity', system)}`
}

function chemistryFacts(value: string): string {
  const id = find(chemistryIds, value)
  if (id === undefined) return ''
  const { volts, floorVolts } = chemistryOf(id)
  return `${(volts.at(-1) ?? 0).toFixed(2)} V full, not below ${floorVolts.toFixed(2)} V a cell under load`
}

function coolantFacts(value: string, system: UnitSystem): string {
  const id = find(coolantIds, value)
  if (id === undefined) return ''
  const { density, specificHeat } = coolantOf(id)
  return `${formatText(density, 'density', system)}, ${formatText(specificHeat, 'specificHeat', system)}`
}

function magnetFacts(value: string): string {
  const id = find(magnetIds, value)
  return id === undefined || magnetCoefficient(id) === 0
    ? ''
    : `${(magnetCoefficient(id) * 100).toFixed(2).replace('-', '−')} % of flux for each degree`
}
