import type { Machine } from '../build/machine-parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { CaseName } from '../cases/case.ts'
import { converterLimits } from './converter.ts'
import { LimitMeasure, standingOf, type Limit, type LimitUnit, type Standing } from './limit.ts'
import { limitsOfKind } from './stage.ts'
import { commonLimits } from './table.ts'

/** All limits of one machine, measured; its rows are filled again and again, so that a search allocates nothing. */
export class Ledger {
  /** Rows in use. */
  count = 0
  readonly limits: Limit[] = []
  readonly measures: LimitMeasure[] = []
}

/** Measures every limit that applies. */
export function measureLedger(ledger: Ledger, e: Evaluation, machine: Machine): void {
  ledger.count = 0
  measureAll(ledger, commonLimits, e, machine)
  for (let index = 0; index < machine.stages.length; index += 1) {
    const stage = machine.stages[index]
    if (stage !== undefined) measureAll(ledger, limitsOfKind(stage.kind, index), e, machine)
  }
  const converters = machine.accessories.converters.length
  for (let index = 0; index < converters; index += 1) {
    const limit = converterLimits[index]
    if (limit !== undefined) measureOne(ledger, limit, e, machine)
  }
}

function measureAll(ledger: Ledger, limits: readonly Limit[], e: Evaluation, machine: Machine): void {
  for (const limit of limits) measureOne(ledger, limit, e, machine)
}

function measureOne(ledger: Ledger, limit: Limit, e: Evaluation, machine: Machine): void {
  const measure = (ledger.measures[ledger.count] ??= new LimitMeasure())
  if (!limit.measure(measure, e, machine)) return
  ledger.limits[ledger.count] = limit
  ledger.count += 1
}

/** Smallest margin; −Infinity where one can't be formed, Infinity of an empty ledger. */
export function worstMargin(ledger: Ledger): number {
  let worst = Infinity
  for (let index = 0; index < ledger.count; index += 1) {
    worst = Math.min(worst, ledger.measures[index]?.margin ?? Infinity)
  }
  return worst
}

/** One row of the ledger as shown and written; numbers in the limit's unit, null where they do not exist. */
export interface LimitRow {
  readonly id: string
  readonly actual: number | null
  readonly allowed: number | null
  readonly unit: LimitUnit
  readonly margin: number | null
  readonly standing: Standing
  readonly case: CaseName
}

/**
 * The ledger's rows, worst margin first; a margin that can't be formed stands before all, ties go by id.
 *
 * *Source:* engine contract §8.
 */
export function ledgerRows(ledger: Ledger): LimitRow[] {
  const order = Array.from({ length: ledger.count }, (_, index) => index)
  const marginAt = (index: number) => ledger.measures[index]?.margin ?? 0
  const idAt = (index: number) => ledger.limits[index]?.id ?? ''
  order.sort((one, other) => {
    const [first, second] = [marginAt(one), marginAt(other)]
    if (first !== second) return first < second ? -1 : 1
    return idAt(one) < idAt(other) ? -1 : 1
  })
  return order.flatMap((index) => {
    const limit = ledger.limits[index]
    const measure = ledger.measures[index]
    return limit === undefined || measure === undefined ? [] : [rowOf(limit, measure)]
  })
}

function rowOf(limit: Limit, measure: LimitMeasure): LimitRow {
  return {
    id: limit.id,
    actual: finite(measure.actual),
    allowed: finite(measure.allowed),
    unit: limit.unit,
    margin: finite(measure.margin),
    standing: standingOf(measure.margin),
    case: measure.case,
  }
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null
}
