import type { CoolingPart } from '../machine/parts.ts'
import { coolantViscosity } from '../reference/coolants.ts'

/**
 * Flow of a circuit whose coolant is at a temperature.
 *
 * V̇ min(1, μ(flowTest)/μ(T)); 0 below freezing.
 *
 * @param celsius °C of the coolant
 * @returns m³/s
 * *Source:* Hagen and Poiseuille: at the same pump pressure a laminar flow falls as the viscosity rises.
 */
export function flowAt(cooling: CoolingPart, celsius: number): number {
  if (celsius < cooling.freezes) return 0
  const thinner = coolantViscosity(cooling.coolant, cooling.flowTestTemperature)
  return cooling.flow * Math.min(1, thinner / coolantViscosity(cooling.coolant, celsius))
}
