import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { check } from '../../shared-engine/check.ts'
import { limitGroups } from '../../shared-engine/limits/group.ts'
import type { LimitRow } from '../../shared-engine/limits/ledger.ts'
import { limitOf } from '../../shared-engine/limits/table.ts'
import { curveSettingOf } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed } from '../../shared-engine/vehicle/curves.ts'
import { driveStateAt } from '../../shared-engine/vehicle/drive-state.ts'
import { builds, machines, wildBuilds } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

/** Rank of a margin: one that can't be formed stands before all. */
const rank = (row: LimitRow): number => row.margin ?? -Infinity

/** No figure and no number of a limit is NaN or endless: what does not exist is null. */
function expectNumbers(figures: Readonly<Record<string, number | null>>, limits: readonly LimitRow[]): void {
  const told = [
    ...Object.entries(figures),
    ...limits.flatMap(({ id, actual, allowed, margin }) =>
      [actual, allowed, margin].map((value) => [id, value] as const),
    ),
  ]
  expect(told.filter(([, value]) => value !== null && !Number.isFinite(value))).toEqual([])
}

describe('the ledger', () => {
  it('is in order, each standing follows from its margin, each margin from its numbers, all of them numbers', () => {
    fc.assert(
      fc.property(builds, (build) => {
        const { figures, limits } = check(build)
        expectNumbers(figures, limits)
        for (const [index, row] of limits.entries()) {
          const next = limits[index + 1]
          if (next !== undefined) {
            const [group, nextGroup] = [limitGroups.indexOf(row.group), limitGroups.indexOf(next.group)]
            expect(group).toBeLessThanOrEqual(nextGroup)
            if (group === nextGroup) {
              expect(rank(row)).toBeLessThanOrEqual(rank(next))
              if (rank(row) === rank(next)) expect(row.id < next.id).toBe(true)
            }
          }
          const standing = rank(row) >= 0.2 ? 'within' : rank(row) >= 0 ? 'near' : 'over'
          expect(row.standing).toBe(standing)
          const sense = limitOf(row.id)?.sense
          if (row.margin === null || row.actual === null || row.allowed === null) continue
          if (sense === 'maximum') expect(row.margin).toBe(1 - row.actual / row.allowed)
          if (sense === 'minimum') expect(row.margin).toBe(1 - row.allowed / row.actual)
          if (sense === 'temperature') expect(Math.sign(row.margin)).toBe(Math.sign(row.allowed - row.actual))
        }
      }),
      { numRuns: 200 },
    )
  })

  it('and figures hold no number that is none, even at the ends of every entry', () => {
    fc.assert(
      fc.property(wildBuilds, (build) => {
        const { figures, limits } = check(build)
        expectNumbers(figures, limits)
      }),
      { numRuns: 200 },
    )
  })

  it('says the same twice', () => {
    fc.assert(
      fc.property(builds, (build) => {
        const [first, second] = [check(build), check(build)]
        expect(second.figures).toEqual(first.figures)
        expect(second.limits).toEqual(first.limits)
      }),
      { numRuns: 60 },
    )
  })
})

describe('along the curve', () => {
  it('thrust never rises with the speed of the belt', () => {
    fc.assert(
      fc.property(machines, evenly(0.05, 1), (machine, throttle) => {
        const setting = curveSettingOf(machine, throttle)
        const end = Math.max(1, (1.2 * setting.line.openStart) / setting.line.openSlope)
        let before = driveStateAt(setting, 0)
        for (let step = 1; step <= 30; step += 1) {
          const state = driveStateAt(setting, (end * step) / 30)
          // 1e-12 of the larger term: thrust is torque less drag
          const slack = 1e-12 * Math.max(Math.abs(setting.line.openStart), machine.track.internalDrag)
          expect(state.motorThrust).toBeLessThanOrEqual(before.motorThrust + slack)
          expect(state.thrust).toBeLessThanOrEqual(before.thrust + slack)
          before = state
        }
      }),
      { numRuns: 200 },
    )
  })

  it('thrust never rises with speed and resistance never falls', () => {
    fc.assert(
      fc.property(machines, (machine) => {
        const setting = curveSettingOf(machine)
        const end = (0.95 * setting.line.openStart) / setting.line.openSlope
        if (!(end > 0)) return
        let before = driveStateAtGroundSpeed(setting, 0)
        for (let step = 1; step <= 20; step += 1) {
          const state = driveStateAtGroundSpeed(setting, (end * step) / 20)
          // 1e-9: the root that belt speed is, times the steepness of thrust
          const slack = 1e-9 * Math.max(1, Math.abs(before.thrust), setting.line.openStart)
          expect(state.thrust).toBeLessThanOrEqual(before.thrust + slack)
          expect(state.resistance).toBeGreaterThanOrEqual(before.resistance)
          before = state
        }
      }),
      { numRuns: 150 },
    )
  })

  it('a heavier machine is not faster', () => {
    fc.assert(
      fc.property(builds, evenly(1.01, 1.5), (build, more) => {
        const vehicle = { ...build.vehicle, massKg: Math.min(20_000, build.vehicle.massKg * more) }
        const [light, heavy] = [check(build), check({ ...build, vehicle })]
        // where grip is what holds it, weight gives more of it; that is another matter
        if (light.evaluation.top.spinning || light.machine.ground.model === 'soil') return
        const [one, other] = [light.figures.topSpeedMps, heavy.figures.topSpeedMps]
        if (one === null || other === null) return
        expect(other).toBeLessThanOrEqual(one * (1 + 1e-9))
      }),
      { numRuns: 150 },
    )
  })
})
