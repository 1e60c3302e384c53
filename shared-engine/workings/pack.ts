import { chemistryOf, openCircuitVolts, resistanceRuleRange } from '../reference/chemistry.ts'
import type { Draft } from './draft.ts'
import type { Subject } from './subject.ts'

const resting = 'the pack at rest, at the given charge and temperature'

/** `v`: one cell at rest, on its chemistry's curve. */
function cellVolts(d: Draft): void {
  const { chemistry } = d.checked.build.pack
  const { charge: points, volts } = chemistryOf(chemistry)
  const charge = d.checked.machine.pack.stateOfCharge
  const value = openCircuitVolts(chemistry, charge)
  const next = Math.max(
    1,
    points.findIndex((point) => point >= charge),
  )
  const path = 'pack.chemistry'
  const told = ['volts', 'one cell at rest'] as const
  if (points[next] === charge || charge <= (points[0] ?? 0)) {
    const at = ['volts', 'one cell at rest at this charge, a point of its chemistry’s curve'] as const
    d.row('v', 'service.stateOfChargePercent', at, value)
    return
  }
  d.row('v_l', path, ['volts', 'the curve’s point below'], volts[next - 1] ?? NaN)
  d.row('v_h', path, ['volts', 'the curve’s point above'], volts[next] ?? NaN)
  d.row('s_l', path, ['fraction', 'charge of the point below'], points[next - 1] ?? NaN)
  d.row('s_h', path, ['fraction', 'charge of the point above'], points[next] ?? NaN)
  d.entry('s', 'service.stateOfChargePercent')
  d.step('v', told, 'v_l + (v_h - v_l) * (s - s_l) / (s_h - s_l)', 'straight between the points')
}

const packOpenVolts: Subject = {
  title: 'The pack’s volts with nothing drawing, at the given charge.',
  state: resting,
  source: 'common practice, no source: resting curve of the chemistry, straight between its points',
  write: (d) => {
    cellVolts(d)
    d.entry('S', 'pack.series')
    d.step('V_oc', ['volts', 'pack volts at rest'], 'S * v')
  },
}

const packOhm: Subject = {
  title: 'What the pack’s cells, leads and plugs resist together, at the pack’s temperature.',
  state: resting,
  source: 'common practice, no source: a cell’s resistance doubles for every 20 K that it is colder',
  write: (d) => {
    d.entry('T_p', 'service.packTemperatureC')
    const { coldest, warmest } = resistanceRuleRange
    const words = 'the rule is held to the temperatures that it was made for'
    d.step('T_h', ['temperature', 'temperature that counts'], `min(max(T_p, ${coldest}), ${warmest})`, words)
    d.step('f_T', ['none', 'times the resistance at 25 °C'], '2^((25 - T_h) / 20)')
    d.entry('r_25', 'pack.cellResistanceMilliohm')
    d.entry('S', 'pack.series')
    d.entry('N_c', 'pack.parallel')
    d.entry('R_w', 'pack.wiringResistanceMilliohm')
    d.step('R_b', ['ohms', 'pack resistance'], 'S * r_25 * f_T / N_c + R_w')
  },
}

const accessoryAmps: Subject = {
  title: 'What lamps, pumps and other accessories draw from the pack.',
  state: 'standing, the accessories alone drawing, at the given charge and temperature',
  source: 'Kirchhoff’s laws: the smaller root of (V_oc − I R_b) I = P',
  assumptions: ['Accessories draw the same current while the machine is driven.'],
  write: (d) => {
    const { build, machine } = d.checked
    const { accessories } = machine
    const terms = accessories.converters.map((_, index) => {
      d.entry(`P_${index + 1}`, `accessories.${index}.watts`)
      const supply = build.accessories[index]?.stepDown
      const path =
        supply === undefined
          ? `accessories.${index}.converterEfficiencyPercent`
          : `stepDowns.${supply}.efficiencyPercent`
      d.entry(`eta_${index + 1}`, path)
      return `P_${index + 1} / eta_${index + 1}`
    })
    if (build.cooling !== undefined) {
      d.entry('P_w', 'cooling.pumpWatts')
      terms.push('P_w')
    }
    const sum = terms.length === 0 ? '0' : terms.join(' + ')
    const words = terms.length === 0 ? 'there are none' : undefined
    d.step('P_a', ['watts', 'power of all accessories'], sum, words)
    d.figure('V_oc', 'packOpenVolts')
    d.figure('R_b', 'packOhm')
    const root = '2 * P_a / (V_oc + sqrt(V_oc^2 - 4 * R_b * P_a))'
    d.step('I_a', ['amps', 'accessory current'], root)
  },
}

export const packWorkings = { packOhm, packOpenVolts, accessoryAmps } satisfies Record<string, Subject>
