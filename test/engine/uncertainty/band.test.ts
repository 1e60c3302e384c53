import { expect, test } from 'vitest'
import { marginBandOf } from '../../../shared-engine/uncertainty/band.ts'

test('chances are shares of the draws that made a build: neither of all, nor of those alone that have the limit', () => {
  // Of six draws one made no build and two, without a top speed, have no such limit; one of the other three is over.
  const margins = Float64Array.of(NaN, -0.1, NaN, 0.3, 0.2, NaN)
  const band = marginBandOf(margins, 5)
  expect(band?.probabilityOver).toBe(1 / 5)
  expect(band?.present).toBe(3 / 5)
  expect(band?.margin50).toBe(0.2)
})
