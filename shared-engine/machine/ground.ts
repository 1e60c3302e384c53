import {
  airGasConstant,
  pressureExponent,
  pressureLapse,
  standardPressure,
  zeroCelsius,
} from '../constants.ts'
import type { GroundPart } from './parts.ts'
import { buildRows } from '../entries/parts/build.ts'
import type { Build } from '../entries/schema.ts'
import { siOf } from './si.ts'

const { coefficient, soil } = buildRows.ground.variants
const groundIn = siOf(coefficient)
const soilIn = siOf(soil.soil.entries)

/** Ground and air in SI; the angles' functions are taken once, here. */
export function groundPartOf(build: Build): GroundPart {
  const ground = build.ground
  const si = groundIn(ground)
  const grade = si('gradePercent')
  const [altitude, airTemperature] = [si('altitudeM'), si('airTemperatureC')]
  const cosSlope = 1 / Math.sqrt(1 + grade * grade)
  const common = {
    skiFriction: si('skiFriction'),
    grade,
    sinSlope: grade * cosSlope,
    cosSlope,
    sideSlope: si('sideSlopePercent'),
    airTemperature,
    altitude,
    airDensity: airDensityOf(altitude, airTemperature),
    turnFriction: si('turnFriction'),
  }
  if (ground.model === 'coefficient') {
    return {
      model: 'coefficient',
      ...common,
      rollingCoefficient: si('rollingCoefficient'),
      gripCoefficient: si('gripCoefficient'),
      slip: si('slipPercent'),
    }
  }
  const soilSi = soilIn(ground.soil)
  return {
    model: 'soil',
    ...common,
    exponent: soilSi('n'),
    cohesiveModulus: soilSi('kc'),
    frictionalModulus: soilSi('kphi'),
    cohesion: soilSi('cohesionKpa'),
    tanFriction: Math.tan(soilSi('frictionDegrees')),
    shearModulus: soilSi('shearModulusMm'),
    snow: ground.soil.snow,
  }
}

/**
 * Density of dry air at an altitude and its temperature there.
 *
 * ρ = p/(R T),  p = 101325 (1 − 2.25577e-5 h)^5.25588.
 *
 * @param altitude h, m, −400 to 9000
 * @param temperature °C
 * @returns kg/m³
 * *Source:* ISO 2533:1975, pressure in the troposphere, handbook form.
 * @example airDensityOf(0, 15) // 1.2250
 */
export function airDensityOf(altitude: number, temperature: number): number {
  const pressure = standardPressure * (1 - pressureLapse * altitude) ** pressureExponent
  return pressure / (airGasConstant * (temperature + zeroCelsius))
}
