import type { Evaluated } from '../figures/evaluated.ts'
import type { Draft } from './draft.ts'
import { ironLoss } from './run.ts'
import { firstOf, inCase, needing, needingTop, type Missing, type Subject } from './subject.ts'

const balance = 'heat balance of a lump to its sink; IEC 60028 for the copper'
const longRun = 'The current of a long run is a share of the top-speed current.'

/** `I_r`: current of a long run, RMS of one motor. */
export function longRunAmps(d: Draft): void {
  d.assume(longRun)
  d.figure('I', 'topMotorAmps')
  d.given('q_I', ['fraction', 'current of a run over that at top speed'], d.checked.machine.service.loadShare)
  d.step('I_r', ['amps', 'current of a long run, RMS'], 'q_I * I')
}

/** `P`: heat of all motors and controllers into their circuit. */
function circuitHeat(d: Draft): void {
  longRunAmps(d)
  ironLoss(d)
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.constant('alpha_cu', 'copperTemperatureCoefficient')
  d.entry('T_m', 'service.windingTemperatureC')
  d.step('R_m', ['ohms', 'winding resistance in service'], 'R_20 * (1 + alpha_cu * (T_m - 20))')
  d.entry('R_esc', 'controller.resistanceMilliohm')
  d.entry('M', 'motor.count')
  const expression = 'M * (P_fe + I_r^2 * (R_m + R_esc))'
  const told = ['watts', 'heat of all motors and controllers'] as const
  d.step('P', told, expression)
}

/** `T_s`: what motor and controller are cooled by. */
export function sink(d: Draft): void {
  const { machine } = d.checked
  const told = ['temperature', 'temperature of what cools it'] as const
  d.entry('T_air', 'ground.airTemperatureC')
  if (machine.cooling === null) {
    d.step('T_s', told, 'T_air', 'cooled by the air')
    return
  }
  circuitHeat(d)
  d.assume('The heat into the circuit is that at the service winding temperature, not iterated.')
  d.entry('UA', 'cooling.radiatorWPerK')
  d.step('T_s', told, 'T_air + P / UA', 'cooled by the circuit')
}

/** `R_th`, `I_r`, `P_fe` and `T_s`: what warms the motor and how it cools. */
function motorHeat(d: Draft): void {
  sink(d)
  longRunAmps(d)
  ironLoss(d)
  d.entry('R_th', 'motor.thermalResistanceKPerW')
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.constant('alpha_cu', 'copperTemperatureCoefficient')
}

/** `b`: below 0 heat leaves faster than it grows. */
function growth(d: Draft): number {
  const told = ['thermalConductance', 'loss that each kelvin adds, less heat that it drives out'] as const
  return d.step('b', told, 'I_r^2 * R_20 * alpha_cu - 1 / R_th')
}

/** The loss grows faster with heat than the heat leaves. */
export function runaway({ evaluation }: Evaluated): Missing | null {
  if (!evaluation.heat.runaway) return null
  return {
    why: 'thermal runaway: the loss grows faster with heat than the heat leaves, so there is no steady temperature.',
    show: (d) => {
      longRunAmps(d)
      d.entry('R_20', 'motor.resistanceMilliohm')
      d.entry('R_th', 'motor.thermalResistanceKPerW')
      d.constant('alpha_cu', 'copperTemperatureCoefficient')
      growth(d)
    },
  }
}

export const motorHeatNeeds = firstOf(needing('motor.thermalResistanceKPerW'), needingTop)

const steadyMotorC: Subject = {
  title: 'Where the winding’s temperature settles in a long run.',
  state: inCase('steady'),
  source: balance,
  missing: firstOf(motorHeatNeeds, runaway),
  write: (d) => {
    motorHeat(d)
    const expression =
      '(T_s + R_th * (P_fe + I_r^2 * R_20 * (1 - 20 * alpha_cu))) / (1 - R_th * I_r^2 * R_20 * alpha_cu)'
    const words = 'where (T − T_s) / R_th = P_fe + I_r^2 R_20 (1 + alpha_cu (T − 20))'
    d.step('T', ['temperature', 'steady temperature of the winding'], expression, words)
  },
}

/** The steady temperature stays below the limit. */
function neverThere({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.heat.secondsToMotorLimit)
    ? { why: 'the motor never gets so hot in this run: its steady temperature is below the limit.' }
    : null
}

const secondsToMotorLimit: Subject = {
  title: 'How long the winding takes from the temperature of what cools it to its limit.',
  state: inCase('steady'),
  source: 'C dT/dt = losses less heat to the sink, a linear equation, solved; IEC 60028 for the copper',
  missing: firstOf(motorHeatNeeds, needing('motor.heatCapacityJPerK'), neverThere),
  write: (d) => {
    const { motor } = d.checked.machine
    const { heat } = d.checked.evaluation
    const rise = motor.maxTemperature - heat.sink
    const told = ['duration', 'time to the limit'] as const
    sink(d)
    d.entry('T_max', 'motor.maxTemperatureC')
    d.step('T_d', ['temperatureDifference', 'how far it is to the limit'], 'T_max - T_s')
    if (rise <= 0) {
      d.found('t', told, 'none where T_d is not above 0: what cools it is as hot as the limit already', 0)
      return
    }
    motorHeat(d)
    const step = growth(d)
    const loss = 'P_fe + I_r^2 * R_20 * (1 + alpha_cu * (T_s - 20))'
    d.step('P_0', ['watts', 'loss of one motor at the start'], loss)
    d.entry('C', 'motor.heatCapacityJPerK')
    const expression = step === 0 ? 'C * T_d / P_0' : 'C / b * log1p(b * T_d / P_0)'
    d.step('t', told, expression)
  },
}

const steadyControllerC: Subject = {
  title: 'Where the controller’s temperature settles in a long run.',
  state: inCase('steady'),
  source: 'heat balance of a lump to its sink',
  assumptions: ['Conduction in the switches is all of the controller’s loss.'],
  missing: firstOf(needing('controller.thermalResistanceKPerW'), needingTop),
  write: (d) => {
    sink(d)
    longRunAmps(d)
    d.entry('R_th', 'controller.thermalResistanceKPerW')
    d.entry('R_esc', 'controller.resistanceMilliohm')
    d.step('T', ['temperature', 'steady temperature of the controller'], 'T_s + R_th * I_r^2 * R_esc')
  },
}

const coolantRiseK: Subject = {
  title: 'How much warmer the coolant leaves motor and controller than it comes.',
  state: inCase('steady'),
  source: 'heat balance of the flow; coolants near 25 °C from IAPWS-95 and the ASHRAE Handbook Fundamentals',
  missing: firstOf(needing('cooling'), needingTop),
  write: (d) => {
    const { cooling } = d.checked.machine
    circuitHeat(d)
    const path = 'cooling.coolant'
    d.row('rho_c', path, ['density', 'density of the coolant'], cooling?.density ?? NaN)
    d.row('c_p', path, ['specificHeat', 'specific heat of the coolant'], cooling?.specificHeat ?? NaN)
    d.entry('Q', 'cooling.flowLPerMin')
    d.step('T_d', ['temperatureDifference', 'warming of the coolant'], 'P / (rho_c * Q * c_p)')
  },
}

export const heatWorkings = {
  steadyMotorC,
  secondsToMotorLimit,
  steadyControllerC,
  coolantRiseK,
} satisfies Record<string, Subject>
