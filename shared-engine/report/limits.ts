import { caseWords, type CaseName } from '../cases/case.ts'
import type { Checked } from '../check.ts'
import { fieldOf, groups } from '../entries/fields.ts'
import { patternOf } from '../entries/path.ts'
import { mishapsOf, mishapSentence } from '../explain/mishaps.ts'
import { groupWords, limitGroups } from '../limits/group.ts'
import type { LimitRow } from '../limits/ledger.ts'
import { isLeast, type Standing } from '../limits/limit.ts'
import { marginText } from '../limits/margin-words.ts'
import { limitOf } from '../limits/table.ts'
import { displayUnit, format } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { heading, list, numbers, quiet, text, words, type Block, type Row } from './block.ts'

const standingWords: Readonly<Record<Standing, string>> = { over: 'Over', near: 'Near', within: 'Within' }

const columns = [
  words('Limit', 50),
  numbers('Reached', 11),
  words('', 3),
  numbers('Allowed', 11),
  words('Unit', 9),
  numbers('Margin', 11),
  words('Stands', 13),
  words('Case', 12),
]

/** One limit as a row; actual and allowed in the same unit. */
function limitRow(row: LimitRow, system: UnitSystem): Row {
  const limit = limitOf(row.id)
  const kind = limit?.kind ?? 'none'
  const unit = displayUnit(kind, system, row.allowed ?? row.actual ?? 0)
  const [actual, allowed] = [row.actual, row.allowed].map((value) => format(value, kind, system, unit).text)
  const stands = `${standingWords[row.standing]}${row.unsure === true ? ', unsure' : ''}`
  const sign = isLeast(limit?.sense) ? '≥' : '≤'
  const cells = [
    limit?.label ?? row.id,
    actual ?? '',
    sign,
    allowed ?? '',
    unit,
    marginText(row.margin, limit?.sense),
    stands,
    row.case,
  ]
  return row.standing === 'within' ? { cells } : { cells, tone: row.standing }
}

/** The ledger in its groups, worst first, and what the cases in it are. */
export function limitBlocks({ limits }: Checked, system: UnitSystem): readonly Block[] {
  if (limits.length === 0) return [text('No limit can be checked with these entries.')]
  const tables = limitGroups.flatMap((group): Block[] => {
    const rows = limits.filter((row) => row.group === group)
    if (rows.length === 0) return []
    return [
      heading(groupWords[group]),
      { block: 'table', columns, rows: rows.map((row) => limitRow(row, system)) },
    ]
  })
  const cases = [...new Set(limits.map((row) => row.case))].toSorted()
  return [
    ...tables,
    quiet('Near: less than 20 % in hand. The cases are:'),
    list(cases.map((name: CaseName) => `${name}: ${caseWords[name]}`)),
  ]
}

const closeColumns = [
  words('Limit', 44),
  numbers('Reached, allowed', 27),
  numbers('Margin', 13),
  words('Case', 16),
]

/** The same row closely: "1,763 ≤ 2,500 N" in one cell, a word only where it is near or over. */
function closeRow(row: LimitRow, system: UnitSystem): Row {
  const { cells, ...rest } = limitRow(row, system)
  const [label = '', actual = '', sign = '', allowed = '', unit = '', margin = '', stands = '', at = ''] =
    cells
  const standing = row.standing === 'within' && row.unsure !== true ? '' : `${stands}, `
  return {
    cells: [label, `${actual} ${sign} ${allowed} ${unit}`.trim(), margin, `${standing}${at}`],
    ...rest,
  }
}

/** The ledger in its groups, closely set. */
export function closeLimitBlocks({ limits }: Checked, system: UnitSystem): readonly Block[] {
  if (limits.length === 0) return [text('No limit can be checked with these entries.')]
  const cases = [...new Set(limits.map((row) => row.case))].toSorted()
  return [
    ...limitGroups.flatMap((group): Block[] => {
      const rows = limits.filter((row) => row.group === group).map((row) => closeRow(row, system))
      return rows.length === 0
        ? []
        : [heading(groupWords[group]), { block: 'table', columns: closeColumns, rows }]
    }),
    quiet(
      `Near: less than 20 % in hand. Cases: ${cases.map((name: CaseName) => `${name}: ${caseWords[name]}`).join('; ')}.`,
    ),
  ]
}

/** What was not judged, in one piece: each with what it lacks. */
export function notJudgedRuns(checked: Checked): readonly Block[] {
  const rows = notJudgedBlocks(checked).flatMap((block) => (block.block === 'table' ? block.rows : []))
  const each = rows.map(({ cells: [labels = '', lacks = ''] }) => `${labels} (lacks: ${lacks.toLowerCase()})`)
  return each.length === 0 ? [] : [text(`What is not judged is not safe by that. ${each.join('; ')}.`)]
}

/** What passes a limit in a mishap, a sentence each. */
export function mishapBlocks(checked: Checked, system: UnitSystem): readonly Block[] {
  const found = mishapsOf(checked)
  if (found.length > 0) return [list(found.map((mishap) => mishapSentence(mishap, system)))]
  const looked = checked.limits.filter(({ group }) => group === 'mishap').length
  return [
    text(
      looked > 0
        ? `A jam at top speed, or running free at full charge, breaks nothing of the ${looked} things that were looked at.`
        : 'A jam cannot be judged yet: the rotor’s inertia, the drive tooth and the loop’s stiffness would bring it.',
    ),
  ]
}

const nameOf = (path: string) => fieldOf(path)?.label ?? groups[patternOf(path)]?.label ?? path

/** Limits that could apply and lack an entry, under the entries that would bring them. */
export function notJudgedBlocks({ notJudged }: Checked): readonly Block[] {
  if (notJudged.length === 0) return []
  const keys = [...new Set(notJudged.map(({ needs }) => needs.join(' ')))]
  const rows = keys.map((key): Row => {
    const labels = notJudged
      .filter(({ needs }) => needs.join(' ') === key)
      .map(({ id }) => limitOf(id)?.label ?? id)
    const needs = key === '' ? [] : key.split(' ')
    const missing = needs.length === 0 ? 'A top speed' : needs.map(nameOf).join(', ')
    return { cells: [labels.join('; '), missing, needs.join(', ')] }
  })
  return [
    text('What is not judged is not safe by that.'),
    {
      block: 'table',
      columns: [words('Not judged', 45), words('Lacks', 30), words('In the file', 25)],
      rows,
    },
  ]
}
