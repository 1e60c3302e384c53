import { rpmOf } from '../units/rpm.ts'
import { place, spinUpShare } from './drive.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Draw, Moment } from './moment.ts'

/** What peaks and bounds are looked for in. */
export const peakNames = [
  'winding',
  'controller',
  'coolant',
  'pack',
  'motorAmps',
  'packAmps',
  'packVolts',
  'motorRpm',
  'speed',
  'spinUpMotorAmps',
] as const

export type PeakName = (typeof peakNames)[number]

/** Their values at one instant; NaN where the instant does not count. */
export type Reading = Record<PeakName, number>

/** A reading to fill. */
export const emptyReading = (): Reading => Object.fromEntries(peakNames.map((name) => [name, NaN])) as Reading

/**
 * Fills a reading.
 *
 * Amps (either sign, turns too) and volts count only where the motors' force is at most 1.05 F_max: beyond that the
 * current spins the track up, within some tenths of a second.
 */
export function setReading(
  reading: Reading,
  state: Float64Array,
  moment: Moment,
  row: SettledRow,
  model: DriveModel,
): void {
  reading.winding = state[place.winding] as number
  reading.controller = state[place.controller] as number
  reading.coolant = state[place.coolant] as number
  reading.pack = state[place.packTemperature] as number
  reading.motorRpm = rpmOf(moment.straight.motorSpeed)
  reading.speed = moment.speed
  reading.motorAmps = reading.packAmps = reading.packVolts = reading.spinUpMotorAmps = NaN
  // What rounding makes of the crossing itself counts as before it.
  if (moment.force <= spinUpShare * row.ground.footing.gripThrust * (1 + 1e-9)) {
    const turns = row.turnShare > 0
    const most = (of: (draw: Draw) => number) =>
      turns ? Math.max(of(moment.straight), of(moment.turn)) : of(moment.straight)
    reading.motorAmps = most((draw) => Math.abs(draw.amps))
    reading.packAmps = most((draw) => Math.abs(draw.packAmps))
    reading.packVolts = -most((draw) => -draw.packVolts)
  } else reading.spinUpMotorAmps = Math.abs(moment.straight.amps)
  if (model.heat.circuit === null) reading.coolant = model.machine.ground.airTemperature
}
