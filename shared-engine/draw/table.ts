import { printable } from '../mistakes/shown.ts'
import { fromEngine } from '../units/convert.ts'
import { seriesAt } from './readout.ts'
import type { Axis, PlotReading, SeriesReading, Table } from './scene.ts'

/** A value as the table holds it: in its unit, to seven figures, so that rounding noise does not show. */
function cell(value: number | null, axis: Axis): number | null {
  if (value === null || !Number.isFinite(value)) return null
  return Number(fromEngine(value, axis.kind, axis.unit).toPrecision(7)) + 0
}

/** The numbers of a plot: one row for each x that a series has, one column for each series. */
export function plotTable({ x, panels, stops }: PlotReading): Table {
  const series = panels.flatMap((panel) => panel.series.map((one) => ({ one, axis: panel.y })))
  const columns = [
    { label: x.label, unit: x.unit },
    ...series.map(({ one, axis }) => ({ label: one.label, unit: axis.unit })),
  ]
  // Points of one list of x each have a row of their own, those at the same x too: readings are taken twice.
  const valueAt = (one: SeriesReading, at: number, place: number) =>
    one.xs === stops ? (one.ys[place] ?? null) : seriesAt(one, at)
  const rows = stops.map((at, place) => [
    cell(at, x),
    ...series.map(({ one, axis }) => cell(valueAt(one, at, place), axis)),
  ])
  return { columns, rows }
}

/** What a spreadsheet takes for the start of a formula. */
const formulaStart = /^[=+\-@\t\r]/
const plainNumber = /^[+-]?\d+(\.\d+)?([eE][+-]?\d+)?$/

/**
 * A cell of a text that may be a person's: an apostrophe before what a spreadsheet would run as a formula, and no control
 * characters but line ends. A number that stands as text is left alone.
 *
 * *Source:* OWASP, *CSV Injection*: prefix =, +, −, @, tab and carriage return with a single quote.
 */
function harmless(text: string): string {
  const plain = printable(text)
  return formulaStart.test(text) && !plainNumber.test(text) ? `'${plain}` : plain
}

function csvCell(value: number | string | null): string {
  if (value === null) return ''
  const text = typeof value === 'number' ? String(value) : harmless(value)
  return /[",\n\r]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text
}

/** "Thrust, N" as a heading. */
function columnHeading({ label, unit }: Table['columns'][number]): string {
  return unit === '' ? label : `${label} (${unit})`
}

/**
 * A table as CSV: comma, decimal point, one heading line, lines end in CR LF.
 *
 * *Source:* RFC 4180, sections 2 and 3.
 */
export function tableCsv(table: Table): string {
  const lines = [table.columns.map(columnHeading), ...table.rows]
  return lines.map((line) => line.map(csvCell).join(',')).join('\r\n') + '\r\n'
}

/**
 * A table as text for the clipboard: cells between tabs, one heading line, lines end in LF. A tab or a line end inside a
 * cell becomes a blank, so that every line has as many cells as the heading.
 *
 * *Source:* IANA, media type text/tab-separated-values: fields hold no tab.
 */
export function tableTabs(table: Table): string {
  const plain = (value: number | string | null) =>
    (typeof value === 'string' ? harmless(value) : String(value ?? '')).replace(/[\t\r\n]+/g, ' ')
  const lines = [table.columns.map(columnHeading), ...table.rows]
  return lines.map((line) => line.map(plain).join('\t')).join('\n') + '\n'
}
