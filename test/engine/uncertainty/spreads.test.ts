import { describe, expect, test } from 'vitest'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { uncertaintyPlanOf } from '../../../shared-engine/uncertainty/samples.ts'
import { uncertaintyOf } from '../../../shared-engine/uncertainty/uncertainty.ts'
import { entriesWords, spreadByOrigin } from '../../../shared-engine/uncertainty/words.ts'
import { simpleBuild } from '../../fixtures/build/plain.ts'

// Entries that have no tolerance and say where they come from: `docs/model.md` §9.

function buildOf(more: Partial<StoredBuild>): Build {
  const read = readStoredBuildValue({ ...simpleBuild(), ...more })
  if (!read.ok) throw new Error(JSON.stringify(read.mistakes))
  return completeBuild(read.value)
}

describe('an entry without a tolerance', () => {
  test.each([
    ['measured', 3],
    ['stated', 10],
    ['guessed', 40],
  ] as const)('that was %s is drawn as a normal one of %d %%', (origin, percent) => {
    const path = 'motor.kvRpmPerVolt'
    const options = { samples: 300, seed: 4 }
    const byOrigin = uncertaintyOf(buildOf({ origins: { [path]: origin } }), options)
    const typed = buildOf({ tolerances: { [path]: { plusMinusPercent: percent, shape: 'normal' } } })
    const byTolerance = uncertaintyOf(typed, options)
    expect(byOrigin.limits).toEqual(byTolerance.limits)
    expect(byOrigin.entries).toEqual(byTolerance.entries.map((entry) => ({ ...entry, by: origin })))
  })

  test('that has one too keeps to it', () => {
    const path = 'motor.kvRpmPerVolt'
    const tolerances = { [path]: { plusMinusPercent: 2, shape: 'uniform' as const } }
    const { entries } = uncertaintyOf(buildOf({ tolerances, origins: { [path]: 'guessed' } }), {
      samples: 50,
    })
    expect(entries).toMatchObject([{ path, plusMinus: 10, shape: 'uniform', by: 'tolerance' }]) // 2 % of 500 rpm/V
  })
})

test('grip and turn friction rise and fall by one draw, each by its own spread', () => {
  const ground = {
    model: 'coefficient' as const,
    rollingCoefficient: 0.08,
    gripCoefficient: 0.6,
    turnFriction: 0.5,
  }
  const origins = {
    'ground.gripCoefficient': 'guessed',
    'ground.turnFriction': 'stated',
    'vehicle.massKg': 'measured',
  } as const
  const plan = uncertaintyPlanOf(buildOf({ ground, origins }), { samples: 200, seed: 2 })
  const { values } = plan.run({ from: 0, to: 200 })
  const [grip, turn, mass] = [values.slice(0, 200), values.slice(200, 400), values.slice(400)]
  const massNominal = plan.entries[2]?.nominal ?? NaN
  expect(plan.entries.map(({ path }) => path)).toEqual(Object.keys(origins))
  grip.forEach((value, at) => {
    // a quantile of ±40 % of 0.6 is that of ±10 % of 0.5
    expect(((turn[at] ?? NaN) / 0.5 - 1) / 0.1).toBeCloseTo((value / 0.6 - 1) / 0.4, 12)
  })
  const apart = grip.filter(
    (value, at) => Math.abs((value / 0.6 - 1) / 0.4 - ((mass[at] ?? NaN) / massNominal - 1) / 0.03) > 0.1,
  )
  expect(apart.length).toBeGreaterThan(150) // the mass is drawn for itself
})

test('is said whose spread is whose', () => {
  const entries = [
    { path: 'a', by: 'tolerance' },
    { path: 'b', by: 'guessed' },
    { path: 'c', by: 'measured' },
    { path: 'd', by: 'guessed' },
  ] as const
  expect(spreadByOrigin(entries)).toBe('measured: c; guessed: b, d')
  expect(spreadByOrigin(entries.slice(0, 1))).toBe('')
  expect(entriesWords(entries)).toBe('4 entries, 1 by tolerance and 3 by where they come from')
  expect(entriesWords(entries.slice(0, 1))).toBe('one entry, by its tolerance')
  expect(entriesWords(entries.slice(1))).toBe('3 entries, by where they come from')
})
