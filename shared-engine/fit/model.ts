import type { Build } from '../entries/schema.ts'
import { machineOf } from '../machine/machine.ts'
import type { Machine } from '../machine/parts.ts'
import { buildSetter } from '../uncertainty/build.ts'

/** A machine by the values of some entries, in their bench units. */
export interface MachineOfValues {
  (values: readonly number[]): Machine
  /** The entries, in the order of the values. */
  readonly paths: readonly string[]
}

/** Machines of a build with other numbers at some paths. */
export function machinesOf(build: Build, paths: readonly string[]): MachineOfValues {
  const set = buildSetter(build, paths)
  return Object.assign((values: readonly number[]) => machineOf(set(Float64Array.from(values))), { paths })
}
