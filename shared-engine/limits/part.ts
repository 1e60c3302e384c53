import type { LimitWorking } from '../workings/limit.ts'
import type { LimitId } from './id.ts'
import { listedLimit, type Limit, type LimitFacts, type PartName } from './limit.ts'

/** A limit as its part writes it down, under its id: facts and working in one place. */
export interface PartLimitFacts extends LimitFacts {
  readonly working: LimitWorking
}

/**
 * The limits of a part by id, in the ledger's order.
 *
 * @param facts their keys are the ids that `LimitId` knows
 */
export function limitsOfPart<Id extends LimitId>(
  part: PartName,
  facts: Readonly<Record<Id, PartLimitFacts>>,
): Readonly<Record<Id, Limit>> {
  const made = Object.entries<PartLimitFacts>(facts).map(([id, limit]) => [
    id,
    listedLimit({ ...limit, id: id as Id, part }),
  ])
  return Object.fromEntries(made) as Record<Id, Limit>
}

/**
 * Shows the compiler that a part measures every limit that it lists: what is left of the list when the ones that its
 * measuring function uses are taken out. One function measures a whole part, because a search asks for all of them: a
 * call for each took about 1.5 times as long, in one run on a loaded machine. (Lint finds one that is taken out and not used.)
 */
export function allMeasured(_unmeasured: Readonly<Record<string, never>>): void {
  // Nothing is left to do at run time.
}
