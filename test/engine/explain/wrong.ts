import { fieldOf, groups } from '../../../shared-engine/entries/fields.ts'
import { keysOf, patternOf, valueAt } from '../../../shared-engine/entries/path.ts'
import type { Checked } from '../../../shared-engine/check.ts'
import { figureOf, figureTable } from '../../../shared-engine/figures/table.ts'
import { limitsOf } from '../../../shared-engine/limits/table.ts'
import { workingText } from '../../../shared-engine/explain/text.ts'
import type { Working } from '../../../shared-engine/workings/working.ts'
import { workingOf } from '../../../shared-engine/explain/table.ts'
import { replay, roundingOf, symbolsOf } from './replay.ts'

/** Names of all figures, and ids of all limits that are in the ledger or could be, with their entries given. */
const subjectsOf = ({ machine }: Checked): readonly string[] => [
  ...figureTable.map((figure) => figure.name),
  ...limitsOf(machine).map((limit) => limit.id),
]

/** 1e-9: closed forms, worked out in another order of the same operations. */
const closeness = 1e-9

/** Below it a double loses its digits. */
const smallest = 1e-290

/** What is wrong with a working's algebra. */
function wrongSteps(working: Working): string[] {
  const known: Record<string, number> = {}
  for (const { symbol, value } of working.symbols) if (value !== null) known[symbol] = value
  const wrong: string[] = []
  for (const { symbol, expression, value, words } of working.steps) {
    if (expression === null && (words ?? '') === '') wrong.push(`${symbol}: neither algebra nor words`)
    if (expression !== null) {
      for (const name of symbolsOf(expression))
        if (!(name in known)) wrong.push(`${symbol} uses ${name}, unknown`)
      if (value === null) wrong.push(`${symbol} = ${expression} has no value`)
      else if (wrong.length === 0) {
        const again = replay(expression, known)
        const gap = Math.abs(again - value)
        const near = closeness * Math.abs(value) + smallest
        if (!(gap <= near || gap <= near + roundingOf(expression, known))) {
          wrong.push(`${symbol} = ${expression} gives ${again}, not ${value}`)
        }
      }
    }
    if (symbol in known) wrong.push(`${symbol} is told twice`)
    if (value !== null) known[symbol] = value
  }
  return wrong
}

/** Symbols that steps speak of: in algebra, or in the words of a root or an integral. */
function usedIn(steps: Working['steps']): ReadonlySet<string> {
  return new Set(
    steps.flatMap(({ expression, words = '' }) =>
      expression === null ? words.split(/[^A-Za-z0-9_]+/) : [...symbolsOf(expression)],
    ),
  )
}

/** Steps that lead nowhere: used by no other, and without a word why they are there. */
function idleSteps({ steps }: Working): string[] {
  const used = usedIn(steps)
  return steps
    .slice(0, -1)
    .filter(({ symbol, words }) => !used.has(symbol) && words === undefined)
    .map(({ symbol }) => `step ${symbol} is not used`)
}

/** What is wrong with a working's symbols: unused, or from nowhere. */
function wrongSymbols(working: Working, { build }: Checked): string[] {
  const used = usedIn(working.steps)
  return working.symbols.flatMap(({ symbol, name, from }) => {
    const wrong: string[] = []
    if (name === '') wrong.push(`${symbol} has no words`)
    if (!used.has(symbol)) wrong.push(`${symbol} is not used`)
    if (from === undefined) return wrong
    if (from.startsWith('figure:')) {
      if (figureOf(from.slice('figure:'.length)) === undefined) wrong.push(`${symbol}: no ${from}`)
    } else {
      if (fieldOf(from) === undefined && groups[patternOf(from)] === undefined)
        wrong.push(`${symbol}: no entry ${from}`)
      if (valueAt(build, keysOf(from)) === undefined) wrong.push(`${symbol}: ${from} is not in force`)
    }
    return wrong
  })
}

/** 1e-6: what the contract holds roots to. */
const rootCloseness = 1e-6

/** At a speed that is a root, thrust F and resistance R_v are one number, worked out in two ways. */
function wrongRoot({ steps }: Working): string[] {
  const valueOf = (symbol: string) => steps.find((step) => step.symbol === symbol)?.value ?? undefined
  const [thrust, resistance, start = 0] = [valueOf('F'), valueOf('R_v'), valueOf('F_st')]
  if (thrust === undefined || resistance === undefined) return []
  const allowed = rootCloseness * resistance + 1e-12 * Math.abs(start) // F may be a small difference from F_st
  return Math.abs(thrust - resistance) <= allowed ? [] : [`thrust ${thrust} but resistance ${resistance}`]
}

/** What is wrong with a working's end: its last step is the figure's value, or the limit's margin. */
function wrongResult(working: Working, checked: Checked): string[] {
  const figure = figureOf(working.subject)
  const row = checked.limits.find((limit) => limit.id === working.subject)
  const owed = figure === undefined ? (row?.margin ?? null) : checked.figures[figure.name]
  if (owed === null) return working.missing === undefined ? ['no value, and not said why'] : []
  if (working.missing !== undefined) return [`missing, though the value is ${owed}: ${working.missing}`]
  const last = working.steps.at(-1)
  return last?.value === owed ? [] : [`ends in ${last?.value}, not in ${owed}`]
}

/** What is wrong with a working's words and numbers. */
function wrongWords(working: Working): string[] {
  const wrong: string[] = []
  for (const key of ['title', 'state', 'source'] as const)
    if (working[key].trim() === '') wrong.push(`no ${key}`)
  if (!working.title.endsWith('.')) wrong.push('the title is no sentence')
  if (/NaN|Infinity|undefined|null/.test(JSON.stringify(working).replace(/"(value|expression)":null/g, '')))
    wrong.push('NaN')
  for (const line of workingText(working).split('\n'))
    if (line.length > 80) wrong.push(`wider than 80: ${line}`)
  return wrong
}

/** Everything that is wrong with one working. */
export function wrongWith(working: Working, checked: Checked): string[] {
  return [
    ...wrongSteps(working),
    ...wrongSymbols(working, checked),
    ...idleSteps(working),
    ...wrongRoot(working),
    ...wrongResult(working, checked),
    ...wrongWords(working),
  ]
}

/** Everything that is wrong with the workings of a build; empty where each says what the engine did. */
export function wrongIn(checked: Checked): string[] {
  return subjectsOf(checked).flatMap((subject) => {
    const working = workingOf(checked, subject)
    const owed = figureOf(subject) !== undefined || checked.limits.some((row) => row.id === subject)
    if (working === null) return owed ? [`${subject}: no working`] : []
    return wrongWith(working, checked).map((what) => `${subject}: ${what}`)
  })
}
