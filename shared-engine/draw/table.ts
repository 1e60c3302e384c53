import { fromEngine } from '../units/convert.ts'
import { seriesAt } from './readout.ts'
import type { Axis, PlotReading, Table } from './scene.ts'

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
  const rows = stops.map((at) => [
    cell(at, x),
    ...series.map(({ one, axis }) => cell(seriesAt(one, at), axis)),
  ])
  return { columns, rows }
}

function csvCell(value: number | string | null): string {
  if (value === null) return ''
  const text = String(value)
  return /[",\n\r]/.test(text) ? `"${text.replace(/"/g, '""')}"` : text
}

/** "Thrust, N" as a heading. */
export function columnHeading({ label, unit }: Table['columns'][number]): string {
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
