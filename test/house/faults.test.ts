import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { withFault } from '../faults/fault.ts'
import { faults } from '../faults/list.ts'

// The run itself takes long and is started by hand; here only that its list has not grown stale.

describe('planted faults', () => {
  it.each(faults.map((fault) => [fault.file, fault.sound, fault] as const))(
    '%s: %s',
    (file, _sound, fault) => {
      const text = readFileSync(new URL(`../../shared-engine/${file}`, import.meta.url), 'utf8')
      expect(withFault(text, fault)).not.toBe(text)
    },
  )

  it('are refused where the sound text is not there once', () => {
    const fault = { file: 'x.ts', sound: 'a + b', planted: 'a - b' }
    expect(() => withFault('a * b', fault)).toThrow('0 times')
    expect(() => withFault('a + b, a + b', fault)).toThrow('2 times')
  })
})
