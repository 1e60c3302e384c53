import type { CoolingPart } from '../machine/parts.ts'

/**
 * Temperature of what motor and controller are cooled by.
 *
 * T_s = T_air, or with a circuit T_air + P/UA.
 *
 * @param airTemperature °C
 * @param heat P, W into the circuit
 * @returns °C
 * *Source:* heat balance of the radiator; P at the service winding temperature, not iterated: `docs/model.md` §7.
 */
export function sinkTemperature(cooling: CoolingPart | null, airTemperature: number, heat: number): number {
  return cooling === null ? airTemperature : airTemperature + heat / cooling.radiator
}

/**
 * How much warmer the coolant leaves than it comes.
 *
 * ΔT = P/(ρ V̇ c_p).
 *
 * @returns K; NaN without a circuit
 * *Source:* heat balance of the flow.
 */
export function coolantRise(cooling: CoolingPart | null, heat: number): number {
  if (cooling === null) return NaN
  return heat / (cooling.density * cooling.flow * cooling.specificHeat)
}

/**
 * Steady temperature of a controller.
 *
 * T = T_s + R_th I² R_esc.
 *
 * @returns °C
 * *Source:* heat balance; conduction loss alone: `docs/model.md` §7.
 */
export function steadyControllerTemperature(
  sink: number,
  thermalResistance: number,
  amps: number,
  resistance: number,
): number {
  return sink + thermalResistance * amps * amps * resistance
}
