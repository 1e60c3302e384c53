import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'
import { moved } from './directions.ts'
import { builds } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

// Which way the margins of balance and of a loop's wrap must go: statics, no source beyond them. Random builds with a place
// of their centre of mass, a tow and its hitch.

const parts = fc.record({
  cgHeightMm: evenly(50, 600),
  cgAheadMm: evenly(10, 500),
  towForceN: evenly(0, 60),
  towHeightMm: evenly(0, 300),
  gaugeMm: evenly(200, 800),
  gradePercent: evenly(0, 40),
  sideSlopePercent: evenly(0, 40),
})

type Parts = typeof parts extends fc.Arbitrary<infer T> ? T : never

/** The build with these entries and some of the track's own; null where a rule refuses them. */
function changed(build: Build, p: Parts, track: Partial<Build['track']> = {}): Build | null {
  const { gradePercent, sideSlopePercent, ...vehicle } = p
  const read = readBuildValue(
    JSON.parse(
      JSON.stringify({
        ...build,
        vehicle: { ...build.vehicle, ...vehicle, loadCgHeightMm: undefined, loadCgAheadMm: undefined },
        ground: { ...build.ground, gradePercent, sideSlopePercent },
        track: { ...build.track, ...track },
      }),
    ),
  )
  return read.ok ? read.value : null
}

const lifts = ({ id }: LimitRow) => id === 'vehicle.front-lift' || id === 'vehicle.spin-up-lift'
const tips = ({ id }: LimitRow) => id.startsWith('vehicle.tip-')

/** Runs a property over builds before and after; counts those in which both can be made. */
function holds(after: (p: Parts, by: number) => Parts, test: (before: Build, after: Build) => void): void {
  let seen = 0
  fc.assert(
    fc.property(builds, parts, evenly(1.05, 2), (build, p, by) => {
      const [one, other] = [changed(build, p), changed(build, after(p, by))]
      if (one === null || other === null) return
      seen += 1
      test(one, other)
    }),
    { numRuns: 100 },
  )
  expect(seen).toBeGreaterThan(50)
}

describe('no margin of balance rises', () => {
  it('with a higher hitch', () => {
    holds(
      (p, by) => ({ ...p, towForceN: p.towForceN, towHeightMm: p.towHeightMm * by + 10 }),
      (before, after) => expect(moved(before, after, 'up', lifts)).toEqual([]),
    )
  })

  it('with a higher centre of mass, where the hitch does not lift the front by itself', () => {
    let asked = 0
    holds(
      (p, by) => ({ ...p, cgHeightMm: p.cgHeightMm * by }),
      (before, after) => {
        const { evaluation, machine } = check(before)
        const { towForce, towHeight } = machine.vehicle
        if (!(evaluation.rightingMoment >= towForce * towHeight)) return
        asked += 1
        expect(moved(before, after, 'up', (row) => lifts(row) || tips(row))).toEqual([])
      },
    )
    expect(asked).toBeGreaterThan(20)
  })

  it('the comparison notices one that does', () => {
    let noticed = 0
    fc.assert(
      fc.property(builds, parts, (build, p) => {
        const [one, other] = [changed(build, p), changed(build, { ...p, cgHeightMm: p.cgHeightMm / 2 })]
        if (one !== null && other !== null) noticed += moved(one, other, 'up', tips).length
      }),
      { numRuns: 20 },
    )
    expect(noticed).toBeGreaterThan(0)
  })
})

it('less wrap raises no margin of a drive tooth, where the teeth share by percent', () => {
  const tooth = { heightMm: 8, rootMm: 10, widthMm: 30, material: 'pu-90a-cast' as const }
  const among = ({ id }: LimitRow) => /^track\.tooth-(shear|bending|bearing)/.test(id)
  let fell = 0
  fc.assert(
    fc.property(builds, parts, evenly(60, 250), evenly(0.3, 0.9), (build, p, wrapDegrees, share) => {
      const shared = { tooth, sharePercent: 60, loopStiffnessN: undefined } as Partial<Build['track']>
      const one = changed(build, p, { ...shared, wrapDegrees })
      const other = changed(build, p, { ...shared, wrapDegrees: wrapDegrees * share })
      if (one === null || other === null) return
      expect(moved(one, other, 'up', among)).toEqual([])
      fell += moved(one, other, 'down', among).length
    }),
    { numRuns: 60 },
  )
  expect(fell).toBeGreaterThan(20) // it is no matter of nothing happening
})
