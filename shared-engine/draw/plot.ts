import type { QuantityKind, UnitSystem } from '../units/kinds.ts'
import { placeLabels } from './labels.ts'
import type { Mark } from './marks/kinds.ts'
import { drawMark, extentOf } from './marks/kinds.ts'
import type { DrawnMark } from './marks/mark.ts'
import { frameShapes, namedRows } from './plot-frame.ts'
import { axisTitle, plotScale } from './scale.ts'
import type { PlotScale } from './scale.ts'
import type { Axis, CursorMap, Frame, PanelReading, PlotReading, Point, Scene, Shape } from './scene.ts'
import { stopsOf } from './readout.ts'
import { textWidth } from './text-width.ts'

interface AxisDescription {
  /** "Ground speed". */
  readonly label: string
  readonly kind: QuantityKind
  /** SI: values that must be in view. */
  readonly include?: readonly number[]
  /** Least and greatest value shown, whatever the data reach. */
  readonly low?: number
  readonly high?: number
  /** Start at zero: the rule for amounts. Where false and zero is out of view, the axis is shown broken. */
  readonly fromZero?: boolean
}

export interface PanelDescription {
  readonly y: AxisDescription
  readonly marks: readonly Mark[]
  /** Of the height, against the other panels; 1 unless said. */
  readonly share?: number
  /** Names of rows, for bars: row n stands at y = −n. */
  readonly rows?: readonly string[]
}

export interface PlotSize {
  /** px. */
  readonly width: number
  readonly height: number
}

/** What a plot shows: a pure description; `plot` makes the drawing. */
export interface PlotDescription {
  readonly name: string
  readonly title: string
  readonly summary: string
  readonly system: UnitSystem
  readonly size: PlotSize
  readonly x: AxisDescription
  readonly panels: readonly PanelDescription[]
  /** Shared cursor; none unless said. */
  readonly cursor?: CursorMap
  /** Significant figures of what is read off curves that are computed; absent: they were measured, or are exact. */
  readonly sureTo?: 2 | 3 | undefined
}

const margin = { top: 24, right: 14, bottom: 40, left: 36 }
const panelGap = 32
/** A limit further off than this many times the data is named at the edge instead of squashing the curves. */
const farLimit = 1.7

const noCursor: CursorMap = { name: 'none', at: [0, 1], value: [0, 1] }

/** Least and greatest of what must be seen along one axis. */
function extentAlong(axis: AxisDescription, marks: readonly Mark[], along: 'xs' | 'ys'): [number, number] {
  const lists: (readonly number[])[] = [axis.include ?? [], axis.fromZero === false ? [] : [0]]
  const rules: number[] = []
  for (const mark of marks) {
    const values = extentOf(mark)[along]
    if (mark.mark === 'rule') rules.push(...values)
    else lists.push(values)
  }
  let [low, high] = [Infinity, -Infinity]
  for (const list of lists) {
    for (const value of list) {
      if (value < low) low = value
      if (value > high) high = value
    }
  }
  const farthest = lists.some((list) => list.length > 1) ? farLimit * high : Infinity
  for (const value of rules) {
    if (value > farthest) continue
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  const known = low <= high
  return [axis.low ?? (known ? low : 0), axis.high ?? (known ? high : 1)]
}

/** A frame's bottom and top, px. */
type Span = Pick<Frame, 'y0' | 'y1'>

function spansOf(description: PlotDescription): Span[] {
  const { panels, size } = description
  const shares = panels.reduce((sum, panel) => sum + (panel.share ?? 1), 0)
  const room = size.height - margin.top - margin.bottom - panelGap * (panels.length - 1)
  let top = margin.top
  return panels.map((panel) => {
    const height = (room * (panel.share ?? 1)) / shares
    const span = { y0: top + height, y1: top }
    top += height + panelGap
    return span
  })
}

function axisOf(description: AxisDescription, scale: PlotScale): Axis {
  const { label, kind } = description
  const { low, high, unit } = scale
  return { label, kind, low, high, unit, title: axisTitle(label, unit) }
}

interface DrawnPanel {
  readonly reading: PanelReading
  readonly marks: readonly DrawnMark[]
  readonly shapes: readonly Shape[]
}

/** Scale of a panel, between the bottom and the top of its frame. */
function panelScale(panel: PanelDescription, system: UnitSystem, span: Span): PlotScale {
  return plotScale({
    kind: panel.y.kind,
    system,
    extent: extentAlong(panel.y, panel.marks, 'ys'),
    pixels: [span.y0, span.y1],
    ticks: Math.max(3, Math.round((span.y0 - span.y1) / 46)),
    round: panel.rows === undefined && panel.y.high === undefined,
  })
}

/** The line of zero where it crosses the frame: no words are struck out by it either. */
function zeroLine(y: PlotScale, { x0, x1 }: Frame): readonly (readonly Point[])[] {
  if (!(y.low < 0 && y.high > 0)) return []
  const at = y.pixelOf(0)
  return [
    [
      { x: x0, y: at },
      { x: x1, y: at },
    ],
  ]
}

function drawPanel(
  panel: PanelDescription,
  description: PlotDescription,
  x: PlotScale,
  y: PlotScale,
  frame: Frame,
): DrawnPanel {
  const marks = panel.marks.map((mark) => drawMark(mark, { x, y, frame }))
  const obstacles = [...marks.flatMap((mark) => mark.obstacles), ...(panel.rows ? [] : zeroLine(y, frame))]
  const labels = placeLabels(
    marks.flatMap((mark) => mark.labels),
    obstacles,
    frame,
  )
  const axis = axisOf(panel.y, y)
  const series = marks.flatMap((mark) => mark.series ?? [])
  const last = panel === description.panels.at(-1)
  const axes = frameShapes({ frame, x, y, yTitle: axis.title, xTexts: last, rows: panel.rows })
  const box = { x: frame.x0, y: frame.y1 - 2, width: frame.x1 - frame.x0, height: frame.y0 - frame.y1 + 3 }
  const data: Shape = { shape: 'group', clip: box, shapes: marks.flatMap((mark) => mark.shapes) }
  return { reading: { frame, y: axis, series }, marks, shapes: [...axes, data, ...labels] }
}

/** Left margin: room for the widest tick text, or for the names of rows. */
function leftMargin(description: PlotDescription, scales: readonly PlotScale[]): number {
  const rows = description.panels.map((panel) => namedRows(panel.rows))
  const texts = scales.flatMap((scale, index) =>
    description.panels[index]?.rows ? [] : scale.ticks.map((tick) => textWidth(tick.text, 13) + 10),
  )
  return Math.max(margin.left, ...rows, ...texts)
}

/**
 * A drawing from its description: axes with quantity and unit, the zero line and no other grid, each series named on
 * its line, limits hatched on their far side.
 */
export function plot(description: PlotDescription): Scene {
  const { size, system } = description
  const spans = spansOf(description)
  const ys = description.panels.map((panel, index) =>
    panelScale(panel, system, spans[index] ?? { y0: 1, y1: 0 }),
  )
  const left = leftMargin(description, ys)
  const right = size.width - margin.right
  const everything = description.panels.flatMap((panel) => panel.marks)
  const x = plotScale({
    kind: description.x.kind,
    system,
    extent: extentAlong(description.x, everything, 'xs'),
    pixels: [left, right],
    ticks: Math.max(2, Math.round((size.width - left) / 90)),
    round: false,
  })
  const panels = description.panels.flatMap((panel, index) => {
    const span = spans[index]
    const y = ys[index]
    return span && y ? [drawPanel(panel, description, x, y, { x0: left, x1: right, ...span })] : []
  })
  const axis = axisOf(description.x, x)
  const title: Shape = {
    shape: 'text',
    at: { x: right, y: size.height - 5 },
    text: axis.title,
    size: 13,
    role: 'quiet',
    anchor: 'end',
  }
  const readings = panels.map((panel) => panel.reading)
  const reading: PlotReading = {
    x: axis,
    frame: { x0: left, x1: right, y0: spans.at(-1)?.y0 ?? 0, y1: margin.top },
    panels: readings,
    cursor: description.cursor ?? noCursor,
    sureTo: description.sureTo,
    stops: stopsOf(readings),
    limits: panels.flatMap((panel) => panel.marks.flatMap((mark) => mark.limits)),
  }
  const { name, summary } = description
  return {
    name,
    title: description.title,
    summary,
    ...size,
    shapes: [...panels.flatMap((panel) => panel.shapes), title],
    plot: reading,
  }
}
