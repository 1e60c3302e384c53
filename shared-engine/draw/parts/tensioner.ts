import type { TensionerKind } from '../../geometry/held-loop.ts'
import type { Shape } from '../scene.ts'
import type { LoopWheel } from './loop.ts'
import { px } from './outline.ts'

/** How the idler is held, in words. */
export function tensionerText(kind: TensionerKind): string {
  return kind === 'fixed' ? 'idler held by a screw' : 'idler pushed by a spring'
}

/** Least length that can be seen, and most that is needed, px. */
const [shortest, longest] = [14, 34]

/**
 * What holds the idler, from its axle towards the sprocket: a slide with a threaded rod and its nuts, or a spring against a
 * plate. Signs, not to scale.
 */
export function tensioner(kind: TensionerKind, idler: LoopWheel, scale: number): Shape[] {
  const [x, y] = [idler.centre.x * scale, idler.centre.y * scale]
  const from = x - idler.radius * scale - 2
  const length = Math.max(shortest, Math.min(longest, idler.centre.x * scale * 0.2))
  const end = from - length
  const plate = `M${px(end)} ${px(y - 6)}V${px(y + 6)}`
  const rod = `M${px(x)} ${px(y)}H${px(from)}`
  const slide = `M${px(x - 5)} ${px(y - 3)}H${px(from + 2)}M${px(x - 5)} ${px(y + 3)}H${px(from + 2)}`
  const held = kind === 'fixed' ? screw(from, end, y) : spring(from, end, y)
  return [
    { shape: 'path', id: 'tensioner', d: rod + held + plate, stroke: { role: 'ink', width: 0.9 } },
    { shape: 'path', d: slide, stroke: { role: 'quiet', width: 0.7 } },
  ]
}

/** A threaded rod with a nut on either side of the plate. */
function screw(from: number, end: number, y: number): string {
  const threads = Array.from(
    { length: Math.floor((from - end - 8) / 3) },
    (_, index) => `M${px(end + 6 + index * 3)} ${px(y - 2)}l1.6 4`,
  ).join('')
  const nut = (at: number) => `M${px(at)} ${px(y - 4)}h3v8h-3Z`
  return `M${px(from)} ${px(y)}H${px(end - 6)}${threads}${nut(end + 1)}${nut(end - 4)}`
}

/** Coils between axle and plate. */
function spring(from: number, end: number, y: number): string {
  const turns = 5
  const step = (from - end) / (2 * turns)
  const zigzag = Array.from({ length: 2 * turns }, (_, index) => {
    const last = index === 2 * turns - 1
    return `L${px(from - (index + 1) * step)} ${px(last ? y : y + (index % 2 === 0 ? -5 : 5))}`
  })
  return `M${px(from)} ${px(y)}${zigzag.join('')}`
}
