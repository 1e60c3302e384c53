import type { Evaluated } from '../figures/evaluated.ts'
import { windingResistance } from './circuit.ts'
import type { Draft } from './draft.ts'
import {
  meanOfRows,
  rowAmps,
  rowController,
  rowIron,
  rowPackAmps,
  rowPackAmpsRms,
  rowSpeed,
  steadyRows,
} from './pattern-rows.ts'
import { firstOf, inCase, type Missing, type Subject } from './subject.ts'

const state = inCase('pattern')
const source = 'power balance of each row of the drive pattern, steady; Drela’s first-order motor model'

/** `I_r`: RMS current of one motor through the pattern. */
export function patternAmps(d: Draft): void {
  meanOfRows(d, rowAmps, ['I_r', 'motor current, RMS'], 2, d.checked.evaluation.pattern.motorAmpsRms)
}

/** `P_fe`: mean iron loss of one motor. */
export function patternIron(d: Draft): void {
  meanOfRows(d, rowIron, ['P_fe', 'iron loss of one motor, mean'], 1, d.checked.evaluation.pattern.ironLoss)
}

/** `I_pr`: RMS current of the pack. */
export function patternPackRms(d: Draft): void {
  const { packAmpsRms } = d.checked.evaluation.pattern
  meanOfRows(d, rowPackAmpsRms, ['I_pr', 'pack current, RMS'], 2, packAmpsRms)
}

function patternPackMean(d: Draft): void {
  meanOfRows(d, rowPackAmps, ['I_pm', 'pack current, mean'], 1, d.checked.evaluation.pattern.packAmpsMean)
}

function patternSpeed(d: Draft): void {
  meanOfRows(d, rowSpeed, ['v_m', 'mean speed'], 1, d.checked.evaluation.pattern.speed)
}

/** `Q`: charge from the given one to the reserve, less what the cold holds back. */
export function usableCharge(d: Draft): void {
  const { pack } = d.checked.machine
  d.entry('Q_p', 'pack.capacityMah')
  d.entry('c_0', 'service.stateOfChargePercent')
  d.entry('c_r', 'service.reservePercent')
  const share = pack.usable / (pack.capacity * (pack.stateOfCharge - pack.reserve))
  d.entry('T_p', 'service.packTemperatureC')
  d.found('s_c', ['fraction', 'what cells this cold give'], 'of cells at T_p (common practice)', share)
  d.step('Q', ['charge', 'charge down to the reserve'], 'Q_p * (c_0 - c_r) * s_c')
}

/** Nothing is drawn on the whole: a charge never ends. */
export function nothingDrawn({ evaluation }: Evaluated): Missing | null {
  return Number.isNaN(evaluation.pattern.life)
    ? { why: 'the pattern draws nothing on the whole, so a charge does not end.' }
    : null
}

function nothingMoves({ evaluation }: Evaluated): Missing | null {
  return evaluation.pattern.speed > 0 ? null : { why: 'no row of the pattern moves the machine.' }
}

/** `t`: time on one charge. */
function chargeTime(d: Draft): void {
  patternPackMean(d)
  usableCharge(d)
  d.step('t', ['time', 'time on one charge'], 'Q / I_pm')
}

const mean = (title: string, write: (d: Draft) => void): Subject => ({ title, state, source, write })

export const patternWorkings = {
  patternMotorAmpsRms: mean('The current of one motor that heats as the pattern does.', patternAmps),
  patternPackAmpsRms: mean('The pack’s current that heats as the pattern does.', patternPackRms),
  patternPackAmpsMean: mean('The pack’s mean current: what empties it.', patternPackMean),
  patternIronWatts: mean('What iron and friction take in one motor, on the mean.', patternIron),
  patternCopperWatts: {
    title: 'What the copper of one motor takes, on the mean, at the service temperature.',
    state,
    source: 'Joule’s law; IEC 60028 for the copper',
    write: (d) => {
      d.figure('I_r', 'patternMotorAmpsRms')
      windingResistance(d, 'service')
      d.step('P_cu', ['watts', 'copper loss of one motor'], 'I_r^2 * R_m')
    },
  },
  controllerLossWatts: {
    title: 'What one controller takes, on the mean: conduction, and switching where it is known.',
    state,
    source: 'hard-switched half bridge, handbooks of power electronics',
    write: (d) => {
      const { controllerLoss } = d.checked.evaluation.pattern
      d.entry('R_esc', 'controller.resistanceMilliohm')
      meanOfRows(d, rowController, ['P_e', 'loss of one controller, mean'], 1, controllerLoss)
    },
  },
  patternTurnSeconds: {
    title: 'How long of one round is spent in pivot turns.',
    state,
    source: 'the pattern’s own shares',
    write: (d) => {
      const { turnSeconds } = d.checked.evaluation.pattern
      const words = 'the turns’ shares of their rows, where the machine can turn on the spot'
      d.found('t_t', ['duration', 'pivot turns'], words, turnSeconds)
    },
  },
  patternMeanSpeedMps: mean('The mean speed of the pattern.', patternSpeed),
  patternMinutes: {
    title: 'How long the pattern can be repeated on one charge.',
    state,
    source: 'charge over mean current',
    assumptions: [steadyRows],
    missing: nothingDrawn,
    write: (d) => {
      chargeTime(d)
      d.step('t_m', ['minutes', 'time on one charge'], 't / 60')
    },
  },
  patternKilometres: {
    title: 'How far one charge goes.',
    state,
    source: 'mean speed times time',
    assumptions: [steadyRows],
    missing: nothingDrawn,
    write: (d) => {
      chargeTime(d)
      patternSpeed(d)
      d.step('s_k', ['kilometres', 'distance on one charge'], 'v_m * t / 1000')
    },
  },
  patternWhPerKm: {
    title: 'What the pattern draws for each kilometre, at the pack’s resting volts half way to the reserve.',
    state,
    source: 'power over speed',
    assumptions: [steadyRows],
    missing: firstOf(nothingMoves),
    write: (d) => {
      patternPackMean(d)
      patternSpeed(d)
      const words = ['volts', 'pack at rest, half way to the reserve'] as const
      d.row('V_m', 'pack.chemistry', words, d.checked.machine.pack.middleVolts)
      d.step('e_k', ['wattHoursPerKilometre', 'energy for the way'], 'V_m * I_pm / v_m / 3.6')
    },
  },
  packUsableMah: {
    title: 'What the pack gives from its charge to the reserve.',
    state: 'at the pack’s temperature',
    source: 'capacity in the cold: common practice, no source',
    write: (d) => {
      usableCharge(d)
      d.step('Q_m', ['milliampereHours', 'charge down to the reserve'], 'Q / 3.6')
    },
  },
} satisfies Record<string, Subject>
