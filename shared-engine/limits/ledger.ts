import { caseNames, caseNumber, type CaseName } from '../cases/case.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import { groupRank, type LimitGroup } from './group.ts'
import type { LimitId } from './id.ts'
import { decides, limitOfNumber, standingOf, type Limit, type LimitUnit, type Standing } from './limit.ts'

/** Most rows that a build may reach: every common limit, some of each reduction, supply, accessory and wire. */
export const mostRows = 400

/**
 * All limits of one machine, measured. Its rows are filled again and again, and all that they
 * hold is numbers in typed arrays, so that a search allocates nothing.
 */
export class Ledger {
  /** Rows in use. */
  count = 0
  /** `Limit.number`, read by `limitAt`. */
  readonly limitNumbers = new Uint16Array(mostRows)
  /** Place in `caseNames`, of which there are fewer than 256. */
  readonly caseNumbers = new Uint8Array(mostRows)
  /** In the limit's unit; NaN where there is none to name (thermal runaway). */
  readonly actual = new Float64Array(mostRows)
  readonly allowed = new Float64Array(mostRows)
  /** 1 − the ratio of its sense; −Infinity where that can't be formed. */
  readonly margin = new Float64Array(mostRows)
  /** 1 where the theory behind a row is outside of what it was measured on. */
  readonly unsure = new Uint8Array(mostRows)
}

/** The limit of a row in use. */
export function limitAt(ledger: Ledger, row: number): Limit | undefined {
  return limitOfNumber(ledger.limitNumbers[row] ?? NaN)
}

function addRow(
  ledger: Ledger,
  limit: Limit,
  actual: number,
  allowed: number,
  margin: number,
  reached: number,
): void {
  const row = ledger.count
  ledger.limitNumbers[row] = limit.number
  ledger.caseNumbers[row] = reached
  ledger.actual[row] = actual
  ledger.allowed[row] = allowed
  ledger.margin[row] = margin
  ledger.unsure[row] = 0
  ledger.count = row + 1
}

/** Marks the rows from one on: shown without a verdict, counted all the same. */
export function doubtFrom(ledger: Ledger, first: number): void {
  ledger.unsure.fill(1, first, ledger.count)
}

/**
 * Margin of a maximum.
 *
 * margin = 1 − actual/allowed; none, and over, where allowed ≤ 0 or there is no actual (thermal runaway).
 *
 * @returns −Infinity where none can be formed
 * *Source:* `docs/model.md` §8.
 */
export function marginBelow(actual: number, allowed: number): number {
  return allowed > 0 && !Number.isNaN(actual) ? 1 - actual / allowed : -Infinity
}

/** Adds a maximum. */
export function addMaximum(
  ledger: Ledger,
  limit: Limit,
  actual: number,
  allowed: number,
  reached: number,
): void {
  addRow(ledger, limit, actual, allowed, marginBelow(actual, allowed), reached)
}

/**
 * Adds a minimum.
 *
 * margin = 1 − allowed/actual; none, and over, where actual ≤ 0.
 *
 * *Source:* `docs/model.md` §8.
 */
export function addMinimum(
  ledger: Ledger,
  limit: Limit,
  actual: number,
  allowed: number,
  reached: number,
): void {
  addRow(ledger, limit, actual, allowed, actual > 0 ? 1 - allowed / actual : -Infinity, reached)
}

/**
 * Adds a temperature.
 *
 * margin = (allowed − actual)/(allowed − T_s); none, and over, where T_s ≥ allowed or in runaway (`actual` NaN).
 *
 * *Source:* `docs/model.md` §8.
 */
export function addTemperature(
  ledger: Ledger,
  limit: Limit,
  actual: number,
  allowed: number,
  sink: number,
  reached: number = caseNumber.pattern,
): void {
  const formed = allowed > sink && !Number.isNaN(actual)
  addRow(ledger, limit, actual, allowed, formed ? (allowed - actual) / (allowed - sink) : -Infinity, reached)
}

/** What a cold limit counts from, °C: a room. *Source:* `docs/model.md` §8. */
const room = 20

/**
 * Adds a lowest temperature.
 *
 * margin = (actual − allowed)/(20 − allowed).
 *
 * *Source:* `docs/model.md` §8.
 */
export function addColdness(ledger: Ledger, limit: Limit, actual: number, allowed: number): void {
  addRow(ledger, limit, actual, allowed, (actual - allowed) / (room - allowed), caseNumber.rest)
}

/**
 * Smallest margin of ordinary use (`holds` and `lasts`); −Infinity where one can't be formed, Infinity where there is none.
 * What a mishap would break is no part of it.
 */
export function worstMargin(ledger: Ledger): number {
  let worst = Infinity
  for (let row = 0; row < ledger.count; row += 1) {
    const margin = ledger.margin[row] ?? Infinity
    if (margin < worst && decides(ledger.limitNumbers[row] ?? NaN)) worst = margin
  }
  return worst
}

/** One row of the ledger as shown and written; numbers in the limit's unit, null where they do not exist. */
export interface LimitRow {
  readonly id: LimitId
  readonly group: LimitGroup
  readonly actual: number | null
  readonly allowed: number | null
  readonly unit: LimitUnit
  readonly margin: number | null
  readonly standing: Standing
  readonly case: CaseName
  /** The theory behind it is outside of what it was measured on: a number without a verdict, counted all the same. */
  readonly unsure?: true
}

/**
 * The ledger's rows by group, in each the worst margin first; one that can't be formed stands before all, ties go by id.
 *
 * *Source:* `docs/model.md` §8.
 */
export function ledgerRows(ledger: Ledger): LimitRow[] {
  const order = Array.from({ length: ledger.count }, (_, row) => row)
  const marginAt = (row: number) => ledger.margin[row] ?? 0
  const idAt = (row: number) => limitAt(ledger, row)?.id ?? ''
  const rankAt = (row: number) => groupRank[limitAt(ledger, row)?.group ?? 'mishap']
  order.sort((one, other) => {
    if (rankAt(one) !== rankAt(other)) return rankAt(one) - rankAt(other)
    const [first, second] = [marginAt(one), marginAt(other)]
    if (first !== second) return first < second ? -1 : 1
    return idAt(one) < idAt(other) ? -1 : 1
  })
  return order.flatMap((row) => rowAt(ledger, row) ?? [])
}

function rowAt(ledger: Ledger, row: number): LimitRow | undefined {
  const limit = limitAt(ledger, row)
  const name = caseNames[ledger.caseNumbers[row] ?? NaN]
  if (limit === undefined || name === undefined) return undefined
  const margin = ledger.margin[row] ?? NaN
  return {
    id: limit.id,
    group: limit.group,
    actual: finiteOrNull(ledger.actual[row] ?? NaN),
    allowed: finiteOrNull(ledger.allowed[row] ?? NaN),
    unit: limit.unit,
    margin: finiteOrNull(margin),
    standing: standingOf(margin),
    case: name,
    ...(ledger.unsure[row] === 1 ? { unsure: true as const } : {}),
  }
}
