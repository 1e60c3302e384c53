import { expect, it } from 'vitest'
import { check } from '../../../shared-engine/check.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import { workingOf } from '../../../shared-engine/explain/table.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { readBuildOf } from '../../fixtures/build/machine.ts'
import { plainBuild } from '../../fixtures/build/plain.ts'

// What measured machines teach (`docs/validation.md`) is said where its number stands, not in a document alone.

function checkedWith(motor: Partial<StoredBuild['motor']>) {
  const plain = plainBuild()
  return check(readBuildOf({ ...plain, motor: { ...plain.motor, ...motor } }))
}
const ripple = /So small a motor passes a large current ripple/

it('a small motor without its inductance is said to draw more at part throttle than shown', () => {
  const saysSo = (motor: Partial<StoredBuild['motor']>) =>
    checkedWith(motor).notes.some((note) => ripple.test(note))
  // 14 mm weighs some 10 g, 42 mm some 200 g.
  expect(saysSo({ massKg: 0.01 })).toBe(true)
  expect(saysSo({ massKg: 0.2 })).toBe(false)
  expect(saysSo({ massKg: 0.01, inductanceMicrohenry: 20 })).toBe(false)
  expect(saysSo({})).toBe(false)
})

it('the floor of the pack is told to be reached earlier than it says, late in a charge', () => {
  const said = workingOf(checkedWith({}), 'pack.floor-voltage')?.assumptions.join(' ') ?? ''
  expect(said).toContain('towards empty they resist more')
})

it('a label’s Kv is told to be high rather than low', () => {
  expect(fieldOf('motor.kvRpmPerVolt')?.help).toMatch(/mostly high, by 2 to 10\s%/)
})
