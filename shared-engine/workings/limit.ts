import type { CaseName } from '../cases/case.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import type { Draft } from './draft.ts'
import type { Missing } from './subject.ts'

/** What the ledger says of a limit. */
export interface ComparedRow {
  readonly actual: number | null
  readonly allowed: number | null
  readonly case: CaseName
}

/** What a limit’s working is made from. */
export interface LimitWorking {
  readonly title: string
  readonly source: string
  readonly assumptions?: readonly string[]
  /** Whether there is nothing to compare without a top speed. */
  readonly afterTop?: boolean
  /** Why it is left out of the ledger, beside entries and top speed. */
  readonly missing?: (checked: Evaluated) => Missing | null
  /** Why the margin can’t be formed. */
  readonly unformed?: string
  /** Writes actual and allowed. @returns their symbols, and the sink’s for a temperature */
  readonly write: (draft: Draft, row: ComparedRow) => Compared
}

/** Symbols that a margin compares. */
export interface Compared {
  readonly actual: string
  readonly allowed: string
  readonly sink?: string
}
