import { worstRow } from '../../../shared-engine/limits/worst.ts'
import { tableCsv } from '../../../shared-engine/draw/table.ts'
import type { CandidateChoice } from '../../../shared-engine/search/candidate-build.ts'
import type { SearchOutcome } from '../../../shared-engine/search/outcome.ts'
import type { SearchRow } from '../../../shared-engine/search/row.ts'
import { holdText, verdictOf } from '../../../shared-engine/search/verdict.ts'
import type { SearchPlan } from '../../../shared-engine/search/space.ts'
import { jsonText } from '../json.ts'

/** Entries of a candidate by path, a motor by its name. */
const entriesOf = (choices: readonly CandidateChoice[]) =>
  Object.fromEntries(choices.map(({ path, value, motor }) => [path, motor?.name ?? value]))

/** The result of a search for programs: SI numbers, entries in the build's own units. */
export function searchJson(plan: SearchPlan, outcome: SearchOutcome, stopped: boolean): string {
  const { looked, sound, holding, frontCount, unsound } = outcome
  const names = plan.aims.map(({ measure }) => measure.name)
  const data = {
    format: 'pitchline-search',
    version: 1,
    name: plan.stored.name,
    stopped,
    candidates: { total: plan.total, looked, sound, holding },
    verdict: verdictOf(outcome, 'metric'),
    aims: plan.aims.map(({ measure, best }) => ({ figure: measure.name, best })),
    holds: outcome.holds.map(({ hold, breaking, breakingAlone, best, bestChoices }) => ({
      name: hold.type === 'margin' ? hold.limit.id : hold.measure.name,
      what: hold.type,
      asked: hold.type === 'margin' ? hold.least : hold.type === 'exists' ? null : hold.bound,
      breaking,
      breakingAlone,
      best,
      bestChoices: entriesOf(bestChoices),
    })),
    neverTogether: outcome.neverTogether.map((pair) => pair.map((hold) => holdText(hold, 'metric'))),
    unsound: unsound.map(({ mistake: { code, path, value, allowed }, count }) => ({
      code,
      path,
      value,
      allowed,
      count,
    })),
    frontCount,
    rows: outcome.rows.map((row) => rowData(row, names)),
    closest: outcome.closest === null ? null : rowData(outcome.closest, names),
  }
  return jsonText(data)
}

function rowData(row: SearchRow, names: readonly string[]) {
  return {
    choices: entriesOf(row.choices),
    aims: Object.fromEntries(names.map((name, at) => [name, row.aims[at] ?? null])),
    margin: row.margin,
    alternatives: { count: row.alternatives.count, choices: row.alternatives.choices.map(entriesOf) },
    figures: row.figures,
    limits: row.limits,
  }
}

/** The rows of a search as a table: entries, worst margin, then every figure in SI under its name. */
export function searchCsv(plan: SearchPlan, { rows }: SearchOutcome): string {
  const figures = Object.keys(rows[0]?.figures ?? {}) as (keyof SearchRow['figures'])[]
  const own = plan.aims.flatMap(({ measure }, at) =>
    measure.name in (rows[0]?.figures ?? {}) ? [] : [{ measure, at }],
  )
  const names = [
    ...plan.axes.map((axis) => axis.path),
    'worstMargin',
    'worstLimit',
    'alternatives',
    ...own.map(({ measure }) => measure.name).filter((name) => name !== 'worstMargin'),
    ...figures,
  ]
  const lines = rows.map((row) => [
    ...row.choices.map(({ value, motor }) => motor?.name ?? value),
    row.margin,
    worstRow(row.limits)?.id ?? '',
    row.alternatives.count,
    ...own.filter(({ measure }) => measure.name !== 'worstMargin').map(({ at }) => row.aims[at] ?? null),
    ...figures.map((name) => row.figures[name]),
  ])
  return tableCsv({ columns: names.map((label) => ({ label, unit: '' })), rows: lines })
}
