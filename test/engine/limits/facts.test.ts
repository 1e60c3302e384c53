import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { groupWords } from '../../../shared-engine/limits/group.ts'
import { limitNamed } from '../../../shared-engine/limits/table.ts'

// *Source:* the table beside this file, written with the model’s contract before this code: label, group, unit and sense of
// every mechanical limit. Which entries each needs is held by the golden builds of version 2 (`notJudged`).

interface OwedLimit {
  readonly id: string
  readonly label: string
  readonly group: 'holds' | 'lasts' | 'mishap'
  readonly unit: string
  readonly sense: 'max' | 'min'
}

const table = JSON.parse(readFileSync(new URL('limits.json', import.meta.url), 'utf8')) as {
  readonly groups: Readonly<Record<string, string>>
  readonly limits: readonly OwedLimit[]
}

/** Limits that other tables decide, or that come with the vehicle. */
const elsewhere = /^vehicle\.(spin-up-lift|tip-back|tip-side|clearance)$/

const owed = table.limits.filter(({ id }) => !elsewhere.test(id))

describe('every mechanical limit', () => {
  it.each(owed.map((limit) => [limit.id, limit] as const))('%s is what the table says', (id, limit) => {
    const found = limitNamed(id.replace('.N.', '.1.'))
    expect(found?.group).toBe(limit.group)
    expect(found?.unit).toBe(limit.unit)
    expect(found?.sense).toBe(limit.sense === 'max' ? 'maximum' : 'minimum')
    const placed = id.startsWith('stage.') ? `${limit.label}, stage 1` : limit.label
    if (!id.startsWith('converter.')) expect(found?.label).toBe(placed)
  })
})

it('groups have the table’s headings', () => {
  expect(groupWords).toEqual(table.groups)
})
