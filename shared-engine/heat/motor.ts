import { copperTemperatureCoefficient } from '../constants.ts'
import { referenceTemperature } from '../motor/constants.ts'

/**
 * Steady temperature of a winding whose resistance, and so its loss, grows with heat.
 *
 * T = [T_s + R_th (P_fe + I² R_20 (1 − 20 α))]/(1 − R_th I² R_20 α).
 *
 * @param sink T_s, °C
 * @param thermalResistance R_th, K/W
 * @param ironLoss P_fe, W
 * @param amps I, A
 * @param resistance R_20, Ω
 * @returns °C; NaN in thermal runaway (denominator ≤ 0)
 * *Source:* heat balance (T − T_s)/R_th = P_fe + I² R(T); IEC 60028 for R(T).
 */
export function steadyMotorTemperature(
  sink: number,
  thermalResistance: number,
  ironLoss: number,
  amps: number,
  resistance: number,
): number {
  const copper = amps * amps * resistance
  const left = 1 - thermalResistance * copper * copperTemperatureCoefficient
  if (left <= 0) return NaN
  const cold = ironLoss + copper * (1 - referenceTemperature * copperTemperatureCoefficient)
  return (sink + thermalResistance * cold) / left
}

/**
 * Seconds from the sink's temperature to a limit.
 *
 * C dT/dt = P_fe + I² R_20 [1 + α (T − 20)] − (T − T_s)/R_th, so with a = I² R_20 α − 1/R_th and
 * p = P_fe + I² R_20 [1 + α (T_s − 20)]:  t = (C/a) ln(1 + a (T_max − T_s)/p).
 *
 * @param heatCapacity C, J/K
 * @param limit T_max, °C
 * @returns s; 0 where T_s is there already, NaN where it is never reached
 * *Source:* the linear equation above, solved; finite in runaway too.
 */
export function secondsToMotorLimit(
  sink: number,
  thermalResistance: number,
  heatCapacity: number,
  ironLoss: number,
  amps: number,
  resistance: number,
  limit: number,
): number {
  const rise = limit - sink
  if (rise <= 0) return 0
  const copper = amps * amps * resistance
  const growth = copper * copperTemperatureCoefficient - 1 / thermalResistance
  const start = ironLoss + copper * (1 + copperTemperatureCoefficient * (sink - referenceTemperature))
  if (start <= 0) return NaN
  const share = (growth * rise) / start
  if (share <= -1) return NaN
  return share === 0 ? (heatCapacity * rise) / start : (heatCapacity * Math.log1p(share)) / growth
}
