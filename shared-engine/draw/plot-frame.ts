import type { PlotScale } from './scale.ts'
import type { Frame, Shape, TextShape } from './scene.ts'
import { textWidth } from './text-width.ts'

interface FrameWish {
  readonly frame: Frame
  readonly x: PlotScale
  readonly y: PlotScale
  readonly yTitle: string
  /** Whether the x axis carries its numbers here: only the lowest panel's does. */
  readonly xTexts: boolean
  readonly rows: readonly string[] | undefined
}

const hairline = { role: 'hairline', width: 1 } as const
const tick = { role: 'quiet', width: 1 } as const

/** Room for the names of rows, px; 0 where there are none. */
export function namedRows(rows: readonly string[] | undefined): number {
  return rows === undefined ? 0 : Math.max(0, ...rows.map((row) => textWidth(row, 13))) + 16
}

function text(x: number, y: number, words: string, anchor: TextShape['anchor'] = 'start'): TextShape {
  return { shape: 'text', at: { x, y }, text: words, size: 13, role: 'quiet', ...(anchor && { anchor }) }
}

function xAxis({ frame, x, xTexts }: FrameWish): Shape[] {
  const base: Shape = {
    shape: 'line',
    from: { x: frame.x0, y: frame.y0 },
    to: { x: frame.x1, y: frame.y0 },
    stroke: hairline,
  }
  const ticks = x.ticks.flatMap(({ value, text: words }): Shape[] => {
    const at = x.pixelOf(value)
    if (at < frame.x0 - 0.5 || at > frame.x1 + 0.5) return []
    const mark: Shape = {
      shape: 'line',
      from: { x: at, y: frame.y0 },
      to: { x: at, y: frame.y0 - 4 },
      stroke: tick,
    }
    return xTexts ? [mark, text(at, frame.y0 + 16, words, 'middle')] : [mark]
  })
  return [base, ...ticks]
}

function yAxis({ frame, y, yTitle }: FrameWish): Shape[] {
  const ticks = y.ticks.flatMap(({ value, text: words }): Shape[] => {
    const at = y.pixelOf(value)
    return [
      { shape: 'line', from: { x: frame.x0, y: at }, to: { x: frame.x0 + 4, y: at }, stroke: tick },
      text(frame.x0 - 7, at + 4.5, words, 'end'),
    ]
  })
  const upright: Shape = {
    shape: 'line',
    from: { x: frame.x0, y: frame.y0 },
    to: { x: frame.x0, y: frame.y1 },
    stroke: hairline,
  }
  return [upright, ...ticks, text(0, frame.y1 - 10, yTitle)]
}

/** The zero, where it lies inside the frame; a broken axis, where amounts do not start at zero. */
function zero({ frame, y }: FrameWish): Shape[] {
  if (y.low < 0 && y.high > 0) {
    const at = y.pixelOf(0)
    const stroke = { role: 'quiet', width: 0.8 } as const
    return [{ shape: 'line', from: { x: frame.x0, y: at }, to: { x: frame.x1, y: at }, stroke }]
  }
  if (y.low > 0 && y.kind !== 'temperature') {
    const d = `M${frame.x0 - 4} ${frame.y0 - 7}l8 -4M${frame.x0 - 4} ${frame.y0 - 11}l8 -4`
    return [{ shape: 'path', d, stroke: { role: 'quiet', width: 1 } }]
  }
  return []
}

function rowNames({ frame, y, rows }: FrameWish): Shape[] {
  return (rows ?? []).map((row, index) => text(frame.x0 - 10, y.pixelOf(-index) + 4.5, row, 'end'))
}

/** Axes of one panel: hairlines with ticks inwards, numbers outside, the quantity with its unit above. */
export function frameShapes(wish: FrameWish): Shape[] {
  if (wish.rows !== undefined)
    return [...xAxis(wish), ...rowNames(wish), text(0, wish.frame.y1 - 10, wish.yTitle)]
  return [...xAxis(wish), ...yAxis(wish), ...zero(wish)]
}
