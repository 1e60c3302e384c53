import type { Checked, TrackSpeedPoint } from '../../../shared-engine/index.ts'
import type { LoopTension } from '../../../shared-engine/draw/plots/loop-tension.ts'
import { groundSpeedOfRpm } from '../../../shared-engine/vehicle/logged-speed.ts'

/** What the plot of the loop's tension shows, from the check and the curves over speed. */
export function tensionOf({ machine, figures }: Checked, overSpeed: readonly TrackSpeedPoint[]): LoopTension {
  const { breakingTension, hold } = machine.track
  const freeRpm = figures.freeRpm ?? 0
  return {
    beltSpeed: overSpeed.map((point) => point.beltSpeed),
    groundSpeed: overSpeed.map((point) => point.groundSpeed),
    total: overSpeed.map((point) => point.motorSide.tension),
    slack: overSpeed.map((point) => point.motorSide.slack),
    pretension: hold.pretension,
    centrifugal: overSpeed.map((point) => point.centrifugal),
    breaking: breakingTension,
    burstSpeed: figures.burstBeltSpeedMps,
    liftOffSpeed: figures.liftOffBeltSpeedMps,
    freeBeltSpeed: groundSpeedOfRpm(machine, freeRpm, 0),
  }
}
