import { copperTemperatureCoefficient } from '../constants.ts'
import { referenceTemperature } from '../motor/constants.ts'

/**
 * Steady excess of a winding over what cools it.
 *
 * x = R_s P_fe + (R_wc + R_s) I² R_20 [1 + α (T_s + x − 20)], solved for x.
 *
 * @param resistance R_wc + R_s, K/W from the winding to the sink
 * @param ironResistance R_s, K/W from where the iron loss enters to the sink
 * @param coldCopper I² R_20, W
 * @param iron P_fe, W
 * @param sink T_s, °C
 * @returns K; NaN in thermal runaway
 * *Source:* heat balance; IEC 60028 for the copper.
 */
export function steadyExcess(
  resistance: number,
  ironResistance: number,
  coldCopper: number,
  iron: number,
  sink: number,
): number {
  const left = 1 - resistance * coldCopper * copperTemperatureCoefficient
  if (!(left > 0)) return NaN
  const atSink = coldCopper * (1 + copperTemperatureCoefficient * (sink - referenceTemperature))
  return (ironResistance * iron + resistance * atSink) / left
}
