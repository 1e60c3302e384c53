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

/**
 * ms for one property, just within a test's own time. The search for a smaller counterexample goes on for as long as it
 * finds one, of a whole build a quarter of an hour and more; a property that has not failed by then fails for that, as
 * nothing was shown. A hunt through the night asks for more: `PITCHLINE_PATIENCE` in seconds, and `--testTimeout`.
 */
const patience = 1000 * Number(process.env['PITCHLINE_PATIENCE'] ?? 100)

// A property that fails names the seed and the path to its counterexample by itself.
fc.configureGlobal({
  seed: seedOf(process.env['PITCHLINE_SEED']),
  interruptAfterTimeLimit: patience,
  markInterruptAsFailure: true,
})
