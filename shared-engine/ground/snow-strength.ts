import { power } from '../numeric/power.ts'
import { kilo } from '../units/factors.ts'

/**
 * Cohesion that a light machine can count on.
 *
 * c′ = min(c, p/2).
 *
 * @param cohesion c, Pa
 * @param pressure p, Pa
 * @returns Pa
 * *Source:* assumption: cohesion bears half of the weight at most.
 */
export function usableCohesion(cohesion: number, pressure: number): number {
  return Math.min(cohesion, pressure / 2)
}

/**
 * Most shear strength of snow under a pressure.
 *
 * τ = 0.851 σ^0.823, kPa.
 *
 * @param pressure σ, Pa
 * @returns Pa
 * *Source:* CRREL Report 90-9, from memory; an example in CRREL Report 95-1 agrees.
 * @example snowStrength(1000) // 851
 */
export function snowStrength(pressure: number): number {
  return 851 * power(pressure / kilo, 0.823)
}

/**
 * Factor that brings a soil's strength down to what snow bears.
 *
 * min(1, 0.851 σ^0.823 A/(A c′ + W tan φ)).
 *
 * @param strength A c′ + W tan φ, N
 * @param cap what snow bears, N
 * @returns 0 to 1
 * *Source:* {@link snowStrength}; both parts of the strength are brought down alike: assumption.
 */
export function snowFactor(strength: number, cap: number): number {
  return strength > cap ? cap / strength : 1
}
