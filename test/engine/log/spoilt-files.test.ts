import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { randomStream } from '../../../shared-engine/numeric/random.ts'
import { belowOf, seedsOf, spoiltBytes } from '../../fuzz/spoil.ts'
import { oddNumbers } from './odd-file.ts'
import { logFolder, logNumbers, readText } from './reading.ts'

/** How many files a fuzz makes: a few thousand in every run, more where the environment asks for it. */
const fuzzed = Number(process.env['PITCHLINE_FUZZED_LOGS'] ?? 2_000)

it(
  `${fuzzed} files spoilt at random are read or refused with a code, and never hold a number that is none`,
  () => {
    const originals = logNumbers.map((number) => readFileSync(path.join(logFolder, `${number}.csv`)))
    const troubles: string[] = []
    for (const seed of seedsOf(fuzzed)) {
      const spoilt = spoiltPiece(originals[seed % originals.length] ?? new Uint8Array(), seed)
      try {
        const found = readText(spoilt)
        if (typeof found === 'string') {
          if (found === 'refused without a code') troubles.push(`${seed}: ${found}`)
        } else troubles.push(...oddNumbers(found).map((one) => `${seed}${one}`))
      } catch (thrown) {
        troubles.push(`${seed}: ${String(thrown)}`)
      }
    }
    expect(troubles).toEqual([])
    // a file takes some 5 ms, and ten times that on a busy machine
  },
  Math.max(120_000, fuzzed * 60),
)

/** A short piece of a log, spoilt. */
function spoiltPiece(original: Uint8Array, seed: number): Uint8Array {
  const random = randomStream(seed, 3)
  const below = belowOf(random)
  const from = random() < 0.5 ? 0 : below(original.length)
  return spoiltBytes(original.subarray(from, from + 300 + below(3_000)), random)
}
