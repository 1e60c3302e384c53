import { expect, it } from 'vitest'
import { differenceText } from '../../src-renderer/questions/side/differences.ts'

it.each([
  // 10 m/s more than 20 m/s: 36 km/h, half as much again.
  [{ by: 10, share: 0.5 }, 'speed', '+36.0\u202Fkm/h, +50\u202F%'],
  // −6 °C beside 30 °C: a share of a temperature says nothing, its zero is only a place on the scale.
  [{ by: -36, share: -1.2 }, 'temperature', '−36.0\u202F°C'],
  [{ by: 0.1, share: 0.25 }, 'fraction', '+10.00\u202F%'],
  [{ by: 0, share: 0 }, 'speed', 'same'],
  [null, 'speed', ''],
] as const)('%o of a %s reads %s', (difference, kind, words) => {
  expect(differenceText(difference, kind, 'metric')).toBe(words)
})
