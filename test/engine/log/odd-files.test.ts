import { describe, expect, it } from 'vitest'
import { repairCodes } from '../../../shared-engine/log/repairs.ts'
import { oddNumbers } from './odd-file.ts'
import { oddLayouts } from './odd-layouts.ts'
import { oddValues } from './odd-values.ts'
import { goldenResult, logNumbers, readText, resultOfText } from './reading.ts'

// Files as they come: cut, mixed, doubled, without heading, in odd units. Each is read or refused with a code; a result
// never holds a number that is none.

const odd = [...oddLayouts, ...oddValues]

describe('odd files', () => {
  it('are more than sixty', () => expect(odd.length).toBeGreaterThan(60))

  it('and the golden ones need every kind of repair between them', () => {
    const results = [
      ...odd.flatMap(([, text]) => (typeof readText(text) === 'string' ? [] : [resultOfText(text)])),
      ...logNumbers.map(goldenResult),
    ]
    const found = results.flatMap(({ repairs }) => repairs.map(({ code }) => code))
    expect(repairCodes.filter((code) => !found.includes(code))).toEqual([])
  })

  for (const [name, text, ...checks] of odd) {
    it(name, () => {
      const found = readText(text)
      if (checks.length === 0 && typeof found === 'string') {
        expect(found).toMatch(/^(empty|binary|one-column|no-rows|no-time|no-values)$/)
        return
      }
      const result = resultOfText(text)
      expect(oddNumbers(result)).toEqual([])
      for (const check of checks) check(result)
    })
  }
})
