import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { curveSettingOf, type CurveSetting } from '../../shared-engine/vehicle/curve-setting.ts'
import { driveStateAtGroundSpeed } from '../../shared-engine/vehicle/curves.ts'
import { driveStateAt, type DriveState } from '../../shared-engine/vehicle/drive-state.ts'
import { machines } from './machines.ts'

/** W that go where the engine says, all together. */
function spent(setting: CurveSetting, state: DriveState): number {
  const accessories = state.packVolts * setting.accessoryAmps
  return (
    state.packLoss + accessories + state.copperLoss + state.controllerLoss + state.ironLoss + state.shaftPower
  )
}

describe('energy', () => {
  it('that leaves the cells is what heats, lights and turns, in every state: engine contract §3', () => {
    fc.assert(
      fc.property(
        machines,
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        (machine, throttle, share) => {
          const setting = curveSettingOf(machine, throttle)
          const free = Math.max(0.1, setting.line.openStart / setting.line.openSlope)
          const state = driveStateAt(setting, share * free)
          const parts = [state.packPower, state.packLoss, state.copperLoss, state.ironLoss, state.shaftPower]
          const largest = Math.max(...parts.map(Math.abs))
          // 1e-12 of the larger term, as the contract has it
          expect(Math.abs(state.packPower - spent(setting, state))).toBeLessThanOrEqual(1e-12 * largest)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('nor is any lost along the curve over ground speed, spinning or gripping', () => {
    fc.assert(
      fc.property(machines, fc.double({ min: 0, max: 0.99, noNaN: true }), (machine, share) => {
        const setting = curveSettingOf(machine)
        const free = Math.max(0.1, setting.line.openStart / setting.line.openSlope)
        const state = driveStateAtGroundSpeed(setting, share * free)
        const parts = [state.packPower, state.packLoss, state.copperLoss, state.ironLoss, state.shaftPower]
        // 1e-12 of the larger term, as the contract has it
        const largest = Math.max(...parts.map(Math.abs))
        expect(Math.abs(state.packPower - spent(setting, state))).toBeLessThanOrEqual(1e-12 * largest)
      }),
      { numRuns: 500 },
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
