import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readStoredBuild, readStoredBuildText } from '../../../shared-engine/entries/read.ts'
import { writeBuild } from '../../../shared-engine/entries/write.ts'
import { anyBuild } from '../../fixtures/build/any.ts'
import { fullBuild, plainBuild } from '../../fixtures/build/plain.ts'

/** The same value with the keys of every group in another order. */
function shuffled(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(shuffled)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, inner]) => [key, shuffled(inner)])
      .reverse(),
  )
}

describe('writing a build', () => {
  it('writes what was entered, in the order of the table, with a newline at the end', () => {
    expect(writeBuild(shuffled(plainBuild()) as never)).toBe(`{
  "format": "pitchline-build",
  "version": 2,
  "name": "demo: required entries only",
  "pack": {
    "chemistry": "lipo",
    "series": 6,
    "capacityMah": 5000,
    "cellResistanceMilliohm": 2
  },
  "motor": {
    "kvRpmPerVolt": 500,
    "resistanceMilliohm": 25,
    "noLoadAmps": 1.5,
    "noLoadVolts": 22.2,
    "poleCount": 14,
    "ratedMaxRpm": 15000
  },
  "track": {
    "pitchMm": 20,
    "sprocketTeeth": 12,
    "loopPitches": 60,
    "massGPerM": 600
  },
  "vehicle": {
    "massKg": 12
  },
  "ground": {
    "model": "coefficient",
    "rollingCoefficient": 0.08,
    "gripCoefficient": 0.6
  }
}
`)
  })

  it('keeps tolerances and origins in the builder’s order, and leaves out what is undefined', () => {
    const text = writeBuild({
      ...fullBuild(),
      cooling: undefined,
      origins: { 'vehicle.massKg': 'measured', 'pack.series': 'stated' },
    })
    expect(text).not.toContain('cooling')
    expect(text.indexOf('"vehicle.massKg"')).toBeLessThan(text.indexOf('"pack.series"'))
  })

  it('reads back as the same build, and writes the same bytes again', () => {
    fc.assert(
      fc.property(anyBuild, (build) => {
        const text = writeBuild(build)
        const read = readStoredBuild(new TextEncoder().encode(text))
        expect(read).toEqual({ ok: true, value: build })
        expect(read.ok && writeBuild(read.value)).toBe(text)
      }),
    )
  })

  it('does not depend on the order in which keys were read', () => {
    fc.assert(
      fc.property(anyBuild, (build) => {
        const read = readStoredBuildText(JSON.stringify(shuffled(build)))
        expect(read.ok && writeBuild(read.value)).toBe(writeBuild(build))
      }),
      { numRuns: 30 },
    )
  })
})
