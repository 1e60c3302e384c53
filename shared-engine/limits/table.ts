import type { Machine } from '../machine/parts.ts'
import { brakeLimits } from './brakes.ts'
import { controllerLimits } from './controller.ts'
import { converterLimits } from './converter.ts'
import { coolingLimits } from './cooling.ts'
import { fuseLimits } from './fuse.ts'
import { groupRank } from './group.ts'
import type { Limit } from './limit.ts'
import { motorLimits } from './motor.ts'
import { packLimits } from './pack.ts'
import { limitsOfKind, stageLimits } from './stage.ts'
import { limitsOfSupplies, supplyLimits } from './supply.ts'
import { seatLimits } from './seat-limits.ts'
import { trackStopLimits } from './track-stop.ts'
import { trackLimits } from './track.ts'
import { vehicleLimits } from './vehicle.ts'
import { limitsOfWires, wireLimits } from './wire.ts'
import type { LimitId } from './id.ts'

/** Limits that any machine may have; those of stages and converters come with their parts. */
export const commonLimits: readonly Limit[] = [
  ...Object.values(motorLimits),
  ...Object.values(controllerLimits),
  ...Object.values(packLimits),
  ...Object.values(coolingLimits),
  ...Object.values(fuseLimits),
  ...Object.values(trackLimits),
  ...Object.values(trackStopLimits),
  ...Object.values(seatLimits),
  ...Object.values(vehicleLimits),
  ...Object.values(brakeLimits),
]

/** Every limit that a machine of this shape can have, whether or not its entries are given. */
export function limitsOf(machine: Machine): readonly Limit[] {
  return [
    ...commonLimits,
    ...machine.stages.flatMap((stage, index) => limitsOfKind(stage.kind, index)),
    ...converterLimits.slice(0, machine.accessories.converters.length),
    ...limitsOfSupplies(machine.stepDowns.length, machine.accessories.converters.length),
    ...limitsOfWires(machine.wires.length),
  ]
}

const byId: ReadonlyMap<string, Limit> = new Map<string, Limit>(
  [...commonLimits, ...stageLimits, ...converterLimits, ...supplyLimits, ...wireLimits].map((limit) => [
    limit.id,
    limit,
  ]),
)

/** The limit of an id; undefined of a reduction or converter past the most that a build may hold. */
export function limitOf(id: LimitId): Limit | undefined {
  return byId.get(id)
}

/** Place of a limit's group in the ledger. */
export function groupRankOf(id: LimitId): number {
  return groupRank[limitOf(id)?.group ?? 'mishap']
}

/** The limit that a word from outside names (a command, a file, a kept view); undefined where it names none. */
export function limitNamed(word: string): Limit | undefined {
  return byId.get(word)
}
