/**
 * Names of the quantity kinds; the table of units beside it says the rest.
 *
 * A kind's engine unit is its SI unit, with these exceptions, whose names say so: `temperature` is in °C; `rpm` and
 * `speedConstant` stay in rpm and rpm/V, since figures and limits are told in them (rad/s is `angularSpeed`); `percent`,
 * `degrees`, `minutes`, `hours`, `kilometres`, `litresPerMinute`, `milliampereHours` and `wattHoursPerKilometre` are for figures
 * whose name already leaves SI (`toothSharePercent`); `bearingSpeed` is in mm/min, the unit of that limit.
 */
export type QuantityKind =
  | 'none'
  | 'text'
  | 'count'
  | 'fraction'
  | 'length'
  | 'gearModule'
  | 'distance'
  | 'area'
  | 'loopArea'
  | 'wireSection'
  | 'volume'
  | 'mass'
  | 'linearDensity'
  | 'speed'
  | 'roadSpeed'
  | 'acceleration'
  | 'time'
  | 'duration'
  | 'switchingTime'
  | 'life'
  | 'force'
  | 'torque'
  | 'stress'
  | 'pressure'
  | 'volts'
  | 'amps'
  | 'ohms'
  | 'resistivity'
  | 'watts'
  | 'charge'
  | 'energy'
  | 'rpm'
  | 'angularSpeed'
  | 'speedConstant'
  | 'torqueConstant'
  | 'angle'
  | 'inertia'
  | 'temperature'
  | 'temperatureDifference'
  | 'heatCapacity'
  | 'thermalResistance'
  | 'thermalConductance'
  | 'flow'
  | 'density'
  | 'specificHeat'
  | 'frequency'
  | 'capacitance'
  | 'inductance'
  | 'dragPerSpeed'
  | 'stiffness'
  | 'cRate'
  | 'temperatureCoefficient'
  | 'soilCohesiveModulus'
  | 'soilFrictionalModulus'
  | 'pixel'
  | 'percent'
  | 'degrees'
  | 'minutes'
  | 'hours'
  | 'bearingSpeed'
  | 'kilometres'
  | 'litresPerMinute'
  | 'milliampereHours'
  | 'wattHoursPerKilometre'

/** Which family of units a person reads; the stored build does not change with it. */
export type UnitSystem = 'metric' | 'imperial'

/** One unit of a kind: engine value = (typed value · times + plus) / per. */
export interface Unit {
  /** As it stands on the screen. */
  readonly symbol: string
  readonly times: number
  /** Kept apart from `times` so that 25.4 mm and 3/8 in become metres with one rounding. */
  readonly per: number
  /** Only for scales with another zero. */
  readonly plus: number
  /** Other spellings that are read. */
  readonly also: readonly string[]
  /** Capitals matter: another case would be another size (MPa, mPa). */
  readonly exactCase: boolean
}

/** A unit of a kind's display, used from a magnitude on (in engine units; 0 for the smallest). */
export interface DisplayStep {
  readonly symbol: string
  readonly from: number
}

/** All that is known of a kind's units. */
export interface KindUnits {
  /** Symbol of the engine's unit; empty for plain numbers. */
  readonly engine: string
  /** Symbol of the unit of the stored build's keys. */
  readonly bench: string
  readonly units: readonly Unit[]
  readonly metric: readonly DisplayStep[]
  readonly imperial: readonly DisplayStep[]
}
