import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { putIn, workingText } from '../../../shared-engine/explain/text.ts'
import type { Working } from '../../../shared-engine/workings/working.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'

/** Invented demo data; the arithmetic is checked by hand below. */
const working: Working = {
  subject: 'freeRpm',
  title: 'Motor speed with the shaft free.',
  symbols: [
    { symbol: 'V_0', name: 'pack voltage', value: 25.2, kind: 'volts', from: 'figure:packOpenVolts' },
    { symbol: 'K_t', name: 'torque constant', value: 0.0125, kind: 'torqueConstant' },
    { symbol: 'T_w', name: 'winding temperature', value: -5, kind: 'temperature' },
  ],
  steps: [
    { symbol: 'omega', name: 'free speed', expression: 'V_0 / K_t', value: 2016, kind: 'angularSpeed' },
    {
      symbol: 'x',
      name: 'pitch',
      expression: null,
      words: 'the pitch that fits',
      value: 0.0254,
      kind: 'length',
    },
  ],
  state: 'free: full throttle',
  source: 'a textbook, eq. 1',
  assumptions: ['magnets as hot as the winding'],
}

test('a working reads as it was worked', () => {
  expect(workingText(working)).toBe(`Motor speed with the shaft free.
(freeRpm)

Put in
  V_0 = 25.2 V, pack voltage [figure:packOpenVolts]
  K_t = 0.0125 N·m/A, torque constant
  T_w = -5 °C, winding temperature

Worked out
  free speed
    omega = V_0 / K_t
      = 25.2 / 0.0125
      = 2016 rad/s
  pitch
    the pitch that fits
    x = 0.0254 m (25.4 mm)

State: free: full throttle
Source: a textbook, eq. 1
Assumption: magnets as hot as the winding
`)
})

test('a result that does not exist says why', () => {
  const none = {
    ...working,
    steps: [
      {
        ...working.steps[0],
        symbol: 'omega',
        name: 'free speed',
        expression: 'V_0 / K_t',
        value: null,
        kind: 'angularSpeed' as const,
      },
    ],
    missing: 'the motor does not turn',
  }
  expect(workingText(none)).toContain('      = –\n')
  expect(workingText(none)).toContain('\nNo result: the motor does not turn\n')
})

describe('numbers put in', () => {
  const known = new Map([
    ['V', '12'],
    ['V_0', '-3'],
    ['e', '1e-7'],
    ['T', '5'],
  ])
  test.each([
    ['V + V_0', '12 + (-3)'],
    ['V_0', '-3'],
    ['sqrt(T) * e', 'sqrt(5) * (1e-7)'],
    ['V_other * pi', 'V_other * pi'],
  ])('%s', (expression, text) => {
    expect(putIn(expression, known)).toBe(text)
  })
})

test('no line is wider than the page, whatever stands in a working', () => {
  const text = fc.string({ maxLength: 300 })
  fc.assert(
    fc.property(text, text, text, (title, name, expression) => {
      const lines = workingText({
        ...working,
        title,
        source: name,
        steps: [{ symbol: 'x', name, expression, value: 1, kind: 'length' }],
      }).split(/\n/)
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(80)
    }),
  )
})

test('wrapping keeps every word and cuts only words longer than a line', () => {
  expect(wrapped('one two three', 8, '  ')).toEqual(['one two', '  three'])
  expect(wrapped('abcdefghij', 4)).toEqual(['abcd', 'efgh', 'ij'])
  expect(wrapped('', 8)).toEqual([''])
})
