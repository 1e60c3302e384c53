import { formatFull, formatText } from '../units/display.ts'
import { kindUnits } from '../units/table.ts'
import type { QuantityKind } from '../units/kinds.ts'
import type { Working, WorkingStep, WorkingSymbol } from '../workings/working.ts'
import { wrapped } from './wrap.ts'

/** Width that every line keeps to. */
export const textWidth = 80

/**
 * A working as plain text within 80 columns: what the number is, each formula with its symbols and then with the numbers
 * put in, the result, the state it holds for, source and assumptions.
 *
 * Numbers are in the engine's units (SI), so that a formula can be redone as it stands.
 */
export function workingText(working: Working): string {
  const { subject, title, symbols, steps, state, source, assumptions, missing } = working
  const known = new Map<string, string>()
  for (const { symbol, value, kind } of [...symbols, ...steps]) {
    if (value !== null) known.set(symbol, plainNumber(value, kind))
  }
  const parts = [
    [...wrapped(title, textWidth), `(${subject})`],
    symbols.length === 0 ? [] : ['Put in', ...symbols.flatMap(symbolLines)],
    steps.length === 0 ? [] : ['Worked out', ...steps.flatMap((step) => stepLines(step, known))],
    missing === undefined ? [] : wrapped(`No result: ${missing}`, textWidth, '  '),
    labelled('State', state),
    labelled('Source', source),
    ...assumptions.map((assumption) => labelled('Assumption', assumption)),
  ]
  const [head = [], put = [], worked = [], none = [], ...notes] = parts
  const blocks = [head, put, worked, none, notes.flat()].filter((lines) => lines.length > 0)
  return blocks.map((lines) => lines.join('\n')).join('\n\n') + '\n'
}

const labelled = (label: string, text: string) =>
  text === '' ? [] : wrapped(`${label}: ${text}`, textWidth, '  ')

/** Unit as the formula needs it: the engine's. */
const engineUnit = (kind: QuantityKind) => kindUnits[kind].engine

/** A number as it is put into a formula: seven figures, no thousands; a dash where it does not exist. */
function plainNumber(value: number | null, kind: QuantityKind): string {
  if (value === null || !Number.isFinite(value)) return formatText(null, kind, 'metric')
  return formatFull(Number(value.toPrecision(7)), kind, 'metric', engineUnit(kind)).text
}

function quantity(value: number | null, kind: QuantityKind): string {
  const unit = engineUnit(kind)
  return unit === '' || value === null ? plainNumber(value, kind) : `${plainNumber(value, kind)} ${unit}`
}

/** As a person reads it, where that says more than the engine's unit does. */
function readably(value: number | null, kind: QuantityKind): string {
  const shown = formatText(value, kind, 'metric').replace('\u202F', ' ')
  return value === null || shown.endsWith(` ${engineUnit(kind)}`) || engineUnit(kind) === ''
    ? ''
    : ` (${shown})`
}

function symbolLines({ symbol, name, value, kind, from }: WorkingSymbol): readonly string[] {
  const origin = from === undefined ? '' : ` [${from}]`
  return wrapped(`${symbol} = ${quantity(value, kind)}, ${name}${origin}`, textWidth, '      ', '  ')
}

function stepLines(step: WorkingStep, known: ReadonlyMap<string, string>): readonly string[] {
  const { symbol, name, expression, words, value, kind } = step
  const lines = [...wrapped(name, textWidth, '    ', '  ')]
  if (words !== undefined) lines.push(...wrapped(words, textWidth, '      ', '    '))
  if (expression !== null) {
    lines.push(...wrapped(`${symbol} = ${expression}`, textWidth, '      ', '    '))
    const put = putIn(expression, known)
    if (put !== expression && put !== plainNumber(value, kind))
      lines.push(...wrapped(`= ${put}`, textWidth, '      ', '      '))
  }
  const left = expression === null ? `    ${symbol} ` : '      '
  lines.push(...wrapped(`= ${quantity(value, kind)}${readably(value, kind)}`, textWidth, '      ', left))
  return lines
}

/** The expression with numbers for its symbols; function names and symbols without a number stay. */
export function putIn(expression: string, known: ReadonlyMap<string, string>): string {
  return expression.replace(/[\p{L}][\p{L}\p{N}_']*/gu, (symbol, at: number) => {
    const number = known.get(symbol)
    if (number === undefined) return symbol
    const negative = /^[-−]/.test(number) || number.includes('e')
    const alone = expression.trim() === symbol && at === 0
    return negative && !alone ? `(${number})` : number
  })
}
