import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'
import { randomStream } from '../../../shared-engine/numeric/random.ts'
import { oddNumbers } from './odd-file.ts'
import { logFolder, logNumbers, readText } from './reading.ts'

/** How many files a fuzz makes: a few thousand in every run, more where the environment asks for it. */
const fuzzed = Number(process.env['PITCHLINE_FUZZED_LOGS'] ?? 2_000)

it(`${fuzzed} files spoilt at random are read or refused with a code, and never hold a number that is none`, () => {
  const originals = logNumbers.map((number) => readFileSync(path.join(logFolder, `${number}.csv`)))
  const troubles: string[] = []
  for (let seed = 0; seed < fuzzed; seed += 1) {
    const spoilt = spoiltBytes(originals[seed % originals.length] ?? new Uint8Array(), seed)
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
}, 120_000)

/** A short piece of a log with bytes changed, taken out, doubled, or put in at random. */
function spoiltBytes(original: Uint8Array, seed: number): Uint8Array {
  const random = randomStream(seed, 3)
  const below = (count: number) => Math.floor(random() * count)
  const from = random() < 0.5 ? 0 : below(original.length)
  const bytes = [...original.subarray(from, from + 300 + below(3_000))]
  const cuts = 1 + below(12)
  const likely = [0, 10, 13, 34, 44, 45, 46, 58, 59, 9, 48, 57, 101, 255]
  for (let cut = 0; cut < cuts; cut += 1) {
    const at = below(bytes.length + 1)
    const kind = below(5)
    const byte = random() < 0.6 ? (likely[below(likely.length)] ?? 0) : below(256)
    if (kind === 0) bytes[at] = byte
    else if (kind === 1) bytes.splice(at, 1 + below(60))
    else if (kind === 2) bytes.splice(at, 0, byte)
    else if (kind === 3) bytes.splice(at, 0, ...bytes.slice(at, at + below(200)))
    else bytes.splice(at, below(8), ...Array.from({ length: below(8) }, () => below(256)))
  }
  return Uint8Array.from(bytes.map((byte) => byte ?? 0))
}
