import { strongestDuty } from '../motor/standstill.ts'
import { driveVolts, motorModel, seriesResistance } from './circuit.ts'
import type { Draft } from './draft.ts'
import { longRunAmps, sink } from './heat.ts'
import type { LimitWorking } from './limit.ts'
import { limitedAmps, strongest } from './motor.ts'

// What limits of motor, controller and pack have in common.

export const labelSource = 'the limit is the maker’s or the builder’s own (label or data sheet)'
export const longRun = ['A long run is a share of the top-speed current.'] as const

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

/** The most standstill current of a part against what it bears for seconds. */
export const burstWorking = (part: 'motor' | 'controller'): LimitWorking => ({
  title: `The most standstill current against what the ${part} bears for seconds.`,
  source: `${motorModel}; ${labelSource}`,
  write: (d) => {
    restAmps(d)
    d.entry('I_max', `${part}.burstAmps`)
    return { actual: 'I_r', allowed: 'I_max' }
  },
})

/** The current of a long run against what a part bears for long. */
export const continuousWorking = (part: 'motor' | 'controller'): LimitWorking => ({
  title: `The current of a long run against what the ${part} bears for long.`,
  source: labelSource,
  assumptions: longRun,
  afterTop: true,
  write: (d) => {
    longRunAmps(d)
    d.entry('I_max', `${part}.continuousAmps`)
    return { actual: 'I_r', allowed: 'I_max' }
  },
})

/** The steady temperature of a part against its limit; `missing` and title are its own. */
export const temperatureWorking = (
  part: 'motor' | 'controller',
  { title, missing }: Pick<LimitWorking, 'title' | 'missing'>,
): LimitWorking => ({
  title,
  source: `heat balance of a lump to its sink; ${labelSource}`,
  assumptions: longRun,
  afterTop: true,
  ...(missing === undefined ? {} : { missing }),
  unformed:
    'what cools it is as hot as the limit already: there is no margin to form, and it counts as over.',
  write: (d) => {
    d.figure('T', part === 'motor' ? 'steadyMotorC' : 'steadyControllerC')
    d.entry('T_max', `${part}.maxTemperatureC`)
    sink(d)
    return { actual: 'T', allowed: 'T_max', sink: 'T_s' }
  },
})

/** `I_B`: what the pack’s label allows. */
export function ratedAmps(d: Draft, path: 'pack.burstC' | 'pack.continuousC'): void {
  d.entry('C_r', path)
  d.entry('Q', 'pack.capacityMah')
  d.step('I_B', ['amps', 'what the label allows'], 'C_r * Q')
}
