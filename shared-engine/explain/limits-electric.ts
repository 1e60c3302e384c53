import { stallAmpsOf, strongestDuty } from '../motor/standstill.ts'
import { floorVolts } from '../reference/chemistry.ts'
import { driveVolts, motorModel, seriesResistance } from './circuit.ts'
import type { Draft } from './draft.ts'
import { longRunAmps, runaway, sink } from './heat.ts'
import type { LimitSubject } from './margin.ts'
import { limitedAmps, strongest } from './motor.ts'
import { worstPackAmps } from './run.ts'

const label = 'the limit is the maker’s or the builder’s own (label or data sheet)'
const longRun = ['A long run is a share of the top-speed current (service.loadPercent).'] as const

/** `I_r`: most standstill current in the running state, after the limit. */
export function restAmps(d: Draft): void {
  const { drive, restAmps: value } = d.checked.evaluation
  driveVolts(d)
  seriesResistance(d, 'service')
  strongest(d, strongestDuty(drive))
  const told = ['amps', 'most standstill current of one motor, before a limit'] as const
  d.step('I_s', told, 'delta_s * V_0 / (R_s + M * delta_s^2 * R_b)', stallAmpsOf(drive))
  limitedAmps(d, 'I_s', 'I_r', value)
}

const burst = (part: 'motor' | 'controller', title: string): LimitSubject => ({
  title,
  source: `${motorModel}; ${label}`,
  write: (d) => {
    restAmps(d)
    d.entry('I_max', `${part}.burstAmps`)
    return { actual: 'I_r', allowed: 'I_max' }
  },
})

const continuous = (part: 'motor' | 'controller', title: string): LimitSubject => ({
  title,
  source: label,
  assumptions: longRun,
  afterTop: true,
  write: (d) => {
    longRunAmps(d)
    d.entry('I_max', `${part}.continuousAmps`)
    return { actual: 'I_r', allowed: 'I_max' }
  },
})

const sinkTooHot =
  'what cools it is as hot as the limit already: there is no margin to form, and it counts as over.'

export const motorLimitWorkings = {
  'motor.free-rpm': {
    title: 'The free-running speed against what the motor’s maker allows: unloaded, it must not burst.',
    source: label,
    write: (d) => {
      d.figure('n', 'freeRpm')
      d.entry('n_max', 'motor.ratedMaxRpm')
      return { actual: 'n', allowed: 'n_max' }
    },
  },
  'motor.loaded-rpm': {
    title: 'The motor’s speed at top speed against what its maker allows.',
    source: label,
    afterTop: true,
    write: (d) => {
      d.figure('n', 'topMotorRpm')
      d.entry('n_max', 'motor.ratedMaxRpm')
      return { actual: 'n', allowed: 'n_max' }
    },
  },
  'motor.current-burst': burst(
    'motor',
    'The most standstill current against what the motor bears for seconds.',
  ),
  'motor.current-continuous': continuous(
    'motor',
    'The current of a long run against what the motor bears for long.',
  ),
  'motor.temperature': {
    title: 'The winding’s steady temperature against its limit, counted from what cools it.',
    source: `heat balance of a lump to its sink; ${label}`,
    assumptions: longRun,
    afterTop: true,
    missing: runaway,
    unformed: sinkTooHot,
    write: (d) => {
      d.figure('T', 'steadyMotorC')
      d.entry('T_max', 'motor.maxTemperatureC')
      sink(d)
      return { actual: 'T', allowed: 'T_max', sink: 'T_s' }
    },
  },
} as const satisfies Record<string, LimitSubject>

export const controllerLimitWorkings = {
  'controller.electrical-rpm': {
    title: 'The electrical speed of the free-running motor against what the controller can switch.',
    source: label,
    write: (d) => {
      d.figure('n_e', 'electricalRpm')
      d.entry('n_max', 'controller.maxElectricalRpm')
      return { actual: 'n_e', allowed: 'n_max' }
    },
  },
  'controller.current-burst': burst(
    'controller',
    'The most standstill current against what the controller bears for seconds.',
  ),
  'controller.current-continuous': continuous(
    'controller',
    'The current of a long run against what the controller bears for long.',
  ),
  'controller.temperature': {
    title: 'The controller’s steady temperature against its limit, counted from what cools it.',
    source: `heat balance of a lump to its sink; ${label}`,
    assumptions: longRun,
    afterTop: true,
    unformed: sinkTooHot,
    write: (d) => {
      d.figure('T', 'steadyControllerC')
      d.entry('T_max', 'controller.maxTemperatureC')
      sink(d)
      return { actual: 'T', allowed: 'T_max', sink: 'T_s' }
    },
  },
} as const satisfies Record<string, LimitSubject>

/** `I_B`: what the pack’s label allows. */
function ratedAmps(d: Draft, path: 'pack.burstC' | 'pack.continuousC', value: number | null): void {
  d.entry('C_r', path)
  d.entry('Q', 'pack.capacityMah')
  d.step('I_B', ['amps', 'what the label allows'], 'C_r * Q', value ?? NaN)
}

export const packLimitWorkings = {
  'pack.current-burst': {
    title: 'The pack’s greatest current of a full-throttle run against what its label allows for seconds.',
    source: `${motorModel}; the limit is the pack’s label, C rating times capacity`,
    afterTop: true,
    write: (d) => {
      worstPackAmps(d)
      ratedAmps(d, 'pack.burstC', d.checked.machine.pack.burstAmps)
      return { actual: 'I_p', allowed: 'I_B' }
    },
  },
  'pack.current-continuous': {
    title: 'The pack’s current of a long run against what its label allows for long.',
    source: 'the limit is the pack’s label, C rating times capacity',
    assumptions: longRun,
    afterTop: true,
    write: (d, row) => {
      d.entry('q_I', 'service.loadPercent')
      d.figure('I_t', 'topPackAmps')
      d.figure('I_a', 'accessoryAmps')
      const told = ['amps', 'pack current of a long run'] as const
      d.step('I_p', told, 'q_I * (I_t - I_a) + I_a', row.actual ?? NaN, 'accessories draw all the time')
      ratedAmps(d, 'pack.continuousC', d.checked.machine.pack.continuousAmps)
      return { actual: 'I_p', allowed: 'I_B' }
    },
  },
  'pack.floor-voltage': {
    title: 'The pack’s volts at the worst moment of a run against the floor of its chemistry.',
    source: `${motorModel}; floor under load: common practice, no source`,
    afterTop: true,
    unformed: 'the pack sags to nothing at that current: it counts as over.',
    write: (d) => {
      const { machine, build, evaluation } = d.checked
      worstPackAmps(d)
      d.figure('V_oc', 'packOpenVolts')
      d.figure('R_b', 'packOhm')
      d.step('V_b', ['volts', 'pack volts under that current'], 'V_oc - I_p * R_b', evaluation.runPackVolts)
      d.entry('S', 'pack.series')
      const floor = ['volts', 'floor of one loaded cell (common practice, no source)'] as const
      d.row('v_f', 'pack.chemistry', floor, floorVolts(build.pack.chemistry))
      d.step('V_f', ['volts', 'floor of the pack'], 'S * v_f', machine.pack.floorVolts)
      return { actual: 'V_b', allowed: 'V_f' }
    },
  },
} as const satisfies Record<string, LimitSubject>

export const converterLimitWorking = (number: number): LimitSubject => ({
  title: `What accessory ${number} draws from its converter against what the converter gives.`,
  source: label,
  write: (d, row) => {
    const path = `accessories.${number - 1}`
    d.entry('P', `${path}.watts`)
    d.entry('V', `${path}.volts`)
    d.step('I', ['amps', 'current out of the converter'], 'P / V', row.actual ?? NaN)
    d.entry('I_max', `${path}.converterAmps`)
    return { actual: 'I', allowed: 'I_max' }
  },
})
