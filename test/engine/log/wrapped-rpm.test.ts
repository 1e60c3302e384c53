import { expect, it } from 'vitest'
import { countOf, resultOfText } from './reading.ts'

/** 40 s of rpm that rises by 80 a row past what sixteen bits with a sign hold, 32,767, and stays at 35,800. */
const rising = Array.from({ length: 200 }, (_, row) => 31_000 + 80 * Math.min(row, 60))
/** *Source:* two's complement of sixteen bits. */
const inSixteenBits = (rpm: number) => (rpm > 32_767 ? rpm - 65_536 : rpm)

const logOfRpm = (all: readonly number[]) =>
  resultOfText(
    ['Time [s],RPM,Volts', ...all.map((rpm, row) => `${(row / 5).toFixed(1)},${rpm},48`)].join('\n'),
  )

it('an rpm that runs over its sixteen bits goes on upwards, and is counted where it does', () => {
  const [whole, wrapped] = [logOfRpm(rising), logOfRpm(rising.map(inSixteenBits))]
  expect(countOf(wrapped, 'signed-wrap', 'rpm')).toBe(rising.filter((rpm) => rpm > 32_767).length)
  expect(countOf(whole, 'signed-wrap', 'rpm')).toBe(0)
  expect(wrapped.facts.peaks['rpm']?.value).toBe(whole.facts.peaks['rpm']?.value)
  expect(wrapped.facts.peaks['rpm']?.value).toBeGreaterThan(0)
})
