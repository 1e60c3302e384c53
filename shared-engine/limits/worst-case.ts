import { apart } from '../cases/case.ts'
import { dutyCaseNumbers } from '../cases/stage-duty.ts'
import { addMaximum, type Ledger } from './ledger.ts'
import type { Limit } from './limit.ts'

/**
 * Adds the worst of some cases, which one value allows; the first of equal ones. A case that does not arise is NaN; where
 * none arises, nothing is added.
 *
 * @param values by `dutyCase`
 * @param cases places in it
 */
export function addWorstOf(
  ledger: Ledger,
  limit: Limit,
  values: Float64Array,
  cases: readonly number[],
  allowed: number,
): void {
  let worst = NaN
  let reached = 0
  for (let at = 0; at < cases.length; at += 1) {
    const place = cases[at] ?? 0
    const value = values[place] ?? NaN
    if (Number.isNaN(value) || value <= worst * apart) continue
    worst = value
    reached = place
  }
  if (!Number.isNaN(worst)) addMaximum(ledger, limit, worst, allowed, dutyCaseNumbers[reached] ?? 0)
}

/** The same of values divided by what the case itself allows: the one with the worst margin is added. */
export function addWorstRatio(
  ledger: Ledger,
  limit: Limit,
  values: Float64Array,
  allowed: Float64Array,
  cases: readonly number[],
): void {
  let worst = NaN
  let reached = -1
  for (let at = 0; at < cases.length; at += 1) {
    const place = cases[at] ?? 0
    const value = values[place] ?? NaN
    const most = allowed[place] ?? NaN
    if (Number.isNaN(value) || Number.isNaN(most)) continue
    const ratio = most > 0 ? value / most : Infinity
    if (ratio <= worst * apart) continue
    worst = ratio
    reached = place
  }
  if (reached < 0) return
  addMaximum(ledger, limit, values[reached] ?? NaN, allowed[reached] ?? NaN, dutyCaseNumbers[reached] ?? 0)
}
