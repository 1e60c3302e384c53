import { logUnits, missingWords } from '../../reference/columns.ts'

export type DecimalMark = '.' | ','

/** A cell that holds no value on purpose. */
const missing = NaN
/** A cell that is filled with something that is no number. Infinities count as missing, so this one is free. */
export const unreadable = Infinity

const powers = Array.from({ length: 19 }, (_, power) => 10 ** power)
const mostExact = 2 ** 53

/**
 * Reads a plain decimal number, the shape of nearly every cell: sign, digits, mark, digits.
 *
 * Its digits as a whole number over a power of ten, both exact, so that the quotient is the nearest double.
 *
 * @param mark character code of the decimal mark
 * @returns `unreadable` where the cell has another shape, which {@link readNumber} looks at more closely
 * *Source:* Clinger, How to Read Floating Point Numbers Accurately, PLDI 1990: the exact case.
 */
export function plainNumber(cell: string, mark: number): number {
  const length = cell.length
  if (length === 0 || length > 18) return unreadable
  let place = 0
  const first = cell.charCodeAt(0)
  if (first === 45 || first === 43) place = 1
  let digits = 0
  let after = -1
  let value = 0
  for (; place < length; place += 1) {
    const code = cell.charCodeAt(place)
    if (code >= 48 && code <= 57) {
      value = value * 10 + code - 48
      digits += 1
    } else if (code === mark && after < 0) after = digits
    else return unreadable
  }
  if (digits === 0 || value > mostExact) return unreadable
  if (after >= 0) value /= powers[digits - after] ?? 1
  return first === 45 ? -value : value
}

/** Blanks that part groups of three digits: space, no-break, thin and narrow no-break space, and apostrophes. */
const blanks = "[ \\u00a0\\u2009\\u202f'\\u2019]"

function shapeOf(mark: DecimalMark): RegExp {
  const own = mark === '.' ? '\\.' : ','
  const other = mark === '.' ? ',' : '\\.'
  const group = `(?:${other}|${blanks})`
  const whole = `\\d{1,3}(?:${group}\\d{3})+|\\d+`
  return new RegExp(
    `^([+\\-\\u2212]?)(?:(${whole})(?:${own}(\\d*))?|${own}(\\d+))(?:[eE]([+\\-\\u2212]?\\d+))?(?:\\s*(\\D.*))?$`,
  )
}

const shapes: Readonly<Record<DecimalMark, RegExp>> = { '.': shapeOf('.'), ',': shapeOf(',') }

/** A number with the unit that stood behind it, lower case; empty without one. */
interface WrittenNumber {
  readonly value: number
  readonly unit: string
}

/**
 * Reads a number in any of the ways in which one is written: a sign (also U+2212), digits in groups of three, the decimal
 * mark, an exponent, a unit.
 *
 * @param cell trimmed
 * @returns `missing` for what stands for no value, infinities included; `unreadable` for anything else
 */
export function readNumber(cell: string, mark: DecimalMark): WrittenNumber {
  const lower = cell.toLowerCase()
  if (missingWords.has(lower)) return { value: missing, unit: '' }
  const found = shapes[mark].exec(cell)
  if (found === null) return { value: unreadable, unit: '' }
  const [, sign = '', whole = '0', fraction = '', bare = '', power = '0', behind = ''] = found
  const unit = unitKey(behind)
  if (behind.trim() !== '' && !logUnits.has(unit)) return { value: unreadable, unit: '' }
  const digits = whole.replace(/\D/g, '')
  const value = Number(`${digits}.${fraction || bare || '0'}e${power.replace('\u2212', '-')}`)
  if (!Number.isFinite(value)) return { value: missing, unit }
  return { value: sign === '' || sign === '+' ? value : -value, unit }
}

/**
 * A unit as the table writes it: closing brackets off, compatibility forms unified, lower case.
 *
 * *Source:* Unicode Standard Annex 15, form NFKC: ℃ becomes °C, the micro sign becomes μ.
 */
export function unitKey(text: string): string {
  return text
    .normalize('NFKC')
    .trim()
    .replace(/[)\]}]+$/, '')
    .trim()
    .toLowerCase()
}

/** Whether a cell is a bare decimal number with this mark: what tells the mark of a file. */
export function showsMark(cell: string, mark: DecimalMark): boolean {
  return (mark === ',' ? /^[+\-\u2212]?\d+,\d+$/ : /^[+\-\u2212]?\d+\.\d+$/).test(cell)
}
