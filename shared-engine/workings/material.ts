import { materialOf, type Material, type MaterialId } from '../reference/materials.ts'
import type { Draft, Told } from './draft.ts'

type Property =
  | 'tensile'
  | 'yield'
  | 'shear'
  | 'bearing'
  | 'modulus'
  | 'endurance'
  | 'flank'
  | 'root'
  | 'workTensile'
  | 'workShear'
  | 'workBearing'

const words = {
  tensile: 'tensile strength',
  yield: 'yield strength',
  shear: 'shear strength',
  bearing: 'bearing strength',
  modulus: 'Young’s modulus',
  endurance: 'strength under full reversal',
  flank: 'flank pressure that lasts',
  root: 'root stress that lasts',
  workTensile: 'tensile stress that lasts',
  workShear: 'shear stress that lasts',
  workBearing: 'pressure that lasts',
} as const satisfies Record<Property, string>

/** A property of the material that an entry chooses, with the material's name and what it is worth. */
export function materialRow(
  d: Draft,
  symbol: string,
  path: string,
  id: MaterialId,
  property: Property,
): number {
  const material: Material = materialOf(id)
  const told: Told = ['stress', `${words[property]} of ${material.label} (typical handbook value)`]
  return d.row(symbol, path, told, material[property] ?? NaN)
}
