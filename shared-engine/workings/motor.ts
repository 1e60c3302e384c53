import { referenceTemperature } from '../motor/constants.ts'
import { freeSpeedAt, throttleForRated } from '../motor/free-speed.ts'
import { strongestDuty } from '../motor/standstill.ts'
import { formatText } from '../units/display.ts'
import { angularSpeedOf, rpmOf } from '../units/rpm.ts'
import {
  averagedDuty,
  fullVolts,
  loopResistance,
  motorModel,
  referenceSpeed,
  seriesResistance,
  torqueConstant,
  type MotorTemperature,
} from './circuit.ts'
import { jamParts, leastOf } from './pulls.ts'
import type { Draft } from './draft.ts'
import { inCase, type Subject } from './subject.ts'
import type { Evaluated } from '../figures/evaluated.ts'

const fullAndFree = 'free: the shaft free, pack full and rested, nothing else drawing, throttle at its cap'

/** Free speed of the full pack, winding and magnets cold and as hot as they may be, rad/s. */
function freeSpeeds({ machine }: Evaluated): { readonly cold: number; readonly hot: number } {
  const { pack, controller, motor } = machine
  const at = (degrees: number) => freeSpeedAt(machine, pack.fullVolts, degrees, controller.throttleCap)
  return { cold: at(referenceTemperature), hot: at(motor.maxTemperature) }
}

/** `omega_f`: the worst-case free speed. */
function freeSpeed(d: Draft): void {
  const { cold, hot } = freeSpeeds(d.checked)
  const at: MotorTemperature = hot > cold ? 'hot' : 'cold'
  fullVolts(d)
  torqueConstant(d, at)
  loopResistance(d, at)
  referenceSpeed(d)
  const other = formatText(rpmOf(Math.min(cold, hot)), 'rpm', 'metric').replace('\u202F', ' ')
  const limit = formatText(d.checked.machine.motor.maxTemperature, 'temperature', 'metric').replace(
    '\u202F',
    ' ',
  )
  const words =
    at === 'hot'
      ? `as hot as the motor may be (${limit}) it spins faster than at 20 °C, where it reaches ${other}`
      : `at 20 °C it spins at least as fast as at ${limit}, where it reaches ${other}`
  const expression = 'max(0, (delta * V_full - I_nl * (1 - beta) * R) / (K_t + beta * I_nl * R / omega_ref))'
  const told = ['angularSpeed', 'free speed'] as const
  d.step('omega_f', told, expression, words)
}

const freeRpm: Subject = {
  title: 'How fast the motor spins with nothing on its shaft, at worst: what the over-rev check compares.',
  state: fullAndFree,
  source: `${motorModel}: torque set to nothing`,
  assumptions: ['A current limit plays no part where nothing is driven.'],
  write: (d) => {
    freeSpeed(d)
    d.step('n', ['rpm', 'free-running speed'], 'omega_f * 60 / (2 * pi)')
  },
}

const ruleOfThumbRpm: Subject = {
  title: 'Kv times volts, the rule of thumb that leaves every loss out.',
  state: fullAndFree,
  source: 'common practice, no source',
  write: (d) => {
    d.entry('Kv', 'motor.kvRpmPerVolt')
    d.entry('delta', 'controller.throttleCapPercent')
    fullVolts(d)
    d.step('n', ['rpm', 'Kv times volts'], 'Kv * V_full * delta')
  },
}

const electricalRpm: Subject = {
  title: 'How often the field turns at the free-running speed: what the controller has to switch.',
  state: fullAndFree,
  source: 'definition of electrical speed: mechanical speed times pole pairs',
  write: (d) => {
    d.figure('n', 'freeRpm')
    d.entry('N_p', 'motor.poleCount')
    d.step('n_e', ['rpm', 'electrical speed'], 'n * N_p / 2')
  },
}

/** Which temperature gets to the rated speed first. */
function ratedTemperature(checked: Evaluated): MotorTemperature {
  const { machine } = checked
  const ratedSpeed = angularSpeedOf(machine.motor.ratedMaxRpm)
  const { pack, motor } = machine
  const at = (degrees: number) =>
    Math.abs(freeSpeedAt(machine, pack.fullVolts, degrees, throttleForRated(machine)) - ratedSpeed)
  return at(referenceTemperature) <= at(motor.maxTemperature) ? 'cold' : 'hot'
}

const throttleForRatedRpmPercent: Subject = {
  title: 'The throttle at which the free-running motor just reaches its rated speed, whatever the cap.',
  state: 'free: the shaft free, pack full and rested, nothing else drawing',
  source: `${motorModel}: torque set to nothing, solved for the duty`,
  missing: ({ machine }) =>
    Number.isNaN(throttleForRated(machine))
      ? { why: 'no throttle lets the free-running motor reach its rated speed: it is safe from over-rev.' }
      : null,
  write: (d) => {
    const at = ratedTemperature(d.checked)
    fullVolts(d)
    torqueConstant(d, at)
    seriesResistance(d, at)
    referenceSpeed(d)
    d.source(averagedDuty)
    d.entry('n_max', 'motor.ratedMaxRpm')
    d.entry('M', 'motor.count')
    d.figure('R_b', 'packOhm')
    d.step('omega', ['angularSpeed', 'rated speed'], 'n_max * 2 * pi / 60')
    const current = 'I_nl * ((1 - beta) + beta * omega / omega_ref)'
    d.step('I_0', ['amps', 'no-load current there'], current)
    d.step('c', ['volts', 'what the motor itself needs'], 'I_0 * R_s + omega * K_t')
    const root = '2 * c / (V_full + sqrt(V_full^2 - 4 * M * I_0 * R_b * c))'
    const words = 'the smaller root of M * I_0 * R_b * delta_r^2 - V_full * delta_r + c = 0'
    d.step('delta_r', ['fraction', 'duty'], root, words)
    const told = ['percent', 'throttle'] as const
    d.step('delta_p', told, '100 * delta_r')
  },
}

const stallMotorAmps: Subject = {
  title: 'The most current of one standing motor at any throttle, before any limit of the controller.',
  state: inCase('launch'),
  source: `${motorModel}: standstill, the duty of most current by differentiation`,
  write: (d) => {
    const { evaluation } = d.checked
    fullVolts(d)
    seriesResistance(d, 'cold')
    strongest(d, strongestDuty(evaluation.launchDrive))
    const expression = 'delta_s * V_full / (R_s + M * delta_s^2 * R_b)'
    d.step('I_s', ['amps', 'stall current of one motor'], expression)
  },
}

/** `delta_s`: the duty at which a standing motor draws most; `R_s` is known already. */
export function strongest(d: Draft, duty: number): void {
  d.source(averagedDuty)
  d.entry('delta', 'controller.throttleCapPercent')
  d.entry('M', 'motor.count')
  d.figure('R_b', 'packOhm')
  const words =
    duty < d.of('delta')
      ? 'below the cap: the pack is so weak that part throttle pulls harder than full'
      : 'the cap: this pack does not sag enough for less throttle to pull harder'
  const told = ['fraction', 'duty of most standstill current'] as const
  d.step('delta_s', told, 'min(delta, sqrt(R_s / (M * R_b)))', words)
}

const launchMotorAmps: Subject = {
  title: 'The current of one motor at the start of a jam, after the controller’s limit.',
  state: inCase('launch'),
  source: 'the lesser of what resistance and the controller let through',
  write: (d) => {
    d.figure('I_s', 'stallMotorAmps')
    limitedAmps(d, 'I_s', 'I')
  },
}

/** The lesser of a current and the controller's limit, where one is entered. */
export function limitedAmps(d: Draft, open: string, symbol: string): void {
  const told = ['amps', 'current of one motor'] as const
  if (d.checked.machine.controller.currentLimit === Infinity) {
    d.assume(
      'No current limit is entered (controller.currentLimitAmps): resistance alone limits the current.',
    )
    d.step(symbol, told, open)
    return
  }
  d.entry('I_lim', 'controller.currentLimitAmps')
  d.step(symbol, told, `min(${open}, I_lim)`)
}

const launchSprocketTorqueNm: Subject = {
  title:
    'The torque of all motors at the drive sprockets in a jam, every efficiency taken as 1, after limiters.',
  state: inCase('launch'),
  source: motorModel,
  assumptions: ['Standing gears lose nothing: every efficiency is 1, the safe side.'],
  write: (d) => {
    const { stages } = d.checked.machine
    const pull = leastOf(jamParts(d, stages.length))
    d.step('T_s', ['torque', 'torque at the sprockets'], `${pull} * r * N_t`)
  },
}

export const motorWorkings = {
  ruleOfThumbRpm,
  freeRpm,
  electricalRpm,
  throttleForRatedRpmPercent,
  stallMotorAmps,
  launchMotorAmps,
  launchSprocketTorqueNm,
} satisfies Record<string, Subject>
