import type { QuantityKind } from '../units/kinds.ts'
import type { EnergySink } from './drive.ts'
import type { PeakName } from './reading.ts'
import type { EnergyBook } from './result.ts'
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
  case: ['Case temperature of the motor', 'temperature'],
  pack: ['Cell temperature', 'temperature'],
  height: ['Height above the start', 'distance'],
}

/** The most of a drive, and of volts the least, in words and with its kind. */
export const peakWords: Readonly<Record<PeakName, readonly [label: string, kind: QuantityKind]>> = {
  speed: ['Fastest', 'speed'],
  motorRpm: ['Most rpm', 'rpm'],
  motorAmps: ['Most current of one motor', 'amps'],
  packAmps: ['Most pack current', 'amps'],
  packVolts: ['Least pack volts', 'volts'],
  spinUpMotorAmps: ['While only spinning up, one motor', 'amps'],
  winding: ['Hottest winding', 'temperature'],
  controller: ['Hottest controller', 'temperature'],
  coolant: ['Hottest coolant', 'temperature'],
  pack: ['Hottest cells', 'temperature'],
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

/** What is in none of these. */
export const restWords: Readonly<Record<keyof EnergyBook['rest'], string>> = {
  wheelBrake: 'Wheel brake',
  turns: 'Turning on the spot',
  spin: 'Spinning track, caught again',
  loads: 'Loads put on or taken off in motion',
  capped: 'Left out: motors driven past the pack’s volts',
  steps: 'Missing: the error of the steps',
}

type Rest = keyof EnergyBook['rest']

/** Share of the pack's energy below which an entry of the book is what rounding leaves of nothing. */
const rounding = 1e-9

/** What is in none of the sinks, the error of the steps apart, J; what is nothing but rounding is left out. */
export function restTold({ pack, rest }: EnergyBook): readonly (readonly [Exclude<Rest, 'steps'>, number])[] {
  const names = ['wheelBrake', 'turns', 'spin', 'loads', 'capped'] as const
  return names
    .map((name) => [name, rest[name]] as const)
    .filter(([, joules]) => Math.abs(joules) > rounding * pack)
}
