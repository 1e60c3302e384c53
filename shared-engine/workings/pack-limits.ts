import { floorVolts } from '../reference/chemistry.ts'
import { cellHeatOf } from '../reference/heat.ts'
import { burstPackAmps, grips, pushed } from './bursts.ts'
import { motorModel } from './circuit.ts'
import { ratedAmps } from './currents.ts'
import type { Draft } from './draft.ts'
import type { LimitWorking } from './limit.ts'
import { patternPackRms } from './pattern.ts'
import { drivenBy, steadyRows } from './pattern-rows.ts'
import type { Missing } from './subject.ts'
import type { Evaluated } from '../figures/evaluated.ts'

const label = 'the limit is the pack’s label, C rating times capacity'

/** *Source:* a discharge at 5C was 0.4 V a cell below this at 77 % used: `docs/validation.md`. */
const evenResistance =
  'Cells resist alike at any charge; towards empty they resist more, so late in a charge the volts are lower than this.'

/** `V_f`: floor of the pack under load. */
function packFloor(d: Draft): void {
  const { build } = d.checked
  d.entry('S', 'pack.series')
  const floor = ['volts', 'floor of one loaded cell (common practice, no source)'] as const
  d.row('v_f', 'pack.chemistry', floor, floorVolts(build.pack.chemistry))
  d.step('V_f', ['volts', 'floor of the pack'], 'S * v_f')
}

export const packBurstWorking: LimitWorking = {
  title: 'The most current that the ground lets happen against what the pack’s label allows for seconds.',
  source: `${motorModel}; ${label}`,
  write: (d) => {
    burstPackAmps(d)
    ratedAmps(d, 'pack.burstC')
    return { actual: 'I_p', allowed: 'I_B' }
  },
}

export const packContinuousWorking: LimitWorking = {
  title: 'The pack’s RMS current through the pattern against what its label allows for long.',
  source: label,
  assumptions: [steadyRows],
  write: (d) => {
    patternPackRms(d)
    ratedAmps(d, 'pack.continuousC')
    return { actual: 'I_pr', allowed: 'I_B' }
  },
}

export const floorVoltsWorking: LimitWorking = {
  title:
    'The pack’s volts under the most current that the ground lets happen against the floor of its chemistry.',
  source: `${motorModel}; floor under load: common practice, no source`,
  assumptions: [evenResistance],
  unformed: 'the pack sags to nothing at that current: it counts as over.',
  write: (d) => {
    burstPackAmps(d)
    d.figure('V_oc', 'packOpenVolts')
    d.figure('R_b', 'packOhm')
    d.step('V_b', ['volts', 'pack volts under that current'], 'V_oc - I_p * R_b')
    packFloor(d)
    return { actual: 'V_b', allowed: 'V_f' }
  },
}

export const spinUpVoltsWorking: LimitWorking = {
  title: 'The pack’s volts as the track breaks loose at full throttle against the floor of its chemistry.',
  source: `${motorModel}; floor under load: common practice, no source`,
  assumptions: ['The corner speed of a limited drive, which draws more, is not judged.'],
  missing: grips,
  unformed: 'the pack sags to nothing at that current: it counts as over.',
  write: (d) => {
    d.figure('V_oc', 'packOpenVolts')
    d.figure('I_a', 'accessoryAmps')
    d.figure('R_b', 'packOhm')
    d.figure('I_u', 'spinUpMotorAmps')
    const words = `V_oc − (M δ I_u + I_a) R_b, δ the duty that passes I_u at standstill, ${pushed(d)}`
    d.found('V_b', ['volts', 'pack volts then'], words, d.checked.evaluation.bursts.spinUpVolts)
    packFloor(d)
    return { actual: 'V_b', allowed: 'V_f' }
  },
}

/** Nothing charges. */
function nothingCharges({ machine }: Evaluated): Missing | null {
  if (machine.controller.brakeAmps > 0) return { why: 'nothing is fed back to the pack.' }
  return {
    why: 'it coasts: no braking current is entered (controller.brakeAmps), so nothing charges the pack.',
  }
}

/** Most that rows of the pattern feed back, by what their state is worked out from; 0 where none does. */
function ofRows(d: Draft, symbol: string, name: string, words: string, amps: number): void {
  const told = ['amps', name] as const
  if (!(amps > 0)) {
    d.given(symbol, told, 0)
    return
  }
  d.assume(steadyRows)
  d.entry('I_br', 'controller.brakeAmps')
  d.found(symbol, told, `${words}, I_br at most; ${drivenBy(d)}`, amps)
}

/** `I_f`: most charging current into a full pack. */
function fullCharge(d: Draft): void {
  const { braking } = d.checked.evaluation
  if (Number.isNaN(braking.chargeAmps)) d.given('I_s', ['amps', 'stop from top speed: there is none'], 0)
  else d.figure('I_s', 'brakeChargeAmps')
  const words = 'of the rows that their slope drives, with a full pack, no accessories'
  ofRows(d, 'I_w', 'pattern’s braking rows, full pack', words, braking.rowChargeAmps)
  d.step('I_f', ['amps', 'most charging current, full pack'], 'max(I_s, I_w)')
}

export const chargeVoltsWorking: LimitWorking = {
  title: 'The full pack’s volts while braking against what its cells may be charged to.',
  source: 'Ohm’s law; ceiling of the chemistry: common practice, no source',
  missing: nothingCharges,
  write: (d) => {
    const { machine, build } = d.checked
    fullCharge(d)
    d.row('V_full', 'pack.chemistry', ['volts', 'full pack at rest'], machine.pack.fullVolts)
    d.figure('R_b', 'packOhm')
    d.step('V_b', ['volts', 'pack volts while braking'], 'V_full + I_f * R_b')
    d.entry('S', 'pack.series')
    const told = ['volts', 'ceiling of one cell (common practice, no source)'] as const
    d.row('v_c', 'pack.chemistry', told, cellHeatOf(build.pack.chemistry).ceilingVolts)
    d.step('V_c', ['volts', 'ceiling of the pack'], 'S * v_c')
    return { actual: 'V_b', allowed: 'V_c' }
  },
}

export const chargeAmpsWorking: LimitWorking = {
  title: 'The most current that braking feeds into the pack against what its label lets it take.',
  source: `${label}; none at freezing, all from 20 °C: common practice, no source`,
  missing: nothingCharges,
  unformed: 'cells this cold may not be charged at all: it counts as over.',
  write: (d) => {
    const { braking } = d.checked.evaluation
    fullCharge(d)
    const words = 'most that goes in, with accessories, charge half way to the reserve'
    ofRows(d, 'I_n', 'pattern’s rows as they are', words, braking.patternChargeAmps)
    d.step('I_c', ['amps', 'most charging current'], 'max(I_f, I_n)')
    ratedAmps(d, 'pack.chargeC')
    d.entry('T_p', 'service.packTemperatureC')
    d.step('I_w_max', ['amps', 'allowed at this temperature'], 'I_B * max(0, min(1, T_p / 20))')
    return { actual: 'I_c', allowed: 'I_w_max' }
  },
}

export const coldPackWorking: LimitWorking = {
  title: 'The cells’ temperature against the coldest at which they may give current.',
  source: 'common practice, no source',
  write: (d) => {
    d.entry('T_p', 'service.packTemperatureC')
    d.given('T_c', ['temperature', 'coldest for cells that give current'], -20)
    return { actual: 'T_p', allowed: 'T_c' }
  },
}

export const packTemperatureWorking: LimitWorking = {
  title:
    'The cells’ temperature when the charge is used, or at the start where that is more, against their limit.',
  source: 'heat balance of a lump; limit of the cells: common practice, no source',
  unformed: 'the cells are as warm as their limit from the start: it counts as over.',
  write: (d) => {
    const { figures } = d.checked
    d.entry('T_p', 'service.packTemperatureC')
    if (figures.packEndC === null)
      d.step('T', ['temperature', 'cells'], 'T_p', 'nothing is drawn on the whole')
    else {
      d.figure('T_e', 'packEndC')
      d.step('T', ['temperature', 'warmest of start and end'], 'max(T_p, T_e)')
    }
    d.entry('T_max', 'pack.maxTemperatureC')
    return { actual: 'T', allowed: 'T_max', sink: 'T_p' }
  },
}
