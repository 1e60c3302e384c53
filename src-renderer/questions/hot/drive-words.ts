import { limitOf } from '../../../shared-engine/index.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import type { Channel } from '../../../shared-engine/drive/series.ts'
import type { EnergySink } from '../../../shared-engine/drive/drive.ts'

/** What is told over time, in words and with its kind. */
export const channelWords: Readonly<Record<Channel, readonly [label: string, kind: QuantityKind]>> = {
  seconds: ['Time', 'time'],
  speed: ['Ground speed', 'speed'],
  distance: ['Distance', 'distance'],
  throttle: ['Throttle', 'fraction'],
  motorRpm: ['Motor rpm', 'rpm'],
  motorAmps: ['Current of one motor', 'amps'],
  packAmps: ['Pack current', 'amps'],
  packVolts: ['Pack volts', 'volts'],
  charge: ['Charge', 'fraction'],
  winding: ['Winding temperature', 'temperature'],
  controller: ['Controller temperature', 'temperature'],
  coolant: ['Coolant temperature', 'temperature'],
  thrust: ['Thrust', 'force'],
  slip: ['Slip', 'fraction'],
}

/** Highest value of a channel, and of volts the lowest. */
export const peakWords: Readonly<Partial<Record<Channel, string>>> = {
  speed: 'Fastest',
  motorRpm: 'Most rpm',
  motorAmps: 'Most current of one motor',
  packAmps: 'Most pack current',
  packVolts: 'Least pack volts',
  winding: 'Hottest winding',
  controller: 'Hottest controller',
  coolant: 'Hottest coolant',
  thrust: 'Most thrust',
  slip: 'Most slip',
}

/** Where the energy went. */
export const sinkWords: Readonly<Record<EnergySink | 'motion', string>> = {
  packLoss: 'Heat in pack and wiring',
  accessories: 'Accessories',
  copper: 'Heat in the windings',
  controllerLoss: 'Heat in the controllers',
  iron: 'Iron and friction of the motors',
  stages: 'Reductions',
  trackDrag: 'Drag of the track itself',
  slip: 'Slip',
  ground: 'Rolling, sinking and skis',
  air: 'Air',
  climb: 'Climbing',
  tow: 'Towing',
  motion: 'Still in motion at the end',
}

/** A bound that the drive passed; by its RMS current where there is no moment. */
export interface Passed {
  readonly id: string
  readonly label: string
  readonly at: number | null
}

/** Every bound that was passed, first moment first. */
export function passedOf({ watched, overContinuous }: DriveRun): readonly Passed[] {
  const label = (id: string) => limitOf(id)?.label ?? id
  const moments = watched
    .filter(({ passedAt }) => passedAt !== null)
    .toSorted((one, other) => (one.passedAt ?? 0) - (other.passedAt ?? 0))
  return [
    ...moments.map(({ id, passedAt }) => ({ id, label: label(id), at: passedAt })),
    ...overContinuous.map((id) => ({ id, label: label(id), at: null })),
  ]
}
