/**
 * Current of one motor from what its pack is seen to give, without knowing the duty.
 *
 * E = ω K_t;  I = 2P/(E + √(E² + 4 R_s P)), the root of P = E I + R_s I².
 *
 * @param power P, W into one motor and its controller: volts of the pack times drive amps, over the motors
 * @param backVolts E, V, ≥ 0
 * @param seriesResistance R_s, Ω of motor and controller
 * @returns I, A; negative where the motor feeds back; NaN where it cannot feed back so much at that speed
 * *Source:* power balance of the averaged circuit, P = δ V_b I; this form of the root loses no digits.
 * @example motorAmpsFromPack(110, 10, 0.1) // 10
 */
export function motorAmpsFromPack(power: number, backVolts: number, seriesResistance: number): number {
  const root = Math.sqrt(backVolts * backVolts + 4 * seriesResistance * power)
  return power === 0 ? 0 : (2 * power) / (backVolts + root)
}
