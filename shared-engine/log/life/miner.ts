/** A block of cycles of one size. */
interface CycleBlock {
  /** n. */
  readonly count: number
  /** N, cycles of this size alone to failure; Infinity below the endurance limit. */
  readonly life: number
}

/**
 * Part of its life that a load history uses up.
 *
 * D = Σ n_i/N_i; failure is expected at D = 1, in tests between about 0.5 and 2: the order of loads is left out.
 *
 * @returns 0 for nothing; NaN where a life is not above zero
 * *Source:* Palmgren (1924) and Miner, *Cumulative Damage in Fatigue*, ASME J. Appl. Mech. 12 (1945); the spread is
 * handbook knowledge, from memory.
 * @example minerSum([{ count: 2000, life: 5000 }, { count: 3000, life: 10000 }]) // 0.7
 */
export function minerSum(blocks: readonly CycleBlock[]): number {
  let damage = 0
  for (const { count, life } of blocks) {
    if (!(life > 0)) return NaN
    damage += count / life
  }
  return damage
}

/** How often a history can be repeated to failure: 1/D; Infinity where it uses up nothing. */
export function repetitionsToFailure(blocks: readonly CycleBlock[]): number {
  return 1 / minerSum(blocks)
}

/** A straight line in logarithms through two points, and what is borne for ever (0: nothing is). */
interface LifeLine {
  readonly first: readonly [amplitude: number, life: number]
  readonly second: readonly [amplitude: number, life: number]
  readonly endurance: number
}

/**
 * Cycles to failure at an amplitude on a straight line in logarithms.
 *
 * N = N_1 (S/S_1)^{1/b} from two points: b = log(S_1/S_2)/log(N_1/N_2); Infinity below the endurance limit.
 *
 * @param amplitude S, in the unit of the points
 * @param line two points of amplitude and life, and the endurance limit (0 without one)
 * *Source:* Basquin, *The exponential law of endurance tests*, Proc. ASTM 10 (1910).
 */
export function basquinLife(amplitude: number, line: LifeLine): number {
  return basquinLives(line)(amplitude)
}

/** The same line for many amplitudes. *Source:* as {@link basquinLife}. */
export function basquinLives({ first, second, endurance }: LifeLine): (amplitude: number) => number {
  const [highAmplitude, shortLife] = first
  const power = Math.log(shortLife / second[1]) / Math.log(highAmplitude / second[0])
  return (amplitude) => (amplitude <= endurance ? Infinity : shortLife * (amplitude / highAmplitude) ** power)
}
