import type { Checked } from '../check.ts'
import type { Limit } from '../limits/limit.ts'
import type { LimitRow } from '../limits/ledger.ts'
import type { Compared, LimitWorking } from '../workings/limit.ts'
import { firstOf, inCase, needing, needingTop, type Missing } from '../workings/subject.ts'
import type { Subject } from '../workings/subject.ts'

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
  coldness: {
    expression: ({ actual, allowed }: Compared) => `(${actual} - ${allowed}) / (20 - ${allowed})`,
    words: 'margin, counted from a room at 20 °C',
  },
} as const

/** A limit as a subject: its steps, then actual against allowed as a margin. */
export function limitSubject(checked: Checked, { id, sense, needs, working: limit }: Limit): Subject {
  const row = checked.limits.find((one) => one.id === id)
  return {
    title: limit.title,
    source: limit.source,
    ...(limit.assumptions === undefined ? {} : { assumptions: limit.assumptions }),
    state: inCase(row?.case ?? 'build'),
    missing: () => {
      if (row === undefined) return leftOut(checked, limit, needs)
      return row.margin === null ? unformed(checked, limit, row) : null
    },
    write: (d) => {
      if (row === undefined) return
      const compared = limit.write(d, row)
      const { expression, words } = rules[sense]
      d.step('margin', ['fraction', words], expression(compared))
    },
  }
}

function leftOut(checked: Checked, limit: LimitWorking, needs: readonly string[]): Missing {
  const own = limit.missing ?? (() => null)
  const top = limit.afterTop === true ? needingTop : () => null
  const reason = firstOf(needing(...needs), own, top)(checked)
  return reason ?? { why: 'this machine does not have it.' }
}

/** The margin can’t be formed: the steps that say why are shown without it. */
function unformed(checked: Checked, limit: LimitWorking, row: LimitRow): Missing {
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
