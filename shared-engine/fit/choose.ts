import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import type { Block } from './blocks/block.ts'
import { heatBlock } from './blocks/heat.ts'
import { sagBlock } from './blocks/sag.ts'
import { slipBlock } from './blocks/slip.ts'
import { speedBlock } from './blocks/speed.ts'
import { voltsBlock } from './blocks/volts.ts'
import { blockNames, channelsOfBlock, fitEntryOf, type FitEntry } from './entries.ts'
import type { Prepared } from './prepare.ts'
import type { RefusalCode } from './refuse.ts'

/** Entries of one lump: one of them cannot be told without a number for the other. */
const lump = ['motor.thermalResistanceKPerW', 'motor.heatCapacityJPerK']

/** Why an entry has no chance, before anything is solved; null where it has one. */
export function missingBecause(
  path: string,
  build: Build,
  { noise }: Prepared,
  asked: readonly string[],
): RefusalCode | null {
  const entry = fitEntryOf(path)
  if (entry === undefined) return 'not-in-build'
  if (build.ground.model === 'soil' && path.startsWith('ground.')) return 'no-effect'
  if (path === 'vehicle.dragCoefficient' && build.vehicle.frontalAreaM2 === 0) return 'no-effect'
  const other = lump.includes(path) ? lump.find((one) => one !== path) : undefined
  if (other !== undefined && !asked.includes(other) && valueAt(build, keysOf(other)) === undefined)
    return 'not-in-build'
  const missing = channelsOfBlock[entry.block].some((channel) => !noise.has(channel))
  return missing ? 'no-channel' : null
}

/** The blocks that entries ask for, in the order of their list. */
export function blocksOf(build: Build, prepared: Prepared, entries: readonly FitEntry[]): readonly Block[] {
  const machine = machineOf(build)
  const made = {
    volts: () => voltsBlock(prepared),
    sag: () => sagBlock(prepared, machine, build.pack.chemistry),
    speed: () => speedBlock(prepared, machine),
    slip: () => slipBlock(prepared, machine),
    heat: () => heatBlock(prepared, machine),
  }
  return blockNames.filter((name) => entries.some(({ block }) => block === name)).map((name) => made[name]())
}
