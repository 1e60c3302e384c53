import { flowAt } from '../heat/cold-flow.ts'
import { nothingDrawn, patternPackRms } from './pattern.ts'
import type { Draft } from './draft.ts'
import { runaway, sink } from './heat.ts'
import { firstOf, inCase, needing, type Subject } from './subject.ts'

const state = inCase('pattern')
const source =
  'heat balance of the circuit; effectiveness by transfer units, Incropera, Fundamentals of Heat and Mass Transfer, eqs. 11.33 to 11.35'
const missing = firstOf(needing('cooling'), runaway)

/** `T_1`, `C` and the heats of one round. */
export function circuit(d: Draft): void {
  const { evaluation } = d.checked
  const { heat } = evaluation
  d.entry('M', 'motor.count')
  sink(d)
  const carried = ['thermalConductance', 'heat that the coolant carries for each kelvin'] as const
  d.found('C_f', carried, 'density times V_f times specific heat', heat.capacityRate)
  d.found('Q_m', ['watts', 'heat of one motor'], 'what leaves it into the coolant at T_s', heat.motorHeat)
  d.figure('Q_e', 'controllerLossWatts')
  d.step('q', ['watts', 'heat into the circuit'], 'M * (Q_m + Q_e)')
}

const temperature = (title: string, name: string, of: (d: Draft) => number): Subject => ({
  title,
  state,
  source,
  missing,
  write: (d) => {
    circuit(d)
    const words = 'where the radiator sheds q to T_air, the coolant carrying C_f for each kelvin'
    sink(d)
    d.found('T', ['temperature', name], `${words}; feeding at T_s`, of(d))
  },
})

export const coolantWorkings = {
  coolantFeedC: temperature(
    'The coolant that leaves the radiator for the motors.',
    'coolant that feeds the motors',
    (d) => d.checked.evaluation.heat.feed,
  ),
  coolantHotC: temperature(
    'The coolant that comes to the radiator: its hottest.',
    'coolant, hottest',
    (d) => d.checked.evaluation.heat.hot,
  ),
  coolantRiseK: {
    title: 'How much warmer the coolant leaves motors and controllers than it comes.',
    state,
    source:
      'heat balance of the flow; coolants near 25 °C from IAPWS-95 and the ASHRAE Handbook Fundamentals',
    missing,
    write: (d) => {
      circuit(d)
      d.step('T_d', ['temperatureDifference', 'warming of the coolant'], 'q / C_f')
    },
  },
  coldFlowLPerMin: {
    title: 'The flow with coolant as cold as the air; none where it is frozen.',
    state: 'at the start, coolant at the air’s temperature',
    source: 'Hagen and Poiseuille; viscosity from IAPWS and the ASHRAE Handbook Fundamentals',
    missing: needing('cooling'),
    write: (d) => {
      const { cooling, ground } = d.checked.machine
      d.entry('V_f', 'cooling.flowLPerMin')
      const share = cooling === null ? NaN : flowAt(cooling, ground.airTemperature) / cooling.flow
      d.entry('T_f', 'cooling.flowTestC')
      d.entry('T_air', 'ground.airTemperatureC')
      const told = ['fraction', 'viscosity where the flow was measured over that in the cold'] as const
      d.found('s_mu', told, 'viscosity at T_f over that at T_air, at most 1; 0 where it is frozen', share)
      d.step('V_c', ['litresPerMinute', 'flow in the cold'], 'V_f * s_mu * 60000')
    },
  },
  packHeatWatts: {
    title: 'What the pattern’s current heats in the cells, at the resistance that they have at the start.',
    state,
    source: 'Joule’s law; cell resistance with temperature: common practice, no source',
    write: (d) => {
      patternPackRms(d)
      const told = ['ohms', 'cells alone'] as const
      d.given('R_c', told, d.checked.machine.pack.cellResistance)
      d.step('P_p', ['watts', 'heat in the cells'], 'I_pr^2 * R_c')
    },
  },
  packEndC: {
    title: 'What the cells have when the charge is used.',
    state,
    source: 'heat balance of a lump; cells’ heat capacity from published values by cathode',
    assumptions: ['The cells’ resistance stays as cold as at the start: the safe side.'],
    missing: nothingDrawn,
    write: (d) => {
      const { pack } = d.checked.machine
      d.figure('P_p', 'packHeatWatts')
      d.figure('t_m', 'patternMinutes')
      d.entry('T_p', 'service.packTemperatureC')
      d.given('C_p', ['heatCapacity', 'of the cells'], pack.heatCapacity)
      const told = ['temperature', 'cells at the end'] as const
      if (pack.thermalResistance === null) {
        d.step('T_e', told, 'T_p + P_p * 60 * t_m / C_p', 'no heat leaves')
        return
      }
      d.entry('R_p', 'pack.thermalResistanceKPerW')
      d.entry('T_air', 'ground.airTemperatureC')
      const expression = 'T_air + P_p * R_p + (T_p - T_air - P_p * R_p) * exp(-60 * t_m / (R_p * C_p))'
      d.step('T_e', told, expression)
    },
  },
} satisfies Record<string, Subject>
