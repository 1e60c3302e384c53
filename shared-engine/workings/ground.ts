import { constants } from '../constants.ts'
import { gripThrust, sinkage, soilBooks, standingResistance } from './footing.ts'
import { running, type Subject } from './subject.ts'

const gripThrustN: Subject = {
  title: 'The most thrust that the ground passes on before the tracks spin.',
  state: running,
  source: 'statics of the machine on its slope',
  write: (d) => gripThrust(d, 'slope'),
}

const groundResistanceN: Subject = {
  title: 'What holds the standing machine back: the ground, the slope and what it tows.',
  state: running,
  source: 'statics of the machine on its slope',
  write: (d) => standingResistance(d, 'slope', 'R_0'),
}

const sinkageM: Subject = {
  title: 'How deep the tracks sink into the ground.',
  state: running,
  source: soilBooks,
  missing: ({ machine }) =>
    machine.ground.model === 'soil'
      ? null
      : {
          why: 'it needs the ground described by its soil or snow (ground.model): two coefficients know no sinkage.',
        },
  write: (d) => sinkage(d, 'slope'),
}

const airDensity: Subject = {
  title: 'The density of the air at this altitude and temperature.',
  state: running,
  source: constants.pressureLapse.source,
  assumptions: ['The air is dry, and its pressure that of the standard atmosphere at this altitude.'],
  write: (d) => {
    const { pressureLapse, pressureExponent } = constants
    d.entry('h', 'ground.altitudeM')
    d.entry('T_air', 'ground.airTemperatureC')
    d.constant('p_0', 'standardPressure')
    const expression = `p_0 * (1 - ${pressureLapse.value} * h)^${pressureExponent.value}`
    d.step('p_a', ['pressure', 'pressure of the air'], expression)
    d.constant('R_a', 'airGasConstant')
    d.constant('T_z', 'zeroCelsius')
    d.step('rho', ['density', 'density of the air'], 'p_a / (R_a * (T_air + T_z))')
  },
}

export const groundWorkings = { gripThrustN, groundResistanceN, sinkageM, airDensity } satisfies Record<
  string,
  Subject
>
