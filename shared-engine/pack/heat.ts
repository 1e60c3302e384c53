/**
 * Temperature of the cells at the end of a charge.
 *
 * T_p + P t/C where no heat leaves; else T_air + P R + (T_p − T_air − P R) e^(−t/(R C)).
 *
 * @param start T_p, °C
 * @param air T_air, °C
 * @param heat P, W in the cells alone
 * @param heatCapacity C, J/K
 * @param thermalResistance R, K/W to the air; null: none leaves
 * @param seconds t
 * @returns °C
 * *Source:* heat balance of a lump; the cells' resistance stays as cold as at the start: the safe side.
 */
export function packEndTemperature(
  start: number,
  air: number,
  heat: number,
  heatCapacity: number,
  thermalResistance: number | null,
  seconds: number,
): number {
  if (thermalResistance === null) return start + (heat * seconds) / heatCapacity
  const settled = air + heat * thermalResistance
  return settled + (start - settled) * Math.exp(-seconds / (thermalResistance * heatCapacity))
}
