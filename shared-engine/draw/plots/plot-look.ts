import type { UnitSystem } from '../../units/kinds.ts'
import { formatTo, oneText } from '../../units/display.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { seriesStyle } from '../role.ts'
import { styled } from '../marks/curve.ts'
import type { CurveMark } from '../marks/curve.ts'
import type { PlotSize } from '../plot.ts'
import type { CursorMap, CursorName, Scene } from '../scene.ts'

/** What every plot is drawn for: the units and the room. */
export interface PlotLook {
  readonly system: UnitSystem
  readonly size: PlotSize
  /** Significant figures of the numbers in its words, where they are known no better. */
  readonly figures?: 2 | 3 | undefined
}

/** A curve in the style of the n-th series. */
export function seriesCurve(
  index: number,
  label: string,
  xs: readonly number[],
  ys: readonly (number | null)[],
): CurveMark {
  return { mark: 'curve', label, xs, ys, ...styled(seriesStyle(index)) }
}

/** A number for a sentence: "38.2 km/h"; "none" where there is none. */
export function said(value: number | null, kind: QuantityKind, { system, figures }: PlotLook): string {
  return value === null ? 'none' : oneText(formatTo(value, kind, system, figures))
}

/** A cursor over x values that each stand for a value of the shared cursor; both must rise: what does not is left out. */
export function cursorOver(name: CursorName, at: readonly number[], value: readonly number[]): CursorMap {
  const kept: number[] = []
  let last = -Infinity
  value.forEach((one, index) => {
    if (one > last) {
      kept.push(index)
      last = one
    }
  })
  if (kept.length < 2) return { name: 'none', at: [0, 1], value: [0, 1] }
  return { name, at: kept.map((index) => at[index] ?? 0), value: kept.map((index) => value[index] ?? 0) }
}

/** Instead of a plot: why there is none, in words. */
export function absentPlot(name: string, title: string, reason: string, { size }: PlotLook): Scene {
  const at = { x: size.width / 2, y: size.height / 2 }
  return {
    name,
    title,
    summary: reason,
    ...size,
    shapes: [{ shape: 'text', at, text: reason, size: 13, role: 'quiet', anchor: 'middle' }],
    plot: null,
  }
}
