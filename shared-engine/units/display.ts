import { format as d3Format } from 'd3-format'
import type { DisplayStep, QuantityKind, UnitSystem } from './kinds.ts'
import { assertUnit, fromEngine } from './convert.ts'
import { kindUnits } from './table.ts'

/** A number for the screen, apart from its unit so that the unit can be set lighter. */
export interface Shown {
  readonly text: string
  /** Empty for plain numbers and where there is no value. */
  readonly unit: string
}

/** What stands where a value does not exist. */
export const absent = '–'

const threeFigures = d3Format(',.3r')
const fourFigures = d3Format(',.4r')
const whole = d3Format(',d')
const exponent = d3Format('.2e')
const superscripts: Readonly<Record<string, string>> = {
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
  '-': '⁻',
}

function powerOfTen(value: number): string {
  const [digits = '', power = ''] = exponent(value).replace('+', '').split('e')
  return `${digits} × 10${[...power].map((sign) => superscripts[sign] ?? '').join('')}`
}

/**
 * A plain number in three significant figures, four where the first is a 1, so that a step of the last one is always
 * less than 1 % and more than 0.05 % of it. Thousands are parted from 1,000 on; powers of ten only outside 0.001 to
 * 10 million. Never NaN, Infinity or −0.
 */
export function numberText(value: number | null): string {
  if (value === null || !Number.isFinite(value)) return absent
  const size = Math.abs(value)
  if (size === 0) return '0'
  if (size < 0.001 || size >= 9_995_000) return powerOfTen(value)
  return size.toExponential().startsWith('1') ? fourFigures(value) : threeFigures(value)
}

/** The unit in which a value of this magnitude is shown: the larger one from where it reads better. */
export function displayUnit(kind: QuantityKind, system: UnitSystem, magnitude = 0): string {
  const steps: readonly DisplayStep[] = kindUnits[kind][system]
  return steps.findLast((step) => Math.abs(magnitude) >= step.from)?.symbol ?? kindUnits[kind].bench
}

/**
 * An engine value as text and unit for the screen.
 *
 * @param value in engine units (SI); `null` where it does not exist
 * @param unit a fixed unit, where several values stand in one column; absent: by magnitude
 * @example format(10.61, 'speed', 'metric') // { text: '38.2', unit: 'km/h' }
 */
export function format(value: number | null, kind: QuantityKind, system: UnitSystem, unit?: string): Shown {
  if (value === null || !Number.isFinite(value)) return { text: absent, unit: '' }
  const symbol = unit ?? displayUnit(kind, system, value)
  const inUnit = fromEngine(value, kind, symbol)
  const text =
    kind === 'count' && Number.isInteger(inUnit) && Math.abs(inUnit) < 1e7
      ? whole(inUnit + 0)
      : numberText(inUnit)
  return { text, unit: assertUnit(kind, symbol).symbol }
}

const toFigures = { 2: d3Format(',.2r'), 3: threeFigures } as const

/**
 * The same in so many significant figures: where the number is known no better than that.
 *
 * Counts are whole and stay so.
 *
 * @param figures 2 where it rests on estimates, 3 where on what was measured or stated; undefined: as {@link format}
 * @example formatTo(5.52, 'speed', 'metric', 2) // { text: '20', unit: 'km/h' }
 */
export function formatTo(
  value: number | null,
  kind: QuantityKind,
  system: UnitSystem,
  figures: 2 | 3 | undefined,
  unit?: string,
): Shown {
  const shown = format(value, kind, system, unit)
  if (value === null || !Number.isFinite(value) || value === 0 || kind === 'count') return shown
  if (figures === undefined) return shown
  const inUnit = fromEngine(value, kind, unit ?? displayUnit(kind, system, value))
  const isPlain = Math.abs(inUnit) >= 0.001 && Math.abs(inUnit) < 9_500_000
  return isPlain ? { ...shown, text: toFigures[figures](inUnit) } : shown
}

/** Text and unit on one line; a narrow no-break space between them, none before ° and with % as with any unit. */
export function oneText({ text, unit }: Shown): string {
  if (unit === '') return text
  return unit === '°' ? `${text}°` : `${text}\u202F${unit}`
}

/** `format` on one line: '38.2 km/h'. */
export function formatText(
  value: number | null,
  kind: QuantityKind,
  system: UnitSystem,
  unit?: string,
): string {
  return oneText(format(value, kind, system, unit))
}

/**
 * The full value for hover and copy: every digit that the number holds but rounding noise (15 figures), a plain point
 * and minus, no thousands, so that it can be pasted anywhere and reads back as the same number.
 */
export function formatFull(
  value: number | null,
  kind: QuantityKind,
  system: UnitSystem,
  unit?: string,
): Shown {
  if (value === null || !Number.isFinite(value)) return { text: absent, unit: '' }
  const symbol = unit ?? displayUnit(kind, system, value)
  return {
    text: String(Number(fromEngine(value, kind, symbol).toPrecision(15)) + 0),
    unit: assertUnit(kind, symbol).symbol,
  }
}
