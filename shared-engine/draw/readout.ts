import { formatText } from '../units/display.ts'
import type {
  Axis,
  CursorMap,
  PanelReading,
  PlotReading,
  Readout,
  ReadoutEntry,
  SeriesReading,
} from './scene.ts'

/** px of a value between two edges of a frame. */
export function pixelAlong(axis: Axis, value: number, low: number, high: number): number {
  return low + ((value - axis.low) / (axis.high - axis.low)) * (high - low)
}

/** Value at a px between two edges of a frame, held to the axis. */
export function valueAlong(axis: Axis, pixel: number, low: number, high: number): number {
  const share = Math.max(0, Math.min(1, (pixel - low) / (high - low)))
  return axis.low + share * (axis.high - axis.low)
}

/** Index of the last of rising values that is not above `value`; −1 before the first. */
function lastNotAbove(values: readonly number[], value: number): number {
  let low = 0
  let high = values.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((values[middle] ?? Infinity) <= value) low = middle + 1
    else high = middle
  }
  return low - 1
}

/** A series at one x, along the straight line between its neighbours; null in a gap and outside. */
export function seriesAt(series: Pick<SeriesReading, 'xs' | 'ys'>, x: number): number | null {
  const { xs, ys } = series
  const index = lastNotAbove(xs, x)
  const left = ys[index] ?? null
  const x0 = xs[index]
  if (left === null || x0 === undefined) return null
  if (x0 === x) return left
  const right = ys[index + 1] ?? null
  const x1 = xs[index + 1]
  if (right === null || x1 === undefined) return null
  return left + ((right - left) * (x - x0)) / (x1 - x0)
}

/** Every x at which a series has a value, once, rising: where the keyboard stops. */
export function stopsOf(panels: readonly PanelReading[]): readonly number[] {
  const lists = new Set(panels.flatMap((panel) => panel.series.map((series) => series.xs)))
  const [only] = lists
  if (lists.size === 1 && only !== undefined) return only
  return [...new Set([...lists].flat())].sort((a, b) => a - b)
}

function entryAt(panel: PanelReading, series: SeriesReading, plot: PlotReading, x: number): ReadoutEntry {
  const value = seriesAt(series, x)
  const { frame, y } = panel
  const place =
    value === null
      ? null
      : {
          x: pixelAlong(plot.x, x, frame.x0, frame.x1),
          y: pixelAlong(y, value, frame.y0, frame.y1),
        }
  const text = value === null ? 'none' : formatText(value, series.kind, 'metric', y.unit)
  return { label: series.label, role: series.role, value, text, place }
}

/** What every series of a plot says at one x (SI), in words and in px. */
export function readoutAt(plot: PlotReading, x: number): Readout {
  const at = formatText(x, plot.x.kind, 'metric', plot.x.unit)
  const entries = plot.panels.flatMap((panel) =>
    panel.series.map((series) => entryAt(panel, series, plot, x)),
  )
  const words = entries.map((entry) => `${entry.label} ${entry.text}`)
  return { at, entries, sentence: `${plot.x.label} ${at}: ${words.join(', ')}.` }
}

/** Piecewise-linear, held at its ends. */
function mapped(from: readonly number[], to: readonly number[], value: number): number | null {
  const first = from[0]
  const last = from.at(-1)
  if (first === undefined || last === undefined) return null
  return seriesAt({ xs: from, ys: to }, Math.max(first, Math.min(last, value)))
}

/** The shared cursor's value at a plot's x, and back; null where the plot shares none. */
export function cursorOfX(cursor: CursorMap, x: number): number | null {
  return cursor.name === 'none' ? null : mapped(cursor.at, cursor.value, x)
}

export function xOfCursor(cursor: CursorMap, value: number): number | null {
  return cursor.name === 'none' ? null : mapped(cursor.value, cursor.at, value)
}

/** A cursor that is the plot's own x. */
export function sameCursor(name: CursorMap['name'], low: number, high: number): CursorMap {
  return { name, at: [low, high], value: [low, high] }
}
