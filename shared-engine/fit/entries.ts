import { gravity } from '../constants.ts'
import type { Machine } from '../machine/parts.ts'
import type { ChannelName } from './log.ts'

export const blockNames = ['volts', 'sag', 'speed', 'slip', 'heat'] as const
/** What is compared with the log: a kind of residual. */
export type BlockName = (typeof blockNames)[number]

/** Which drive would tell an entry. */
export type Tell =
  | 'off-ground'
  | 'slow-and-fast'
  | 'fast'
  | 'coast'
  | 'light-and-hard'
  | 'bursts'
  | 'long-and-cool'
  | 'ground-speed'

/** An entry that a log can tell. */
export interface FitEntry {
  readonly path: string
  readonly unit: string
  /** The block that is there for it. */
  readonly block: BlockName
  /** Where to start from when the build has 0 or nothing. */
  readonly start: (machine: Machine) => number
  /** The drive that would tell it. */
  readonly tell: Tell
}

/** N·s/m for each newton of weight, to start the drag that grows with speed from. */
const littleOfWeight = 1e-3

const weightOf = (machine: Machine) => machine.vehicle.mass * gravity

/** Every entry that can be fitted. */
export const fitEntries: readonly FitEntry[] = [
  { path: 'ground.rollingCoefficient', unit: '1', block: 'speed', start: () => 0.05, tell: 'coast' },
  {
    path: 'track.internalDragN',
    unit: 'N',
    block: 'speed',
    start: (machine) => 0.01 * weightOf(machine),
    tell: 'off-ground',
  },
  {
    path: 'track.internalDragNPerMps',
    unit: 'N s/m',
    block: 'speed',
    start: (machine) => littleOfWeight * weightOf(machine),
    tell: 'slow-and-fast',
  },
  { path: 'vehicle.dragCoefficient', unit: '1', block: 'speed', start: () => 1, tell: 'fast' },
  { path: 'motor.kvRpmPerVolt', unit: 'rpm/V', block: 'volts', start: () => 1000, tell: 'light-and-hard' },
  { path: 'motor.resistanceMilliohm', unit: 'mOhm', block: 'volts', start: () => 10, tell: 'light-and-hard' },
  { path: 'pack.cellResistanceMilliohm', unit: 'mOhm', block: 'sag', start: () => 5, tell: 'bursts' },
  { path: 'motor.thermalResistanceKPerW', unit: 'K/W', block: 'heat', start: () => 1, tell: 'long-and-cool' },
  { path: 'motor.heatCapacityJPerK', unit: 'J/K', block: 'heat', start: () => 200, tell: 'long-and-cool' },
  { path: 'ground.slipPercent', unit: '%', block: 'slip', start: () => 5, tell: 'ground-speed' },
]

/** Channels that a block cannot do without; motor amps may be worked out of the pack's. */
export const channelsOfBlock: Readonly<Record<BlockName, readonly ChannelName[]>> = {
  volts: ['packVolts', 'duty', 'motorAmps', 'motorRpm'],
  sag: ['packVolts', 'packAmps'],
  speed: ['motorRpm', 'motorAmps'],
  slip: ['groundMps', 'motorRpm'],
  heat: ['motorCelsius', 'motorAmps', 'motorRpm'],
}

/** The entry of a path, if a log can tell it. */
export function fitEntryOf(path: string): FitEntry | undefined {
  return fitEntries.find((entry) => entry.path === path)
}
