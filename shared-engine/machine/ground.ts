import {
  airGasConstant,
  pressureExponent,
  pressureLapse,
  standardPressure,
  zeroCelsius,
} from '../constants.ts'
import type { GroundPart } from './parts.ts'
import type { Build } from '../entries/schema.ts'
import { degree, kilo, milli, percent } from './si.ts'

/** Ground and air in SI; the angles' functions are taken once, here. */
export function groundPartOf(build: Build): GroundPart {
  const ground = build.ground
  const grade = ground.gradePercent * percent
  const cosSlope = 1 / Math.sqrt(1 + grade * grade)
  const common = {
    skiFriction: ground.skiFriction,
    grade,
    sinSlope: grade * cosSlope,
    cosSlope,
    airTemperature: ground.airTemperatureC,
    altitude: ground.altitudeM,
    airDensity: airDensityOf(ground.altitudeM, ground.airTemperatureC),
    turnFriction: ground.turnFriction ?? null,
  }
  if (ground.model === 'coefficient') {
    return {
      model: 'coefficient',
      ...common,
      rollingCoefficient: ground.rollingCoefficient,
      gripCoefficient: ground.gripCoefficient,
      slip: ground.slipPercent * percent,
    }
  }
  const { soil } = ground
  return {
    model: 'soil',
    ...common,
    exponent: soil.n,
    cohesiveModulus: soil.kc * kilo,
    frictionalModulus: soil.kphi * kilo,
    cohesion: soil.cohesionKpa * kilo,
    tanFriction: Math.tan(soil.frictionDegrees * degree),
    shearModulus: soil.shearModulusMm * milli,
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
