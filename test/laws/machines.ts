import type fc from 'fast-check'
import { machineOf } from '../../shared-engine/machine/machine.ts'
import type { Machine } from '../../shared-engine/machine/parts.ts'
import { completeBuild } from '../../shared-engine/entries/read.ts'
import type { Build, StoredBuild } from '../../shared-engine/entries/schema.ts'
import { anyBuild } from '../fixtures/build/any.ts'
import { plausibleBuild } from '../fixtures/build/random.ts'

/** Random builds of every kind and of plausible sizes, complete. */
export const builds: fc.Arbitrary<Build> = plausibleBuild.map((stored: StoredBuild) => completeBuild(stored))

/** Builds with entries anywhere in their ranges, ends among them, complete. */
export const wildBuilds: fc.Arbitrary<Build> = anyBuild.map((stored: StoredBuild) => completeBuild(stored))

/** The plausible ones in SI. */
export const machines: fc.Arbitrary<Machine> = builds.map(machineOf)

/** Largest difference over the larger of two numbers. */
export function apart(one: number, other: number): number {
  if (one === other) return 0
  return Math.abs(one - other) / Math.max(Math.abs(one), Math.abs(other))
}
