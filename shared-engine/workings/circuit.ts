import { chemistryOf } from '../reference/chemistry.ts'
import type { Draft } from './draft.ts'

// Groups of steps that workings of motor, controller and pack have in common.

/** How warm winding and magnets are: 20 °C, as in service, or as hot as the motor may be. */
export type MotorTemperature = 'cold' | 'service' | 'hot'

export const motorModel = 'Drela, First-Order DC Electric Motor Model, MIT, public notes'
export const averagedDuty =
  'averaged duty: Kirchhoff’s laws over one switching period, assumption that the current is smooth'

const pathOf = { service: 'service.windingTemperatureC', hot: 'motor.maxTemperatureC' } as const

/** `K_t` at a temperature. */
export function torqueConstant(d: Draft, at: MotorTemperature): number {
  const { motor } = d.checked.machine
  d.source(motorModel)
  d.entry('Kv', 'motor.kvRpmPerVolt')
  const told = ['torqueConstant', 'torque constant'] as const
  if (at === 'cold') return d.step('K_t', [told[0], 'torque constant at 20 °C'], '60 / (2 * pi * Kv)')
  d.entry('T_m', pathOf[at])
  d.row(
    'alpha_m',
    'motor.magnet',
    ['temperatureCoefficient', 'flux of the magnets with heat (typical of the family, IEC 60404-8-1)'],
    motor.fluxCoefficient,
  )
  d.assume('Magnets are as hot as the winding.')
  const expression = '60 / (2 * pi * Kv) * (1 + alpha_m * (T_m - 20))'
  return d.step('K_t', told, expression)
}

/** `R_m` at a temperature. */
export function windingResistance(d: Draft, at: 'service' | 'hot'): number {
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.constant('alpha_cu', 'copperTemperatureCoefficient')
  d.entry('T_m', pathOf[at])
  return d.step('R_m', ['ohms', 'winding resistance'], 'R_20 * (1 + alpha_cu * (T_m - 20))')
}

/** `R_s`: winding and controller of one motor. */
export function seriesResistance(d: Draft, at: MotorTemperature): number {
  const told = ['ohms', 'motor and controller in series'] as const
  d.entry('R_esc', 'controller.resistanceMilliohm')
  if (at === 'cold') {
    d.entry('R_20', 'motor.resistanceMilliohm')
    return d.step('R_s', told, 'R_20 + R_esc')
  }
  windingResistance(d, at)
  return d.step('R_s', told, 'R_m + R_esc')
}

/** `R`: what one motor sees at the throttle's duty, pack included. */
export function loopResistance(d: Draft, at: MotorTemperature): number {
  seriesResistance(d, at)
  d.source(averagedDuty)
  d.entry('M', 'motor.count')
  d.entry('delta', 'controller.throttleCapPercent')
  d.figure('R_b', 'packOhm')
  return d.step('R', ['ohms', 'what one motor sees, pack included'], 'R_s + M * delta^2 * R_b')
}

const curveSource = 'resting curve of the chemistry, common practice, no source'

/** `v_full` and `V_full`: the full pack at rest. */
export function fullVolts(d: Draft): number {
  const { build } = d.checked
  d.entry('S', 'pack.series')
  const cell = chemistryOf(build.pack.chemistry).volts.at(-1) ?? NaN
  d.row('v_full', 'pack.chemistry', ['volts', `one full cell at rest (${curveSource})`], cell)
  return d.step('V_full', ['volts', 'full pack at rest'], 'S * v_full')
}

/** `V_0`: the pack's volts that are left after the accessories, at the given charge. */
export function driveVolts(d: Draft): number {
  d.figure('V_oc', 'packOpenVolts')
  d.figure('I_a', 'accessoryAmps')
  d.figure('R_b', 'packOhm')
  const told = ['volts', 'pack volts before the drive draws'] as const
  return d.step('V_0', told, 'V_oc - I_a * R_b')
}

/** `omega_ref`: speed of the free-run test. */
export function referenceSpeed(d: Draft): number {
  d.entry('I_nl', 'motor.noLoadAmps')
  d.entry('beta', 'motor.viscousPercent')
  d.entry('V_nl', 'motor.noLoadVolts')
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.entry('Kv', 'motor.kvRpmPerVolt')
  const expression = '(V_nl - I_nl * R_20) * 2 * pi * Kv / 60'
  const told = ['angularSpeed', 'speed of the free-run test'] as const
  return d.step('omega_ref', told, expression)
}

/** `I_0`: no-load current at rest. */
export function noLoadAtRest(d: Draft): number {
  d.entry('I_nl', 'motor.noLoadAmps')
  d.entry('beta', 'motor.viscousPercent')
  const told = ['amps', 'no-load current at rest'] as const
  return d.step('I_0', told, 'I_nl * (1 - beta)')
}

/** `I_0` at a speed `omega` that is known already. */
export function noLoadAt(d: Draft): number {
  referenceSpeed(d)
  const told = ['amps', 'no-load current at that speed'] as const
  return d.step('I_0', told, 'I_nl * ((1 - beta) + beta * omega / omega_ref)')
}

/** `r`: pitch radius of the drive sprocket. */
export function sprocketRadius(d: Draft): number {
  d.entry('z', 'track.sprocketTeeth')
  d.entry('p', 'track.pitchMm')
  const told = ['length', 'pitch radius of the drive sprocket'] as const
  return d.step('r', told, 'z * p / (2 * pi)')
}

/** `M`, `G`, `eta` and `r`: from one motor's torque to the track's pull. */
export function driveTrain(d: Draft): void {
  d.entry('M', 'motor.count')
  d.figure('G', 'ratio')
  d.figure('eta', 'efficiency')
  sprocketRadius(d)
}
