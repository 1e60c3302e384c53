import type { Bench } from '../bench.ts'
import { output, type Output } from '../kind.ts'

/** Mass on the scale, kg. */
export const massOf = (bench: Bench): number => bench.entry('vehicle.massKg') + bench.entry('vehicle.loadKg')

/** Share of the weight on the tracks, 0 to 1. */
export const onTrackOf = (bench: Bench): number => bench.machine.vehicle.onTrackShare

/** What skis take off is taken out of the whole resistance. */
const restFormula = '- mu_s * (1 - o)) / o'

/**
 * Rolling coefficient of the tracks: c_rr = [f − μ_ski (1 − o)]/o, f the whole resistance over the weight.
 *
 * @param whole f
 * @param formula of f, as algebra
 * *Source:* R_g = c_rr W_t + μ_ski W_s on the level.
 */
export function rollingOf(
  bench: Bench,
  whole: number,
  formula: string,
  put: Readonly<Record<string, number>>,
): Output {
  const share = onTrackOf(bench)
  const skis = bench.entry('ground.skiFriction')
  return output((whole - skis * (1 - share)) / share, `(${formula} ${restFormula}`, {
    ...put,
    mu_s: skis,
    o: share,
  })
}
