import type { Point } from '../scene.ts'
import { fullTurn } from '../../constants.ts'
import { fromEngine } from '../../units/convert.ts'

/** A point from an angle (rad, clockwise as drawn) and a distance, about the origin or `about`. */
export function polar(angle: number, radius: number, about: Point = { x: 0, y: 0 }): Point {
  return { x: about.x + radius * Math.cos(angle), y: about.y + radius * Math.sin(angle) }
}

/** A number for a path: two decimals are finer than any screen or printer here; never `-0`. */
export function px(value: number): string {
  const rounded = Math.round(value * 100) / 100
  return String(rounded === 0 ? 0 : rounded)
}

/** A closed or open outline as path data, its points multiplied by `scale` (px per unit of the points). */
export function pathOf(points: readonly Point[], scale = 1, closed = true): string {
  const steps = points.map(
    (point, index) => `${index === 0 ? 'M' : 'L'}${px(point.x * scale)} ${px(point.y * scale)}`,
  )
  return steps.join('') + (closed ? 'Z' : '')
}

/** A full circle as path data, so that it can be a hole in another outline. */
export function circlePath(radius: number, about: Point = { x: 0, y: 0 }): string {
  const arc = `A${px(radius)} ${px(radius)} 0 1 1`
  const left = px(about.x - radius)
  const right = px(about.x + radius)
  return `M${left} ${px(about.y)}${arc} ${right} ${px(about.y)}${arc} ${left} ${px(about.y)}Z`
}

/** The same points turned by `angle` (rad) about the origin. */
function turned(points: readonly Point[], angle: number): Point[] {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return points.map(({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }))
}

/** One tooth's outline repeated round a wheel: `tooth` is centred on angle 0. */
export function roundWheel(tooth: readonly Point[], teeth: number): Point[] {
  return Array.from({ length: teeth }, (_, index) => turned(tooth, (fullTurn * index) / teeth)).flat()
}

/** Degrees from radians, for turning groups. */
export function degrees(radians: number): number {
  return fromEngine(radians, 'angle')
}
