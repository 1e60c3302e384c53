import { strongestDuty } from '../motor/standstill.ts'
import { driveVolts, motorModel, seriesResistance } from './circuit.ts'
import type { Draft } from './draft.ts'
import { burstAmps } from './bursts.ts'
import type { LimitWorking } from './limit.ts'
import { limitedAmps, strongest } from './motor.ts'
import { patternAmps } from './pattern.ts'
import { steadyRows } from './pattern-rows.ts'

// What limits of motor, controller and pack have in common.

export const labelSource = 'the limit is the maker’s or the builder’s own (label or data sheet)'

/** `I_r`: most standstill current in the running state, after the limit. */
export function restAmps(d: Draft): void {
  const { drive } = d.checked.evaluation
  driveVolts(d)
  seriesResistance(d, 'service')
  strongest(d, strongestDuty(drive))
  const told = ['amps', 'most standstill current of one motor, before a limit'] as const
  d.step('I_s', told, 'delta_s * V_0 / (R_s + M * delta_s^2 * R_b)')
  limitedAmps(d, 'I_s', 'I_r')
}

/** The most current that the ground lets happen against what a part bears for seconds. */
export const burstWorking = (part: 'motor' | 'controller'): LimitWorking => ({
  title: `The most current that the ground lets happen against what the ${part} bears for seconds.`,
  source: `${motorModel}; statics of the ground; ${labelSource}`,
  write: (d) => {
    burstAmps(d)
    d.entry('I_max', `${part}.burstAmps`)
    return { actual: 'I_b', allowed: 'I_max' }
  },
})

/** The RMS current of the pattern against what a part bears for long. */
export const continuousWorking = (part: 'motor' | 'controller'): LimitWorking => ({
  title: `The RMS current of the pattern against what the ${part} bears for long.`,
  source: labelSource,
  assumptions: [steadyRows],
  write: (d) => {
    patternAmps(d)
    d.entry('I_max', `${part}.continuousAmps`)
    return { actual: 'I_r', allowed: 'I_max' }
  },
})

/** `I_B`: what the pack’s label allows. */
export function ratedAmps(d: Draft, path: 'pack.burstC' | 'pack.continuousC' | 'pack.chargeC'): void {
  d.entry('C_r', path)
  d.entry('Q', 'pack.capacityMah')
  d.step('I_B', ['amps', 'what the label allows'], 'C_r * Q')
}
