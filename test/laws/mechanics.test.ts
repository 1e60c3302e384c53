import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import type { Build } from '../../shared-engine/entries/schema.ts'
import { readBuildValue } from '../../shared-engine/entries/read.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'
import { moved } from './directions.ts'
import { builds } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

// Which way each margin must go when one entry is changed: statics and energy, no source beyond them. Over random builds
// with everything entered that a jam, a shaft, a joint and a loop on its tensioner need.

const parts = fc.record({
  inertia: evenly(1, 5000),
  stiffness: evenly(2e3, 5e5),
  pretension: evenly(1, 500),
  tensioner: fc.constantFrom('fixed' as const, 'sprung' as const),
  breaking: evenly(200, 2e4),
  span: evenly(20, 400),
  shaft: evenly(6, 40),
  slip: evenly(0.5, 200),
  drivenInertia: evenly(0, 2000),
  flank: evenly(5, 40),
  wrap: evenly(60, 250),
  material: fc.constantFrom('pu-90a-cast' as const, 'rubber-natural' as const, 'aluminium-6061' as const),
})

/** A build with all that the mechanical limits need; its last reduction has the limiter. */
function equipped(build: Build, p: Parts): Build | null {
  const whole = {
    ...build,
    motor: { ...build.motor, rotorInertiaGcm2: p.inertia },
    stages: build.stages.map((stage, at) => ({
      ...stage,
      shaftDiameterMm: p.shaft,
      shaftMaterial: 'steel-c45',
      shaftSpanMm: p.span,
      drivenInertiaGcm2: p.drivenInertia,
      joint: { kind: 'clamp', clampForceN: 4000, friction: 0.15 },
      ...(at === build.stages.length - 1 ? { slipTorqueNm: p.slip } : {}),
    })),
    track: {
      ...build.track,
      loopStiffnessN: p.stiffness,
      pretensionN: p.pretension,
      tensioner: p.tensioner,
      breakingTensionN: p.breaking,
      wrapDegrees: p.wrap,
      tooth: {
        heightMm: 8,
        rootMm: 10,
        widthMm: 30,
        material: p.material,
        flankDegrees: p.flank,
        flankFriction: 0.3,
      },
      shaft: { diameterMm: p.shaft, material: 'steel-c45', spanMm: p.span },
    },
  }
  const read = readBuildValue(JSON.parse(JSON.stringify(whole)))
  return read.ok ? read.value : null
}

type Parts = typeof parts extends fc.Arbitrary<infer T> ? T : never

const equippedBuilds = fc
  .tuple(builds, parts)
  .map(([build, p]) => equipped(build, p))
  .filter((build) => build !== null)

const runs = { numRuns: 120 } as const

/** Limits that weigh turning parts or the loop's tension, whatever the ground and the motor's heat do. */
const mechanical = ({ id }: LimitRow) => /^(stage|track)\.|^motor\.(stop-|)joint/.test(id)

const property = (change: (build: Build) => Build | null, test: (before: Build, after: Build) => void) => {
  let changed = 0
  fc.assert(
    fc.property(equippedBuilds, (build) => {
      const after = change(build)
      if (after === null) return
      changed += 1
      test(build, after)
    }),
    runs,
  )
  expect(changed).toBeGreaterThan(20)
}

/** λ of the loop: the part of it that the pull stretches. */
function tightShare({ machine }: ReturnType<typeof check>): number {
  return machine.track.hold.tightShare
}

it('the comparison notices a margin that went the wrong way', () => {
  let noticed = 0
  fc.assert(
    fc.property(equippedBuilds, (build) => {
      const lighter = {
        ...build,
        motor: { ...build.motor, rotorInertiaGcm2: build.motor.rotorInertiaGcm2 / 4 },
      }
      const jam = ({ id, margin }: LimitRow) => id === 'track.stop-shear' && margin !== null
      noticed += moved(build, lighter, 'up', jam).length
    }),
    { numRuns: 40 },
  )
  // where no limiter decides
  expect(noticed).toBeGreaterThan(5)
})

describe('margins go the way that statics and energy say', () => {
  it('a heavier rotor raises no margin of a part', () => {
    property(
      (build) => ({
        ...build,
        motor: { ...build.motor, rotorInertiaGcm2: build.motor.rotorInertiaGcm2 * 1.5 },
      }),
      (before, after) => {
        const eased = before.track.tensioner === 'fixed' && tightShare(check(before)) > 0.5
        const among = (row: LimitRow) => mechanical(row) && !(eased && row.id === 'track.stop-shaft')
        expect(moved(before, after, 'up', among)).toEqual([])
      },
    )
  })

  it('less pretension on a fixed tensioner keeps a loop no better on its wheels', () => {
    property(
      (build) =>
        build.track.tensioner === 'fixed'
          ? { ...build, track: { ...build.track, pretensionN: (build.track.pretensionN ?? 0) * 0.7 } }
          : null,
      (before, after) => {
        const among = ({ id }: LimitRow) => /^track\.(lift-off|mesh)/.test(id)
        expect(moved(before, after, 'up', among)).toEqual([])
      },
    )
  })

  it('a colder loop that shrinks more than its frame is no slacker', () => {
    property(
      (build) => {
        if (build.track.tensioner !== 'fixed' || build.ground.airTemperatureC < -30) return null
        return { ...build, ground: { ...build.ground, airTemperatureC: build.ground.airTemperatureC - 15 } }
      },
      (before, after) => {
        const shrinking = (build: Build): Build => ({
          ...build,
          track: { ...build.track, loopMaterial: 'pom', frameMaterial: 'steel-c45' },
        })
        const among = ({ id, case: at }: LimitRow) => id === 'track.tension' && at !== 'top'
        expect(moved(shrinking(before), shrinking(after), 'up', among)).toEqual([])
      },
    )
  })

  it('a limiter set lower spares every part but itself', () => {
    property(
      (build) => {
        const last = build.stages.length - 1
        if (last < 0) return null
        const stages = build.stages.map((stage, at) =>
          at === last ? { ...stage, slipTorqueNm: (stage.slipTorqueNm ?? 1) * 0.6 } : stage,
        )
        return { ...build, stages }
      },
      (before, after) => {
        const isSprung = before.track.tensioner === 'sprung'
        const among = ({ id }: LimitRow) =>
          !id.endsWith('.limiter') && (/^(stage|motor)\./.test(id) || (isSprung && id.startsWith('track.')))
        expect(moved(before, after, 'down', among)).toEqual([])
      },
    )
  })

  it('a thinner shaft and a longer span hold no better', () => {
    property(
      (build) => {
        const stages = build.stages.map((stage) => ({
          ...stage,
          shaftDiameterMm: (stage.shaftDiameterMm ?? 10) * 0.8,
          shaftSpanMm: (stage.shaftSpanMm ?? 10) * 1.3,
        }))
        return { ...build, stages }
      },
      (before, after) => {
        const among = ({ id }: LimitRow) => /^stage\.\d+\.(stop-)?shaft/.test(id)
        expect(moved(before, after, 'up', among)).toEqual([])
      },
    )
  })

  it('a material that keeps less of its strength has no tooth that holds better', () => {
    property(
      (build) => ({
        ...build,
        track: { ...build.track, knockdownPercent: build.track.knockdownPercent * 0.7 },
      }),
      (before, after) => {
        const among = ({ id }: LimitRow) => /^track\.(tooth|stop)-(shear|bending|bearing)/.test(id)
        expect(moved(before, after, 'up', among)).toEqual([])
      },
    )
  })

  it('a lower throttle cap makes no mishap worse, but climbing while free', () => {
    property(
      (build) => {
        const controller = build.controller
        return {
          ...build,
          controller: { ...controller, throttleCapPercent: controller.throttleCapPercent * 0.8 },
        }
      },
      (before, after) => {
        const among = ({ group, id }: LimitRow) => group === 'mishap' && id !== 'track.climb-free'
        expect(moved(before, after, 'down', among)).toEqual([])
      },
    )
  })
})

describe('the last shaft and the loop', () => {
  it('carry the same pull in a jam and where the ground holds', () => {
    fc.assert(
      fc.property(equippedBuilds, (build) => {
        const { evaluation: e, machine } = check(build)
        const last = machine.stages.length
        const scale = (machine.track.radius * machine.track.count) / machine.motor.count
        if (last === 0) return
        // what the last shaft carries is what the loop pulls, in a jam and where the ground holds
        for (const [place, load] of [[0, e.launchLoad] as const, [1, e.gripLoad] as const]) {
          const torque = e.stageDuties[last - 1]?.out[place] ?? NaN
          expect(Math.abs(torque / (load.pull * scale) - 1)).toBeLessThan(1e-9)
        }
      }),
      runs,
    )
  })
})
