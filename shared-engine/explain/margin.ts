import { limitOf } from '../limits/table.ts'
import type { LimitRow } from '../limits/ledger.ts'
import type { Checked } from '../check.ts'
import type { Draft } from './draft.ts'
import { firstOf, inCase, needing, needingTop, type Missing, type Subject } from './subject.ts'

/** The ledger’s row of a limit; undefined where it is left out. */
export function rowOf(checked: Checked, id: string): LimitRow | undefined {
  return checked.limits.find((row) => row.id === id)
}

/** What a limit’s working is made from. */
export interface LimitSubject {
  readonly title: string
  readonly source: string
  readonly assumptions?: readonly string[]
  /** Whether there is nothing to compare without a top speed. */
  readonly afterTop?: boolean
  /** Why it is left out of the ledger, beside entries and top speed. */
  readonly missing?: (checked: Checked) => Missing | null
  /** Why the margin can’t be formed. */
  readonly unformed?: string
  /** Writes actual and allowed. @returns their symbols, and the sink’s for a temperature */
  readonly write: (draft: Draft, row: LimitRow) => Compared
}

/** Symbols that a margin compares. */
export interface Compared {
  readonly actual: string
  readonly allowed: string
  readonly sink?: string
}

const rules = {
  maximum: {
    expression: ({ actual, allowed }: Compared) => `1 - ${actual} / ${allowed}`,
    words: 'margin to what may not be passed',
  },
  minimum: {
    expression: ({ actual, allowed }: Compared) => `1 - ${allowed} / ${actual}`,
    words: 'margin above the least that does',
  },
  temperature: {
    expression: ({ actual, allowed, sink = 'T_s' }: Compared) =>
      `(${allowed} - ${actual}) / (${allowed} - ${sink})`,
    words: 'margin, counted from what cools it',
  },
} as const

/** A limit as a subject: its steps, then actual against allowed as a margin. */
export function limitSubject(id: string, limit: LimitSubject): Subject {
  const { sense = 'maximum', needs = [] } = limitOf(id) ?? {}
  return {
    title: limit.title,
    source: limit.source,
    ...(limit.assumptions === undefined ? {} : { assumptions: limit.assumptions }),
    state: (checked) => inCase(rowOf(checked, id)?.case ?? 'build'),
    missing: (checked) => {
      const row = rowOf(checked, id)
      if (row === undefined) return leftOut(checked, limit, needs)
      if (row.margin !== null) return null
      return unformed(checked, limit, row)
    },
    write: (d) => {
      const row = rowOf(d.checked, id)
      if (row === undefined) return
      const compared = limit.write(d, row)
      const { expression, words } = rules[sense]
      d.step('margin', ['fraction', words], expression(compared), row.margin ?? NaN)
    },
  }
}

function leftOut(checked: Checked, limit: LimitSubject, needs: readonly string[]): Missing {
  const own = limit.missing ?? (() => null)
  const top = limit.afterTop === true ? needingTop : () => null
  const reason = firstOf(needing(...needs), own, top)(checked)
  return reason ?? { why: 'this machine does not have it.' }
}

/** The margin can’t be formed: the steps that say why are shown without it. */
function unformed(checked: Checked, limit: LimitSubject, row: LimitRow): Missing {
  const own = limit.missing?.(checked) ?? null
  if (own !== null) return own
  return {
    why: limit.unformed ?? 'actual and allowed can’t be compared as a ratio: it counts as over.',
    show: (d) => {
      const { actual, allowed, sink } = limit.write(d, row)
      const scale = sink === undefined ? '' : ` counted from ${sink}`
      d.found(
        'margin',
        ['fraction', 'margin'],
        `none: ${actual} against ${allowed}${scale} makes no ratio`,
        NaN,
      )
    },
  }
}
