import type { Reach } from './matched.ts'
import type { ChangeId } from './quantity.ts'
import type { Measure } from './stretch.ts'

/** What is compared with a run: another one, or what the build says of it. */
export type Against = 'log' | 'build'

/** One quantity of two runs under like conditions. */
export interface Change {
  readonly id: ChangeId
  /** Means under like conditions; SI but what the kind's unit says. */
  readonly before: number
  readonly after: number
  readonly difference: number
  /** The interval of 95 of 100 is the difference ± this. */
  readonly within: number
  /** Whether it is told from nothing, all that was compared taken together. */
  readonly told: boolean
  /** Standard deviation of one stretch about what the conditions explain; null of fewer than two. */
  readonly scatter: readonly [before: number | null, after: number | null]
  /** Stretches that were alike, and how long each is. */
  readonly stretches: readonly [before: number, after: number]
  readonly stretchSeconds: number
  /** Conditions that were alike, and from where to where. */
  readonly conditions: readonly (Reach & { readonly measure: Measure })[]
}

/** A quantity that both runs have, and why it cannot be compared. */
export interface NotCompared {
  readonly id: ChangeId
  /** The condition that the runs do not have in common; null: not all at once, or for too short a time. */
  readonly condition: Measure | null
  readonly reaches: readonly [before: Reach, after: Reach] | null
}

export type ChangesNote =
  | 'other-days'
  | 'on-the-level'
  | 'speed-by-rpm'
  | 'no-temperature'
  | 'no-charge'
  | 'charge-assumed'
  | 'amps-by-sag'

/** Two runs, or a run and its build, compared. */
export interface Changes {
  readonly against: Against
  readonly changes: readonly Change[]
  readonly notCompared: readonly NotCompared[]
  readonly notes: readonly ChangesNote[]
}

/** A change with the chance of it where there is none. */
export interface Chanced {
  readonly change: Change
  readonly chance: number
}

/** Chance below which a difference counts as told, shared among all that is compared. *Source:* common practice. */
const toldBelow = 0.01

/**
 * Which differences are told from nothing: the least chance has to be below its part of one in a hundred, the next below a
 * larger one, up to the first that is not.
 *
 * *Source:* Holm, *Scandinavian Journal of Statistics* 6 (1979), from memory.
 */
export function judged(found: readonly Chanced[]): readonly Change[] {
  const order = found.toSorted((one, other) => one.chance - other.chance)
  const fails = order.findIndex(({ chance }, rank) => !(chance < toldBelow / (order.length - rank)))
  const passed = new Set(fails < 0 ? order : order.slice(0, fails))
  return found.map((one) => ({ ...one.change, told: passed.has(one) }))
}
