import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  assumedPaths,
  isAssumed,
  withAssumptions,
  withoutAssumption,
} from '../../../shared-engine/assume/assumed.ts'
import {
  assumedDiameter,
  assumedNoLoadAmps,
  assumedResistance,
  isInnerRotor,
  massOfSize,
} from '../../../shared-engine/assume/motor.ts'
import { newBuild, startKinds, withStartKind } from '../../../shared-engine/assume/start.ts'
import { assumptionOf, assumptions } from '../../../shared-engine/assume/table.ts'
import { check } from '../../../shared-engine/check.ts'
import { entryAt, withEntry } from '../../../shared-engine/entries/edit.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import { completeBuild, readStoredBuildValue } from '../../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../../shared-engine/entries/schema.ts'
import { restsOf } from '../../../shared-engine/explain/rests.ts'
import { waitedFor } from '../../../shared-engine/explain/waiting.ts'
import { fullBuild } from '../../fixtures/build/plain.ts'

const entered = (stored: StoredBuild, path: string, value: unknown) =>
  withAssumptions(withEntry(withoutAssumption(stored, path), path, value))

/** A hobbyist's machine by its numbers (demo): the reductions as gearboxes of their ratio. */
function hobbyist(): StoredBuild {
  const stages = [
    {
      kind: 'gear',
      driverTeeth: 12,
      drivenTeeth: 58,
      moduleMm: 1,
      faceWidthMm: 10,
      driverMaterial: 'steel-c45',
      drivenMaterial: 'steel-c45',
    },
    { kind: 'fixed', ratio: 36 / 16 },
  ]
  const numbers = {
    'motor.kvRpmPerVolt': 2650,
    'pack.series': 5,
    'vehicle.massKg': 6.2,
    'track.pitchMm': 16,
    'track.sprocketTeeth': 10,
  }
  return Object.entries(numbers).reduce<StoredBuild>(
    (build, [path, value]) => entered(build, path, value),
    withEntry(withoutAssumption(newBuild(), 'stages.0.ratio'), 'stages', stages),
  )
}

describe('a new build', () => {
  it.each(['', ...startKinds.map(({ id }) => id)])('is whole, moves, and is assumed throughout: %s', (id) => {
    const stored = withStartKind(newBuild(), id)
    const read = readStoredBuildValue(stored)
    expect(read).toMatchObject({ ok: true })
    const checked = check(completeBuild(stored))
    expect(checked.figures.topSpeedMps).toBeGreaterThan(0.5)
    const numbers = Object.keys(stored.motor).filter((key) => key !== 'count')
    expect(numbers.filter((key) => !isAssumed(stored, `motor.${key}`))).toEqual([])
    expect(isAssumed(stored, 'ground.gripCoefficient')).toBe(true)
  })

  it('every estimate is of an entry that exists, within its range', () => {
    for (const { path, from, within } of assumptions) {
      expect(fieldOf(path), path).toBeDefined()
      expect(from).not.toBe('')
      expect(within).toBeGreaterThanOrEqual(1)
    }
  })
})

describe('an estimate', () => {
  it('follows what it is made of and leaves what was entered alone', () => {
    const before = newBuild()
    const after = entered(before, 'motor.kvRpmPerVolt', 1050)
    expect(isAssumed(after, 'motor.kvRpmPerVolt')).toBe(false)
    expect(after.motor.resistanceMilliohm).toBeLessThan(before.motor.resistanceMilliohm)
    const typed = entered(after, 'motor.resistanceMilliohm', 7)
    expect(entered(typed, 'motor.kvRpmPerVolt', 900).motor.resistanceMilliohm).toBe(7)
  })

  it('does nothing to a build that has none', () => {
    const full = fullBuild()
    expect(withAssumptions(full)).toBe(full)
  })

  it('is the same made twice', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 200, noNaN: true }),
        fc.integer({ min: 20, max: 9000 }),
        (mass, kv) => {
          const once = entered(entered(newBuild(), 'vehicle.massKg', mass), 'motor.kvRpmPerVolt', kv)
          expect(withAssumptions(once)).toEqual(once)
          expect(readStoredBuildValue(once)).toMatchObject({ ok: true })
        },
      ),
    )
  })

  it('of a winding falls with the square of Kv, and with the mass to the power 5/3 (scaling of similar machines)', () => {
    const resistance = assumedResistance(1000, 0.3, false)
    expect(assumedResistance(2000, 0.3, false) / resistance).toBeCloseTo(1 / 4, 12)
    expect(assumedResistance(1000, 2.4, false) / resistance).toBeCloseTo(8 ** (-5 / 3), 12)
  })

  // Sheets of hobby motors without their names, from memory: a check of the size of the numbers, within their stated factor.
  it.each([
    ['inner rotor of 36 by 50 mm', 3900, 0.19, 12, 3],
    ['inner rotor of 40 by 74 mm', 2650, 0.36, 5.5, 4],
    ['outer rotor of 63 by 74 mm', 190, 0.85, 40, 1],
  ])('%s: winding and free-run current as on its sheet', (_name, kv, mass, milliohm, amps) => {
    const resistance = assumedResistance(kv, mass, isInnerRotor(kv, mass, null)) * 1000
    expect(resistance / milliohm).toBeGreaterThan(1 / 2)
    expect(resistance / milliohm).toBeLessThan(2)
    const noLoad = assumedNoLoadAmps(kv, mass)
    expect(noLoad / amps).toBeGreaterThan(1 / 2)
    expect(noLoad / amps).toBeLessThan(2)
  })

  it('mass and size are each other’s inverse', () => {
    const diameter = assumedDiameter(0.4)
    expect(massOfSize(diameter, 1.5 * diameter)).toBeCloseTo(0.4, 12)
  })
})

describe('what rests on assumed numbers', () => {
  const checked = check(completeBuild(hobbyist()))
  const rests = restsOf(checked)

  it('is named for the over-rev limit: the fastest speed that nobody has entered', () => {
    expect(rests.limits.get('motor.free-rpm')).toContain('motor.ratedMaxRpm')
    expect(rests.limits.get('motor.free-rpm')).not.toContain('motor.kvRpmPerVolt')
  })

  it('is gone where every number is entered', () => {
    const owned = assumedPaths(hobbyist()).reduce(withoutAssumption, hobbyist())
    const found = restsOf(check(completeBuild(owned)))
    expect([...found.limits]).toEqual([])
    expect(found.topSpeed).toEqual([])
  })

  it('moves the top speed as the model does when the number is another', () => {
    for (const { path, least, most } of rests.topSpeed) {
      const stored = hobbyist()
      const now = entryAt(stored, path)
      const within = assumptionOf(path)?.within ?? 2
      if (typeof now !== 'number') continue
      const speeds = [now / within, now, now * within].map(
        (value) => check(completeBuild(withEntry(stored, path, value))).figures.topSpeedMps ?? NaN,
      )
      if (fieldOf(path)?.whole === true) continue
      expect(least ?? 0).toBeCloseTo(Math.min(...speeds), 6)
      expect(most ?? 0).toBeCloseTo(Math.max(...speeds), 6)
    }
    expect(rests.topSpeed.length).toBeGreaterThan(1)
  })

  it('limits that wait are named by the entry that would bring them', () => {
    const waiting = waitedFor(checked)
    const tooth = waiting.find(({ path }) => path === 'track.tooth')
    expect(tooth?.limits).toContain('track.tooth-shear')
    for (const { path, limits } of waiting) {
      expect(entryAt(hobbyist(), path), path).toBeUndefined()
      for (const id of limits) expect(checked.limits.some((row) => row.id === id)).toBe(false)
    }
  })
})
