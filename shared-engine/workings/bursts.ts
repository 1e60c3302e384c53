import type { Evaluated } from '../figures/evaluated.ts'
import { caseNames, caseWords } from '../cases/case.ts'
import { spinUpSeconds } from '../vehicle/spin-up.ts'
import { motorModel } from './circuit.ts'
import { mass } from './footing.ts'
import type { Draft } from './draft.ts'
import { inCase, running, type Missing, type Subject } from './subject.ts'

const state = running

/** What pushes at full throttle, by figures that have workings of their own; in words for a step that is solved. */
export function pushed(d: Draft): string {
  d.figure('F_m0', 'startThrustN')
  d.figure('F_max', 'gripThrustN')
  d.figure('R_b', 'packOhm')
  d.figure('V_oc', 'packOpenVolts')
  d.figure('I_a', 'accessoryAmps')
  d.entry('D_1', 'track.internalDragNPerMps')
  d.entry('R_20', 'motor.resistanceMilliohm')
  d.entry('R_esc', 'controller.resistanceMilliohm')
  d.entry('T_m', 'service.windingTemperatureC')
  d.entry('V_nl', 'motor.noLoadVolts')
  d.entry('delta', 'controller.throttleCapPercent')
  return 'by what gives F_m0 and F_max, from V_oc less I_a through R_b, R_20 at T_m and R_esc at delta, with V_nl and D_1'
}

/** `I_b`: the largest of what the ground lets happen. */
export function burstAmps(d: Draft): void {
  const { bursts, drive } = d.checked.evaluation
  const told = (name: string) => ['amps', name] as const
  const held = `the least of the most standstill current of any throttle and what the grip’s thrust asks for, ${pushed(d)}`
  d.found('I_r', told('held at rest'), held, bursts.restAmps)
  const candidates = ['I_r']
  const add = (symbol: string, name: string, words: string, amps: number) => {
    if (Number.isNaN(amps)) return
    d.found(symbol, told(name), words, amps)
    candidates.push(symbol)
  }
  const corner = drive.cornerSpeed > 0 ? ', under the current limit below its corner' : ''
  const spinning = `full throttle at the belt speed whose thrust is the grip’s${corner}`
  add('I_s', 'spinning on the spot', spinning, bursts.spinAmps)
  if (!Number.isNaN(bursts.topAmps)) {
    d.figure('I_t', 'topMotorAmps')
    candidates.push('I_t')
  }
  if (!Number.isNaN(bursts.pivotAmps)) {
    d.figure('I_p0', 'pivotMotorAmps')
    add('I_v', 'in a pivot turn', 'I_p0, at most the most standstill current', bursts.pivotAmps)
  }
  const all = candidates.length === 1 ? 'I_r' : `max(${candidates.join(', ')})`
  const where = caseWords[caseNames[bursts.motorCase] ?? 'rest']
  d.step('I_b', told('the most that the ground lets happen'), all, where)
}

/** `I_p`: the pack's part of it. */
export function burstPackAmps(d: Draft): void {
  const { bursts } = d.checked.evaluation
  const pivot = caseNames[bursts.packCase] === 'pivot'
  if (pivot) d.figure('I_p0', 'pivotMotorAmps')
  else d.figure('v_t', 'topSpeedMps')
  const words = pivot
    ? `the pivot turn’s I_p0 at standstill, through its duty, ${pushed(d)}`
    : `at full throttle, the most between the speed at which the track stops spinning, else rest, and v_t, ${pushed(d)}`
  d.found('I_d', ['amps', 'drive amps of all motors'], words, bursts.packAmps - d.of('I_a'))
  d.step('I_p', ['amps', 'pack current with accessories'], 'I_d + I_a')
}

/** The track grips at full throttle. */
export function grips({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.bursts.spinUpAmps)
    ? { why: 'the track grips at full throttle: nothing spins up.' }
    : null
}

export const burstWorkings = {
  burstMotorAmps: {
    title: 'The most current of one motor that the ground lets happen.',
    state,
    source: `${motorModel}; statics of the ground`,
    write: burstAmps,
  },
  burstPackAmps: {
    title: 'The most current of the pack that the ground lets happen.',
    state,
    source: `${motorModel}; drive amps rise under a current limit and fall above its corner`,
    write: burstPackAmps,
  },
  burstPackVolts: {
    title: 'The pack’s volts under that current.',
    state,
    source: 'Ohm’s law',
    write: (d) => {
      d.figure('V_oc', 'packOpenVolts')
      d.figure('I_p', 'burstPackAmps')
      d.figure('R_b', 'packOhm')
      d.step('V_b', ['volts', 'pack volts'], 'V_oc - I_p * R_b')
    },
  },
  spinUpMotorAmps: {
    title: 'The current of one motor as the track breaks loose at full throttle.',
    state: inCase('spin-up'),
    source: motorModel,
    missing: grips,
    write: (d) => {
      const { bursts } = d.checked.evaluation
      const words = `full throttle at standstill, at most the current limit, ${pushed(d)}`
      d.found('I_u', ['amps', 'current as a spin-up begins'], words, bursts.spinUpAmps)
    },
  },
  spinUpSeconds: {
    title: 'How long the track takes from rest to 95 % of the speed at which it spins on the spot.',
    state: inCase('spin-up'),
    source:
      'Newton’s second law of rotors, wheels and loops, integrated on each straight piece of the thrust line',
    assumptions: ['The last 5 % count as there: they are approached for ever.'],
    missing: grips,
    write: (d) => {
      const { evaluation, machine } = d.checked
      d.figure('m_e', 'equivalentMassKg')
      mass(d)
      d.step('m_s', ['mass', 'what spins, as a mass at the belt'], 'm_e - m')
      const words = `the integral of m_s / (F_m(v_b) − F_max) over the belt’s speed, ${pushed(d)}`
      d.found('t', ['time', 'time of the spin-up'], words, spinUpSeconds(evaluation, machine.vehicle.mass))
    },
  },
} satisfies Record<string, Subject>
