import type { MotorPart } from '../machine/parts.ts'
import { copperTemperatureCoefficient } from '../constants.ts'

/** Temperature that motor constants are given at, °C. *Source:* IEC 60028. */
export const referenceTemperature = 20

/**
 * Torque constant at a magnet temperature: hot magnets weaken, so a hot motor spins faster and pulls less.
 *
 * K_t(T) = 60/(2π Kv) · [1 + α_m (T − 20)].
 *
 * @param motor its constant at 20 °C and its magnets' coefficient α_m, 1/K
 * @param temperature T, °C of the magnets, taken as that of the winding [assumption]
 * @returns N·m/A, equal to V·s/rad
 * *Source:* Drela, First-Order DC Electric Motor Model, MIT, public notes; α_m as in `reference/magnets.json`.
 * @example torqueConstantAt({ torqueConstant: 0.01, fluxCoefficient: -0.0011 }, 120) // 0.0089
 */
export function torqueConstantAt(
  motor: Pick<MotorPart, 'torqueConstant' | 'fluxCoefficient'>,
  temperature: number,
): number {
  return motor.torqueConstant * (1 + motor.fluxCoefficient * (temperature - referenceTemperature))
}

/**
 * Resistance of a copper winding at a temperature.
 *
 * R_m(T) = R_20 [1 + α_cu (T − 20)].
 *
 * @param resistance R_20, Ω
 * @param temperature T, °C
 * @returns Ω
 * *Source:* IEC 60028, annealed copper, α_cu = 0.00393 /K.
 * @example windingResistanceAt(0.1, 120) // 0.1393
 */
export function windingResistanceAt(resistance: number, temperature: number): number {
  return resistance * (1 + copperTemperatureCoefficient * (temperature - referenceTemperature))
}
