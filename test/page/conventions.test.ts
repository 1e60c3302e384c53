import { expect, it } from 'vitest'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import { fieldOf } from '../../shared-engine/entries/fields.ts'
import { powerPath } from '../../shared-engine/draw/power-path.ts'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import { partName, partsOf } from '../../src-renderer/fields/forms.ts'
import { sweepEntries } from '../../src-renderer/questions/side/sweep-data.ts'
import { simpleBuild } from '../fixtures/build/plain.ts'

const stored = simpleBuild()

it('where a number is meant in two ways, the usual one is marked first and converts nothing', () => {
  const paths = sweepEntries(stored).map(({ path }) => path)
  const asked = paths.flatMap((path) => {
    const conventions = fieldOf(path)?.asks?.conventions
    return conventions === undefined ? [] : [{ path, conventions }]
  })
  expect(asked.length).toBeGreaterThan(3)
  for (const { path, conventions } of asked) expect(conventions[0]?.factor, path).toBe(1)
})

it('a part has one name: in the drawing as over its fields', () => {
  const machine = machineOf(completeBuild(stored))
  const drawn = powerPath(machine, { width: 1280, system: 'metric' }).parts
  const known = partsOf(stored.stages?.length ?? 0)
  expect(drawn.length).toBeGreaterThan(4)
  for (const { part, label } of drawn) {
    expect(known, part).toContain(part)
    if (label !== '') expect(label, part).toContain(partName(part))
  }
})
