import fc from 'fast-check'

/**
 * The seed of every property test in one run. It is fixed, so that a change is judged by the change and not by the luck
 * of a draw; other seeds are for hunting (DEVELOPERS.md, Tests). The number is the day of the first commit, and as good
 * as any.
 */
const seedOfTests = 20_261_125

/** The seed that the environment asks for: a whole number, or `random` for another one in each run. */
function seedOf(asked: string | undefined): number {
  if (asked === undefined || asked === '') return seedOfTests
  if (asked === 'random') return Math.trunc(Math.random() * 0x7fffffff)
  const seed = Number(asked)
  if (!Number.isInteger(seed))
    throw new Error(`PITCHLINE_SEED is ${asked}; allowed: a whole number, or random`)
  return seed
}

// A property that fails names the seed and the path to its counterexample by itself.
fc.configureGlobal({ seed: seedOf(process.env['PITCHLINE_SEED']) })
