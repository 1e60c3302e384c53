import { expect, test } from 'vitest'
import { finiteOrNull } from '../../../shared-engine/numeric/finite.ts'

test.each([0, -0, 1.5, -2e300, Number.MIN_VALUE])('%d stays as it is, with its sign', (value) => {
  expect(finiteOrNull(value)).toBe(value)
})

// IEEE 754 has three values that ECMA-404 (JSON) cannot write.
test.each([NaN, Infinity, -Infinity])('%d is shown as none', (value) => {
  expect(finiteOrNull(value)).toBeNull()
  expect(JSON.stringify(finiteOrNull(value))).toBe(JSON.stringify(value))
})
