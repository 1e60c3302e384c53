import { describe, expect, it } from 'vitest'
import type { JsonGroup } from '../../../shared-engine/entries/json-group.ts'
import { migrate, type VersionStep, type VersionSteps } from '../../../shared-engine/entries/migrate.ts'
import { versionSteps } from '../../../shared-engine/entries/migrations/steps.ts'
import { buildVersion } from '../../../shared-engine/entries/schema.ts'

/** Made up for this test: version 2 renamed an entry, version 3 split one. */
const steps: VersionSteps = new Map<number, VersionStep>([
  [1, ({ weight, ...rest }: JsonGroup) => ({ build: { ...rest, massKg: weight }, notes: ['renamed'] })],
  [2, ({ massKg, ...rest }: JsonGroup) => ({ build: { ...rest, vehicle: { massKg } }, notes: [] })],
])

describe('bringing a build up to date', () => {
  it('goes step by step, from wherever it is', () => {
    const first = { version: 1, weight: 12, name: 'demo' }
    expect(migrate(first, steps, 3)).toEqual({
      ok: true,
      value: { version: 3, name: 'demo', vehicle: { massKg: 12 } },
      notes: ['renamed'],
    })
    expect(migrate({ version: 2, massKg: 12 }, steps, 3)).toEqual({
      ok: true,
      value: { version: 3, vehicle: { massKg: 12 } },
    })
    expect(first).toEqual({ version: 1, weight: 12, name: 'demo' })
  })

  it('leaves the current version as it is', () => {
    const current = { version: 3, vehicle: {} }
    expect(migrate(current, steps, 3)).toEqual({ ok: true, value: current })
  })

  it('refuses a newer one, and what never was a version', () => {
    expect(migrate({ version: 4 }, steps, 3)).toMatchObject({
      ok: false,
      mistakes: [{ code: 'newer-version', allowed: 'up to 3' }],
    })
    for (const version of [0, -1, 2.5, 1e300 + 0.5 - 1e300, -Infinity]) {
      expect(migrate({ version }, steps, 3)).toMatchObject({
        ok: false,
        mistakes: [{ code: 'out-of-range' }],
      })
    }
    expect(migrate({ version: NaN }, steps, 3)).toMatchObject({
      ok: false,
      mistakes: [{ code: 'not-a-number' }],
    })
    expect(migrate({}, steps, 3)).toMatchObject({ ok: false, mistakes: [{ code: 'missing' }] })
  })

  it('has a step out of every version before the current one, and no others', () => {
    expect([...versionSteps.keys()]).toEqual(Array.from({ length: buildVersion - 1 }, (_, at) => at + 1))
  })
})
