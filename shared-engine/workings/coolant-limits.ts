import { airGasConstant, zeroCelsius } from '../constants.ts'
import { circuit } from './coolant.ts'
import { runaway } from './heat.ts'
import type { LimitWorking } from './limit.ts'
import { firstOf, needing } from './subject.ts'

const circuitMissing = firstOf(needing('cooling'), runaway)

export const boilingWorking: LimitWorking = {
  title: 'The coolant’s hottest against where it boils, counted from the air.',
  source: 'Antoine’s equation of water; the mixture’s rise from memory; ISO 2533 for the air’s pressure',
  missing: circuitMissing,
  unformed: 'the air is as hot as the coolant may be: it counts as over.',
  write: (d) => {
    const { ground, cooling } = d.checked.machine
    d.figure('T', 'coolantHotC')
    const pressure = ground.airDensity * airGasConstant * (ground.airTemperature + zeroCelsius)
    d.given('p_air', ['pressure', 'air at this altitude'], pressure)
    d.entry('p_cap', 'cooling.capKpa')
    const rise = ['temperatureDifference', 'by how much the mixture boils above water'] as const
    d.row('T_r', 'cooling.coolant', rise, cooling?.boilingRise ?? NaN)
    d.step('p_t', ['none', 'pressure in torr'], '(p_air + p_cap) * 760 / 101325')
    const antoine = '1730.63 / (8.07131 - log1p(p_t - 1) / log1p(9)) - 233.426 + T_r'
    d.step('T_b', ['temperature', 'where it boils'], antoine)
    d.entry('T_air', 'ground.airTemperatureC')
    return { actual: 'T', allowed: 'T_b', sink: 'T_air' }
  },
}

export const freezingWorking: LimitWorking = {
  title: 'The air against the coolant’s freezing point.',
  source: 'IAPWS for water, ASHRAE Handbook Fundamentals for the mixtures',
  missing: needing('cooling'),
  write: (d) => {
    d.entry('T_air', 'ground.airTemperatureC')
    const told = ['temperature', 'freezing point'] as const
    d.row('T_f', 'cooling.coolant', told, d.checked.machine.cooling?.freezes ?? NaN)
    return { actual: 'T_air', allowed: 'T_f' }
  },
}

export const warmingWorking: LimitWorking = {
  title: 'How much the coolant warms in one round against what a circuit should have.',
  source: 'heat balance of the flow; 20 K: assumption',
  missing: circuitMissing,
  write: (d) => {
    circuit(d)
    d.step('T_d', ['temperatureDifference', 'warming of the coolant'], 'q / C_f')
    d.given('T_m', ['temperatureDifference', 'most that it should be'], 20)
    return { actual: 'T_d', allowed: 'T_m' }
  },
}
