import type { QuantityKind } from '../units/kinds.ts'
import type { EnergySink } from './drive.ts'
import type { Channel } from './series.ts'

/** What is followed over time, in words and with its kind. */
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

/** Highest value of a channel, and of volts the lowest; a channel without a word here has no peak. */
export const peakWords: Readonly<Partial<Record<Channel, string>>> = {
  speed: 'Fastest',
  motorRpm: 'Most rpm',
  motorAmps: 'Most current of one motor',
  packAmps: 'Most pack current',
  packVolts: 'Least pack volts',
  winding: 'Hottest winding',
  controller: 'Hottest controller',
  coolant: 'Hottest coolant or air',
  thrust: 'Most thrust',
  slip: 'Most slip',
}

/** Where the energy from the pack went. */
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
