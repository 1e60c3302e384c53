import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { goldenResult, logFolder, logNumbers } from './reading.ts'

// Twelve invented logs with what an independent reading of the same definitions says of them, made before this one and
// without sight of it. Numbers agree to 1e-6 relative plus 1e-6, since times since 1970 have steps of 2e-7 s; everything
// else exactly, lists in their order. Sentences and notes are ours.

const close = (own: number, golden: number) => Math.abs(own - golden) <= 1e-6 * Math.abs(golden) + 1e-6
const ours = ['sentence', 'notes', 'spunUntil']

/** Every place at which two values differ, in words. */
function differences(own: unknown, golden: unknown, at: string): readonly string[] {
  if (typeof own === 'number' && typeof golden === 'number') {
    return close(own, golden) ? [] : [`${at}: ${own}, golden ${golden}`]
  }
  if (typeof own !== 'object' || typeof golden !== 'object' || own === null || golden === null) {
    return own === golden ? [] : [`${at}: ${String(own)}, golden ${String(golden)}`]
  }
  const keys = new Set([...Object.keys(own), ...Object.keys(golden)])
  return [...keys]
    .filter((key) => !ours.includes(key))
    .flatMap((key) =>
      differences(
        (own as Record<string, unknown>)[key],
        (golden as Record<string, unknown>)[key],
        `${at}.${key}`,
      ),
    )
}

describe.each(logNumbers)('golden log %s', (number) => {
  const golden = JSON.parse(readFileSync(path.join(logFolder, `${number}.expected.json`), 'utf8')) as Record<
    string,
    unknown
  >
  const result = goldenResult(number)
  const own = { format: 'pitchline-log', version: 1, ...(JSON.parse(JSON.stringify(result)) as object) }

  it.each(Object.keys(golden).filter((key) => key !== 'notes'))('has the golden %s', (key) => {
    expect(differences((own as Record<string, unknown>)[key], golden[key], key)).toEqual([])
  })

  it('has nothing that the golden lacks, and a sentence for each episode', () => {
    expect(Object.keys(own).sort()).toEqual(Object.keys(golden).sort())
    for (const { sentence } of result.episodes) expect(sentence).toMatch(/^[A-Z].*\d\ss.*\.$/)
  })
})

it('the comparison sees a number, a word, a missing key and a longer list that differ', () => {
  expect(differences({ a: 1 }, { a: 1.00001 }, 'x')).toHaveLength(1)
  expect(differences({ a: 1 }, { a: 1.0000001 }, 'x')).toHaveLength(0)
  expect(differences({ a: 'b' }, { a: 'c' }, 'x')).toHaveLength(1)
  expect(differences({}, { a: null }, 'x')).toHaveLength(1)
  expect(differences([1, 2], [1], 'x')).toHaveLength(1)
})
