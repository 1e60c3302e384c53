import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readBuild } from '../../shared-engine/entries/read.ts'
import type { FitAnswer } from '../../shared-engine/fit/answer.ts'
import { fitOf } from '../../shared-engine/fit/fit.ts'
import { readChannels } from '../../shared-engine/fit/read.ts'

// Drives of invented machines with what another implementation of the same contract makes of them. Agreement: values to
// 2 % of their standard error, errors to 2 %, condition to 1 %, refusals by code, partners and drive that would tell.

const here = new URL('measure/', import.meta.url)
const fileOf = (name: string) => readFileSync(new URL(name, here))

describe.each([1, 2, 3])('fit %i', (number) => {
  it('tells and refuses what is owed', () => {
    const { entries, answer: owed } = JSON.parse(fileOf(`fit-${number}.expected.json`).toString()) as {
      entries: readonly string[]
      answer: FitAnswer
    }
    const build = readBuild(fileOf(`fit-${number}.build.json`))
    const log = readChannels(fileOf(`fit-${number}.channels.json`))
    if (!build.ok || !log.ok) throw new Error('the example cannot be read')
    const found = fitOf(build.value, log.value, entries)
    const judged = (answer: FitAnswer) =>
      answer.entries.map(({ path, unit, build: had, verdict, code, with: others, tell }) => [path, unit, had, verdict, code, others, tell])
    expect(judged(found)).toEqual(judged(owed))
    expect(found.fitted).toEqual(owed.fitted)
    expect(Math.abs(found.condition / owed.condition - 1)).toBeLessThan(0.01)
    expect(found.notes).toEqual(owed.notes)
    owed.entries.forEach((entry, at) => {
      const own = found.entries[at]
      if (entry.value === null || entry.standardError === null) return expect(own?.value).toBeNull()
      expect(Math.abs((own?.value ?? NaN) - entry.value)).toBeLessThan(0.02 * entry.standardError)
      for (const key of ['standardError', 'plusMinus', 'degreesOfFreedom'] as const)
        expect(Math.abs((own?.[key] ?? NaN) / (entry[key] ?? NaN) - 1), `${entry.path} ${key}`).toBeLessThan(0.02)
      // ±2 % of the part from tolerances, down to a thousandth of the whole error.
      expect(Math.abs((own?.fromTolerances ?? NaN) - (entry.fromTolerances ?? NaN))).toBeLessThan(
        0.02 * (entry.fromTolerances ?? 0) + 0.001 * entry.standardError,
      )
    })
    owed.correlation.forEach((row, one) =>
      row.forEach((value, other) => expect(Math.abs((found.correlation[one]?.[other] ?? NaN) - value)).toBeLessThan(0.01)),
    )
    for (const [at, block] of owed.blocks.entries()) {
      const own = found.blocks[at]
      expect([own?.name, own?.rows, own?.pieces, own?.downweighted]).toEqual([block.name, block.rows, block.pieces, block.downweighted])
      expect(Math.abs((own?.chiSquared ?? NaN) / block.chiSquared - 1)).toBeLessThan(0.001)
      expect(Math.abs((own?.scale ?? NaN) / block.scale - 1)).toBeLessThan(0.001)
      expect(Math.abs((own?.lagOne ?? NaN) - block.lagOne)).toBeLessThan(0.001)
      // Residuals of 0 but for rounding may count on either side: two runs more or less of a hundred.
      expect(Math.abs((own?.runsZ ?? NaN) - block.runsZ)).toBeLessThan(0.3)
    }
    for (const [channel, sigma] of Object.entries(owed.noise))
      expect(Math.abs((found.noise[channel as keyof FitAnswer['noise']] ?? NaN) / sigma - 1), channel).toBeLessThan(1e-9)
  })
})
