import type { Machine } from '../build/machine-parts.ts'
import type { CaseName } from '../cases/case.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { QuantityKind } from '../units/kinds.ts'

/** A maximum may not be passed, a minimum not fallen short of; a temperature counts from its sink. */
export type LimitSense = 'maximum' | 'minimum' | 'temperature'

export type LimitUnit = 'rpm' | 'A' | 'V' | 'degC' | 'Pa' | 'N' | 'W' | 'm/s' | '1'

export type Standing = 'within' | 'near' | 'over'

/** Part of the machine that a limit, a field or a drawing belongs to. Stages count from 1. */
export type PartName =
  | 'pack'
  | 'controller'
  | 'motor'
  | `stage.${number}`
  | 'track'
  | 'vehicle'
  | 'ground'
  | 'cooling'
  | 'accessories'
  | 'service'

/** Question of the window whose plots show a limit's place. */
export type Question = 'fast' | 'hold' | 'hot'

/** What a limit measures on one machine; filled again and again. */
export class LimitMeasure {
  /** In the limit's unit; NaN where there is none to name (thermal runaway). */
  actual = NaN
  allowed = NaN
  case: CaseName = 'build'
  /** 1 − the ratio of its sense; −Infinity where that can't be formed. */
  margin = NaN
}

/** One line of the ledger: what is compared with what, and where it shows. */
export interface Limit {
  readonly id: string
  /** In a builder's words: "Tooth shear". */
  readonly label: string
  readonly part: PartName
  readonly question: Question
  readonly sense: LimitSense
  readonly unit: LimitUnit
  readonly kind: QuantityKind
  /** Optional entries without which it is left out of the ledger. */
  readonly needs: readonly string[]
  /** Fills the measure; false where the limit does not apply to this machine. */
  measure(out: LimitMeasure, e: Evaluation, machine: Machine): boolean
}

/** A limit with its parts always in this order: one shape in memory, so that a search reads each in one step. */
export function defineLimit(limit: Limit): Limit {
  const { id, label, part, question, sense, unit, kind, needs, measure } = limit
  return { id, label, part, question, sense, unit, kind, needs, measure }
}

/** A list of them. */
export function defineLimits(limits: readonly Limit[]): readonly Limit[] {
  return limits.map(defineLimit)
}

/** Margin from which a limit counts as kept with something in hand. *Source:* common practice, no source. */
export const withinMargin = 0.2

/** Standing of a margin; −Infinity, a margin that can't be formed, is over. */
export function standingOf(margin: number): Standing {
  if (margin >= withinMargin) return 'within'
  return margin >= 0 ? 'near' : 'over'
}

/**
 * Sets a maximum's measure.
 *
 * margin = 1 − actual/allowed; none, and over, where allowed ≤ 0.
 *
 * *Source:* engine contract §8.
 */
export function setMaximum(out: LimitMeasure, actual: number, allowed: number, name: CaseName): true {
  out.actual = actual
  out.allowed = allowed
  out.case = name
  out.margin = allowed > 0 ? 1 - actual / allowed : -Infinity
  return true
}

/**
 * Sets a minimum's measure.
 *
 * margin = 1 − allowed/actual; none, and over, where actual ≤ 0.
 *
 * *Source:* engine contract §8.
 */
export function setMinimum(out: LimitMeasure, actual: number, allowed: number, name: CaseName): true {
  out.actual = actual
  out.allowed = allowed
  out.case = name
  out.margin = actual > 0 ? 1 - allowed / actual : -Infinity
  return true
}

/**
 * Sets a temperature's measure.
 *
 * margin = (allowed − actual)/(allowed − T_s); none, and over, where T_s ≥ allowed or in runaway (`actual` NaN).
 *
 * *Source:* engine contract §8.
 */
export function setTemperature(out: LimitMeasure, actual: number, allowed: number, sink: number): true {
  out.actual = actual
  out.allowed = allowed
  out.case = 'steady'
  const formed = allowed > sink && !Number.isNaN(actual)
  out.margin = formed ? (allowed - actual) / (allowed - sink) : -Infinity
  return true
}

/** Replaces the measure by a case that is worse; the first of two equal ones stays. */
export function worsenMaximum(out: LimitMeasure, actual: number, allowed: number, name: CaseName): void {
  const margin = allowed > 0 ? 1 - actual / allowed : -Infinity
  if (margin < out.margin) {
    out.actual = actual
    out.allowed = allowed
    out.case = name
    out.margin = margin
  }
}
