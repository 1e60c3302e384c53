import type { DriveLine } from './drive-line.ts'

/**
 * The duty at which a standing motor draws most: with a weak pack part throttle pulls harder than full.
 *
 * δ* = min(δ, √(R_s/(M R_b))), the maximum of δ V_0/(R_s + M δ² R_b).
 *
 * @param line its duty is the most that the driver allows
 * @returns duty, 0 to 1
 * *Source:* `docs/model.md` §3, by differentiation.
 */
export function strongestDuty(line: DriveLine): number {
  return Math.min(line.duty, Math.sqrt(line.seriesResistance / (line.count * line.packResistance)))
}

/**
 * Most current of a standing motor over all throttles up to the cap, before any current limit.
 *
 * I(δ*, 0) = δ* V_0/(R_s + M δ*² R_b).
 *
 * @returns A of one motor
 * *Source:* `docs/model.md` §3.
 */
export function stallAmpsOf(line: DriveLine): number {
  const duty = strongestDuty(line)
  return (duty * line.volts) / (line.seriesResistance + line.count * duty * duty * line.packResistance)
}
