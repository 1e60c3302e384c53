import type { LimitId } from '../../../shared-engine/limits/id.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'

/** What can be asked of a drive tooth; the key is that of the load curves. */
export const toothChecks = [
  { key: 'toothForce', label: 'Force', kind: 'force', limit: null },
  { key: 'shear', label: 'Shear', kind: 'stress', limit: 'track.tooth-shear' },
  { key: 'bending', label: 'Bending', kind: 'stress', limit: 'track.tooth-bending' },
  { key: 'bearing', label: 'Bearing', kind: 'stress', limit: 'track.tooth-bearing' },
] as const satisfies readonly { key: string; label: string; kind: QuantityKind; limit: LimitId | null }[]

/** The load cases over throttle, in the words of the plot's labels. */
export const throttleCases = [
  { name: 'launch', label: 'Jam' },
  { name: 'grip', label: 'As grip allows' },
  { name: 'top', label: 'At the speed it settles at' },
] as const
