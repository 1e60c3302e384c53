import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { curveSettingOf, type CurveSetting } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed } from '../../shared-engine/vehicle/curves.ts'
import { driveStateAt, type DriveState } from '../../shared-engine/vehicle/drive-state.ts'
import { machines } from './machines.ts'
import { evenly } from '../fixtures/evenly.ts'

/** W that go where the engine says, all together. */
function spent(setting: CurveSetting, state: DriveState): number {
  const accessories = state.packVolts * setting.accessoryAmps
  return (
    state.packLoss + accessories + state.copperLoss + state.controllerLoss + state.ironLoss + state.shaftPower
  )
}

/** By how much the book of a state does not balance, in parts of its largest term. */
function missing(setting: CurveSetting, state: DriveState): number {
  const parts = [state.packPower, state.packLoss, state.copperLoss, state.ironLoss, state.shaftPower]
  return Math.abs(state.packPower - spent(setting, state)) / Math.max(1e-300, ...parts.map(Math.abs))
}

/** Speeds of several states of one machine, as shares of its free speed: drawing the machine is what takes long. */
const shares = (most: number) => fc.array(evenly(0, most), { minLength: 6, maxLength: 6 })
const throttles = evenly(0.05, 1)
const freeOf = ({ line }: CurveSetting): number => Math.max(0.1, line.openStart / line.openSlope)

describe('energy', () => {
  it('that leaves the cells is what heats, lights and turns, in every state: `docs/model.md` §3', () => {
    fc.assert(
      fc.property(machines, throttles, shares(1.5), (machine, throttle, places) => {
        const setting = curveSettingOf(machine, throttle)
        for (const share of places) {
          // 1e-12 of the larger term, as the contract has it
          expect(missing(setting, driveStateAt(setting, share * freeOf(setting)))).toBeLessThanOrEqual(1e-12)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('nor is any lost along the curve over ground speed, spinning or gripping', () => {
    fc.assert(
      fc.property(machines, shares(0.99), (machine, places) => {
        const setting = curveSettingOf(machine)
        for (const share of places) {
          const state = driveStateAtGroundSpeed(setting, share * freeOf(setting))
          // 1e-12 of the larger term, as the contract has it
          expect(missing(setting, state)).toBeLessThanOrEqual(1e-12)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('is not balanced by a book that forgets the wiring: the check can fail', () => {
    const machine = fc.sample(machines, { seed: 5, numRuns: 1 })[0]
    if (machine === undefined) throw new Error('no machine')
    const setting = curveSettingOf(machine)
    const state = driveStateAt(setting, 0.1)
    expect(Math.abs(state.packPower - spent(setting, state) + state.packLoss)).toBeGreaterThan(
      1e-9 * state.packPower,
    )
  })
})
