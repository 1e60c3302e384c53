import type { Evaluated } from '../figures/evaluated.ts'
import { motorModel, noLoadAt, torqueConstant, windingResistance } from './circuit.ts'
import type { Draft } from './draft.ts'
import { dutyForCurrent, topAmps, topMotorSpeed, topThrust, topTorque } from './motion.ts'
import { firstOf, inCase, needingTop, type Missing, type Subject } from './subject.ts'

const topMotorAmps: Subject = {
  title: 'The current of one motor at top speed.',
  state: inCase('top'),
  source: motorModel,
  missing: needingTop,
  write: topAmps,
}

const topPackAmps: Subject = {
  title: 'What the pack gives at top speed: all motors and the accessories.',
  state: inCase('top'),
  source: 'Kirchhoff’s laws over one switching period: each motor draws its duty’s share of the time',
  missing: needingTop,
  write: (d) => {
    const { top, drive } = d.checked.evaluation
    d.figure('I', 'topMotorAmps')
    d.figure('I_a', 'accessoryAmps')
    const told = ['amps', 'pack current'] as const
    if (top.motorSpeed < drive.cornerSpeed) {
      torqueConstant(d, 'service')
      topMotorSpeed(d)
      dutyForCurrent(d, 'omega')
      d.step('I_p', told, 'M * delta_i * I + I_a')
      return
    }
    d.entry('M', 'motor.count')
    d.entry('delta', 'controller.throttleCapPercent')
    d.step('I_p', told, 'M * delta * I + I_a')
  },
}

const topPackVolts: Subject = {
  title: 'The pack’s volts under the load of top speed.',
  state: inCase('top'),
  source: 'Ohm’s law',
  missing: needingTop,
  write: (d) => {
    d.figure('V_oc', 'packOpenVolts')
    d.figure('I_p', 'topPackAmps')
    d.figure('R_b', 'packOhm')
    d.step('V_b', ['volts', 'pack volts under load'], 'V_oc - I_p * R_b')
  },
}

/** Nothing is drawn, so that no share of it arrives. */
function nothingDrawn({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.topMotorEfficiency)
    ? { why: 'the motors draw nothing at top speed: a share of nothing does not exist.' }
    : null
}

const topMotorEfficiency: Subject = {
  title: 'What the motor makes of its power at top speed: shaft power over shaft power and losses.',
  state: inCase('top'),
  source: motorModel,
  missing: firstOf(needingTop, nothingDrawn),
  write: (d) => {
    topTorque(d)
    topMotorSpeed(d)
    d.step('P_s', ['watts', 'shaft power of one motor'], 'T * omega')
    d.figure('I', 'topMotorAmps')
    windingResistance(d, 'service')
    d.step('P_cu', ['watts', 'copper loss'], 'I^2 * R_m')
    ironLoss(d)
    d.step('eta_m', ['fraction', 'efficiency of the motor'], 'P_s / (P_s + P_cu + P_fe)')
  },
}

/** `P_fe`: iron and friction loss of one motor at top speed. */
function ironLoss(d: Draft): void {
  topMotorSpeed(d)
  torqueConstant(d, 'service')
  noLoadAt(d)
  d.step('P_fe', ['watts', 'iron and friction loss of one motor'], 'omega * K_t * I_0')
}

const topOverallEfficiency: Subject = {
  title: 'What arrives on the ground of all that the pack’s cells give, at top speed.',
  state: inCase('top'),
  source: 'definition: thrust power over chemical power, accessories included',
  missing: firstOf(needingTop, nothingDrawn),
  write: (d) => {
    topThrust(d)
    d.figure('V_oc', 'packOpenVolts')
    d.figure('I_p', 'topPackAmps')
    d.step('eta_o', ['fraction', 'pack to ground'], 'F * v / (V_oc * I_p)')
  },
}

const peakAccelerationMps2: Subject = {
  title: 'How hard the machine accelerates from rest at full throttle.',
  state: inCase('rest'),
  source: 'Newton’s second law',
  missing: needingTop,
  write: (d) => {
    d.figure('F_m0', 'startThrustN')
    d.figure('F_max', 'gripThrustN')
    d.figure('R_0', 'groundResistanceN')
    d.figure('m_e', 'equivalentMassKg')
    d.step('a', ['acceleration', 'acceleration from rest'], '(min(F_m0, F_max) - R_0) / m_e')
  },
}

const newton =
  'Newton’s second law, integrated (Gauss-Legendre on pieces that end where grip or current limit let go)'
const integrated = 'a full-throttle run from rest, at the given charge and temperatures'

/** `v_e`: the share of the top speed at which a run is stopped. */
function endSpeed(d: Draft, share: number): void {
  d.figure('v', 'topSpeedMps')
  d.step('v_e', ['speed', 'speed at the end'], `${share} * v`)
}

/** Subject of a run’s time to a share of the top speed. */
const secondsTo = (share: number, words: string, of: (checked: Evaluated) => number): Subject => ({
  title: `How long the machine takes from rest to ${words} of its top speed.`,
  state: integrated,
  source: newton,
  assumptions: ['Charge and temperatures stay as they are during the run.'],
  missing: needingTop,
  write: (d) => {
    endSpeed(d, share)
    d.figure('a', 'peakAccelerationMps2')
    const check = 'were the first acceleration kept: no more than the real time'
    d.step('t_0', ['time', 'time for comparison'], 'v_e / a', check)
    d.figure('m_e', 'equivalentMassKg')
    const solved = 'the integral of m_e / (F(v) − R(v)) over speed from 0 to v_e'
    d.found('t', ['time', 'time of the run'], solved, of(d.checked))
  },
})

const metresTo80Top: Subject = {
  title: 'How far the machine goes from rest to 80 % of its top speed.',
  state: integrated,
  source: newton,
  assumptions: ['Charge and temperatures stay as they are during the run.'],
  missing: needingTop,
  write: (d) => {
    const { run } = d.checked.evaluation
    endSpeed(d, 0.8)
    d.figure('a', 'peakAccelerationMps2')
    const check = 'were the first acceleration kept: no more than the real distance'
    d.step('s_0', ['distance', 'distance for comparison'], 'v_e^2 / (2 * a)', check)
    d.figure('m_e', 'equivalentMassKg')
    const solved = 'the integral of m_e v / (F(v) − R(v)) over speed from 0 to v_e'
    d.found('s', ['distance', 'distance of the run'], solved, run.metresTo80)
  },
}

export const runWorkings = {
  topMotorAmps,
  topPackAmps,
  topPackVolts,
  topMotorEfficiency,
  topOverallEfficiency,
  peakAccelerationMps2,
  secondsToHalfTop: secondsTo(0.5, 'half', ({ evaluation }) => evaluation.run.secondsToHalf),
  secondsTo80Top: secondsTo(0.8, '80 %', ({ evaluation }) => evaluation.run.secondsTo80),
  metresTo80Top,
} satisfies Record<string, Subject>
