import { expect, it } from 'vitest'
import { countOf, resultOfText } from './reading.ts'

/** 40 s of rpm that rises by 80 a row past what sixteen bits with a sign hold: 32,767. */
const rising = (row: number) => 31_000 + 80 * row
/** *Source:* two's complement of sixteen bits; a recorder that counts electrical rpm so. */
const inSixteenBits = (rpm: number) => (rpm > 32_767 ? rpm - 65_536 : rpm)

it('an rpm that runs over its sixteen bits goes on upwards, and is counted where it does', () => {
  const line = (row: number, rpm: number) => `${(row / 5).toFixed(1)},${rpm},48`
  const log = (asRecorded: (rpm: number) => number) =>
    resultOfText(
      [
        'Time [s],RPM,Volts',
        ...Array.from({ length: 200 }, (_, row) => line(row, asRecorded(rising(Math.min(row, 60))))),
      ].join('\n'),
    )
  const [whole, wrapped] = [log((rpm) => rpm), log(inSixteenBits)]
  const over = Array.from({ length: 200 }, (_, row) => rising(Math.min(row, 60))).filter(
    (rpm) => rpm > 32_767,
  )
  expect(countOf(wrapped, 'signed-wrap', 'rpm')).toBe(over.length)
  expect(countOf(whole, 'signed-wrap', 'rpm')).toBe(0)
  expect(wrapped.facts.peaks['rpm']?.value).toBe(whole.facts.peaks['rpm']?.value)
  expect(wrapped.facts.peaks['rpm']?.value).toBeGreaterThan(0)
})
