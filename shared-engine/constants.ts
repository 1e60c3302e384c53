/** A physical constant with what it is, its unit and where it comes from. */
export interface Constant {
  readonly value: number
  readonly unit: string
  readonly name: string
  readonly source: string
}

/**
 * Number of the model: what the engine takes a build to give. Raised by one with every change after which the same build
 * has other figures or limits; a change of less than 0.1 % from better numerics is none.
 */
export const modelVersion = 2

/** What stands below every result: the one wording of it. */
export const caution = 'An estimate, not an approval: follow the makers’ limits and your local rules.'

/** A whole turn, rad. As a factor between turns per minute and rad/s it stands in `units/rpm.ts` alone. */
export const fullTurn = 2 * Math.PI

/** Every physical constant that the engine's formulas use, for workings to quote. */
export const constants = {
  gravity: {
    value: 9.80665,
    unit: 'm/s²',
    name: 'standard acceleration of gravity',
    source: '3rd General Conference on Weights and Measures (1901); ISO 80000-3',
  },
  copperTemperatureCoefficient: {
    value: 0.00393,
    unit: '1/K',
    name: 'temperature coefficient of the resistance of annealed copper at 20 °C',
    source: 'IEC 60028',
  },
  copperResistivity: {
    value: 1.7241e-8,
    unit: 'Ω·m',
    name: 'resistivity of annealed copper at 20 °C',
    source: 'IEC 60028',
  },
  airGasConstant: {
    value: 287.05287,
    unit: 'J/(kg·K)',
    name: 'specific gas constant of dry air',
    source: 'ISO 2533:1975, standard atmosphere',
  },
  standardPressure: {
    value: 101325,
    unit: 'Pa',
    name: 'pressure of the standard atmosphere at sea level',
    source: 'ISO 2533:1975, standard atmosphere',
  },
  pressureLapse: {
    value: 2.25577e-5,
    unit: '1/m',
    name: 'temperature lapse of the standard troposphere over its sea-level temperature, 0.0065/288.15',
    source: 'ISO 2533:1975, rounded as in handbook forms of its pressure equation',
  },
  pressureExponent: {
    value: 5.25588,
    unit: '1',
    name: 'exponent of the standard troposphere, g/(R · 0.0065)',
    source: 'ISO 2533:1975, rounded as in handbook forms of its pressure equation',
  },
  zeroCelsius: {
    value: 273.15,
    unit: 'K',
    name: '0 °C in kelvin',
    source: 'ISO 80000-5',
  },
  horsepower: {
    value: 745.699872,
    unit: 'W',
    name: 'horsepower of 550 foot-pounds-force per second',
    source: 'NIST SP 811 (2008), table B.8, to nine figures',
  },
  shearOfYield: {
    value: 0.577,
    unit: '1',
    name: 'shear yield as a share of tensile yield, 1/√3 rounded',
    source: 'distortion-energy theory (von Mises)',
  },
} as const satisfies Record<string, Constant>

/** Standard gravity, m/s². */
export const gravity = constants.gravity.value
/** Copper's resistance rise per kelvin about 20 °C, 1/K. */
export const copperTemperatureCoefficient = constants.copperTemperatureCoefficient.value
/** Copper's resistivity at 20 °C, Ω·m. */
export const copperResistivity = constants.copperResistivity.value
/** Gas constant of dry air, J/(kg·K). */
export const airGasConstant = constants.airGasConstant.value
/** Sea-level pressure, Pa. */
export const standardPressure = constants.standardPressure.value
/** Lapse of the pressure formula, 1/m. */
export const pressureLapse = constants.pressureLapse.value
/** Exponent of the pressure formula. */
export const pressureExponent = constants.pressureExponent.value
/** 0 °C in kelvin. */
export const zeroCelsius = constants.zeroCelsius.value
/** Watts in one horsepower. */
export const horsepower = constants.horsepower.value
/** Shear yield over tensile yield. */
export const shearOfYield = constants.shearOfYield.value
