import { formatTo, oneText } from '../units/display.ts'
import { sureFigures } from '../units/sure.ts'
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

/**
 * A series at one x, along the straight line between its neighbours; null in a gap and outside.
 *
 * @param near so close to a point it counts as there, where a gap begins
 */
export function seriesAt(series: Pick<SeriesReading, 'xs' | 'ys'>, x: number, near = 0): number | null {
  const { xs, ys } = series
  const index = lastNotAbove(xs, x)
  const left = ys[index] ?? null
  const x0 = xs[index]
  const right = ys[index + 1] ?? null
  const x1 = xs[index + 1]
  if (left !== null && x0 === x) return left
  if (left === null || right === null || x0 === undefined || x1 === undefined) {
    if (left !== null && x0 !== undefined && x - x0 <= near) return left
    return right !== null && x1 !== undefined && x1 - x <= near ? right : null
  }
  return left + ((right - left) * (x - x0)) / (x1 - x0)
}

/** Every x at which a series has a value, once, rising: where the keyboard stops. */
export function stopsOf(panels: readonly PanelReading[]): readonly number[] {
  const lists = new Set(panels.flatMap((panel) => panel.series.map((series) => series.xs)))
  const [only] = lists
  if (lists.size === 1 && only !== undefined) return only
  const all = Float64Array.from([...lists].flat()).sort()
  return Array.from(all.filter((x, at) => at === 0 || x !== all[at - 1]))
}

/** Width of a dot, in x. */
const dot = ({ x, frame }: PlotReading) => (x.high - x.low) / Math.max(1, frame.x1 - frame.x0)

function entryAt(panel: PanelReading, series: SeriesReading, plot: PlotReading, x: number): ReadoutEntry {
  // The cursor stands on a whole dot: at a curve's last point it may stand half a dot past it.
  const value = seriesAt(series, x, dot(plot) / 2)
  const { frame, y } = panel
  const place =
    value === null
      ? null
      : {
          x: pixelAlong(plot.x, x, frame.x0, frame.x1),
          y: pixelAlong(y, value, frame.y0, frame.y1),
        }
  // Nine minutes on an axis of hours are nine minutes still; units of time are the same in both systems.
  const unit = series.kind === 'duration' || series.kind === 'time' ? undefined : y.unit
  const figures = sureFigures(series.kind, plot.sureTo)
  const text = value === null ? 'none' : oneText(formatTo(value, series.kind, 'metric', figures, unit))
  return { label: series.label, role: series.role, value, text, place }
}

/**
 * What every series of a plot says at one x (SI), in words and in px; one that has not begun or has ended says nothing.
 * The place itself is chosen, not computed: it has three figures where what is read there has fewer.
 */
export function readoutAt(plot: PlotReading, x: number): Readout {
  const at = oneText(formatTo(x, plot.x.kind, 'metric', plot.sureTo && 3, plot.x.unit))
  const entries = plot.panels.flatMap((panel) =>
    panel.series
      .filter(({ xs }) => x >= (xs[0] ?? Infinity) - dot(plot) && x <= (xs.at(-1) ?? -Infinity) + dot(plot))
      .map((series) => entryAt(panel, series, plot, x)),
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
