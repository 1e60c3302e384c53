/**
 * Thermal resistance from a wall to the inlet of a stream that cools it.
 *
 * R′ = 1/[C (1 − e^(−1/(R C)))]: the stream warms on its way, and from its inlet the wall looks better insulated.
 *
 * @param resistance R, K/W from the wall to the stream at any place
 * @param capacityRate C, W/K of the stream that passes this wall
 * @returns K/W, at least R
 * *Source:* effectiveness by number of transfer units, C_r = 0: Incropera, Fundamentals of Heat and Mass Transfer,
 * eq. 11.35a; R does not change with the flow, as laminar flow has a constant Nusselt number (eq. 8.55).
 * @example inletResistance(1, 1) // 1.58198
 */
export function inletResistance(resistance: number, capacityRate: number): number {
  return -1 / (capacityRate * Math.expm1(-1 / (resistance * capacityRate)))
}

/**
 * Effectiveness of a radiator with one stream so strong that it does not warm.
 *
 * ε = 1 − e^(−NTU).
 *
 * @param units NTU, UA/C
 * @returns 0 to 1
 * *Source:* Incropera, Fundamentals of Heat and Mass Transfer, eq. 11.35a.
 * @example effectiveness(1) // 0.63212
 */
export function effectiveness(units: number): number {
  return -Math.expm1(-units)
}

/**
 * What a radiator sheds for each kelvin that the coolant comes warmer than the air.
 *
 * UA′ = C_a (1 − e^(−UA/C_a)), or UA where the air does not warm;  q/(T_3 − T_air) = C (1 − e^(−UA′/C)).
 *
 * @param radiator UA, W/K
 * @param airCapacityRate C_a, W/K of the air through it; null: unlimited
 * @param capacityRate C, W/K of the coolant
 * @returns W/K
 * *Source:* cross flow, one stream mixed: Incropera, Fundamentals of Heat and Mass Transfer, eqs. 11.33 and 11.34.
 */
export function radiatorConductance(
  radiator: number,
  airCapacityRate: number | null,
  capacityRate: number,
): number {
  const felt =
    airCapacityRate === null ? radiator : airCapacityRate * effectiveness(radiator / airCapacityRate)
  return capacityRate * effectiveness(felt / capacityRate)
}

/**
 * Factor on the resistance of a jacket that was measured at another flow.
 *
 * max(1, V̇_test/V̇)^0.8; above the test's flow as tested.
 *
 * @param testFlow V̇_test; null: not measured so, laminar
 * @param flow V̇, in the same unit
 * *Source:* Dittus and Boelter, turbulent flow in a pipe: Incropera, eq. 8.60.
 */
export function jacketFactor(testFlow: number | null, flow: number): number {
  return testFlow === null || testFlow <= flow ? 1 : (testFlow / flow) ** 0.8
}
