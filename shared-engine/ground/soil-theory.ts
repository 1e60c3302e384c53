import type { Machine } from '../machine/parts.ts'
import type { Footing } from './footing.ts'

/** Patch sizes, m, and pressure, Pa, below which the soil theory was not measured. *Source:* `docs/model.md` §5, assumption. */
const measured = { length: 0.3, width: 0.05, pressure: 2000 } as const

/**
 * Whether a machine is outside of what the soil theory was measured on; never on a ground by coefficients.
 *
 * *Source:* `docs/model.md` §5, assumption.
 */
export function outsideSoilTheory(machine: Machine, footing: Footing): boolean {
  const { contactLength, contactWidth } = machine.vehicle
  if (machine.ground.model !== 'soil' || contactLength === null || contactWidth === null) return false
  return (
    contactLength < measured.length ||
    contactWidth < measured.width ||
    footing.groundPressure < measured.pressure
  )
}
