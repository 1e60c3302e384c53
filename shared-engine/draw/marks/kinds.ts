import { area } from './area.ts'
import type { AreaMark } from './area.ts'
import { band } from './band.ts'
import type { BandMark } from './band.ts'
import { bar } from './bar.ts'
import type { BarMark } from './bar.ts'
import { curve } from './curve.ts'
import type { CurveMark } from './curve.ts'
import { dots } from './dots.ts'
import type { DotsMark } from './dots.ts'
import type { DrawnMark, MarkExtent, MarkSpace } from './mark.ts'
import { point } from './point.ts'
import type { PointMark } from './point.ts'
import { rule } from './rule.ts'
import type { RuleMark } from './rule.ts'
import { stretch } from './stretch.ts'
import type { StretchMark } from './stretch.ts'

export type Mark = CurveMark | PointMark | RuleMark | BandMark | AreaMark | BarMark | DotsMark | StretchMark

/** What a mark needs to have in view. */
export function extentOf(mark: Mark): MarkExtent {
  switch (mark.mark) {
    case 'curve':
      return curve.extent(mark)
    case 'point':
      return point.extent(mark)
    case 'rule':
      return rule.extent(mark)
    case 'band':
      return band.extent(mark)
    case 'area':
      return area.extent(mark)
    case 'bar':
      return bar.extent(mark)
    case 'dots':
      return dots.extent(mark)
    case 'stretch':
      return stretch.extent(mark)
  }
}

/** A mark as shapes, label wishes and readings. */
export function drawMark(mark: Mark, space: MarkSpace): DrawnMark {
  switch (mark.mark) {
    case 'curve':
      return curve.draw(mark, space)
    case 'point':
      return point.draw(mark, space)
    case 'rule':
      return rule.draw(mark, space)
    case 'band':
      return band.draw(mark, space)
    case 'area':
      return area.draw(mark, space)
    case 'bar':
      return bar.draw(mark, space)
    case 'dots':
      return dots.draw(mark, space)
    case 'stretch':
      return stretch.draw(mark, space)
  }
}
