import type { Role } from './role.ts'
import type { Box, Frame, Point, TextShape } from './scene.ts'
import { textWidth } from './text-width.ts'

/** A place that a label could take: the baseline's point and how the text lies to it. */
export interface LabelPlace {
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'middle' | 'end'
}

/** A label that wants to be placed; the first places are the ones it likes best. */
export interface LabelWish {
  readonly text: string
  readonly role: Role
  readonly places: readonly LabelPlace[]
  readonly strong?: boolean
}

const size = 13
/** What each fault of a place costs; being elsewhere in the list costs its number. */
const costs = { overLabel: 400, outside: 400, onLine: 14 }

/** The box that a label covers. */
export function labelBox(text: string, { x, y, anchor }: LabelPlace): Box {
  const width = textWidth(text, size)
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return { x: left, y: y - 0.78 * size, width, height: size }
}

export function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

/**
 * Whether a stretch of line passes through a box: its shares of the way at which it enters and leaves between the
 * upright sides, then between the level ones.
 *
 * *Source:* Liang and Barsky's line clipping, ACM Transactions on Graphics 3 (1984).
 */
export function crosses(box: Box, from: Point, to: Point): boolean {
  const right = box.x + box.width
  const bottom = box.y + box.height
  if (Math.max(from.x, to.x) < box.x || Math.min(from.x, to.x) > right) return false
  if (Math.max(from.y, to.y) < box.y || Math.min(from.y, to.y) > bottom) return false
  const dx = to.x - from.x
  const dy = to.y - from.y
  if (dx === 0 || dy === 0) return true
  const acrossLeft = (box.x - from.x) / dx
  const acrossRight = (right - from.x) / dx
  const acrossTop = (box.y - from.y) / dy
  const acrossBottom = (bottom - from.y) / dy
  const enter = Math.max(0, Math.min(acrossLeft, acrossRight), Math.min(acrossTop, acrossBottom))
  const leave = Math.min(1, Math.max(acrossLeft, acrossRight), Math.max(acrossTop, acrossBottom))
  return enter <= leave
}

/** How many of the lines pass through a box. */
function crossings(box: Box, lines: readonly (readonly Point[])[]): number {
  let count = 0
  for (const line of lines) {
    for (let index = 1; index < line.length; index++) {
      const from = line[index - 1]
      const to = line[index]
      if (from && to && crosses(box, from, to)) {
        count++
        break
      }
    }
  }
  return count
}

function outside(box: Box, frame: Frame): boolean {
  const right = box.x + box.width
  return box.x < frame.x0 || right > frame.x1 + 2 || box.y < frame.y1 - 14 || box.y + box.height > frame.y0
}

/** A place moved along, as far as it takes, so that the label does not stick out of its frame and is cut by none. */
function within(place: LabelPlace, text: string, { x0, x1 }: Frame): LabelPlace {
  const box = labelBox(text, place)
  const right = x1 - (box.x + box.width)
  const left = x0 + 3 - box.x
  const shift = left > 0 ? left : Math.max(left, Math.min(0, right))
  return shift === 0 ? place : { ...place, x: place.x + shift }
}

/** Points of a line that are enough to keep a label off it, and quick. */
const enough = 60

/** A line of about as many points at most. */
function sparse(line: readonly Point[]): readonly Point[] {
  const step = Math.ceil(line.length / enough)
  return step <= 1 ? line : line.filter((_, index) => index % step === 0 || index === line.length - 1)
}

/**
 * Puts each label where it collides least: with labels already placed and the frame never if it can be helped, with
 * lines as seldom as it can be. In the order given; the first have the free choice.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  lines: readonly (readonly Point[])[],
  frame: Frame,
): TextShape[] {
  const placed: Box[] = []
  const light = lines.map(sparse)
  return wishes.flatMap((wish): TextShape[] => {
    let best: { place: LabelPlace; box: Box; cost: number } | null = null
    for (const [index, wished] of wish.places.entries()) {
      const place = within(wished, wish.text, frame)
      const box = labelBox(wish.text, place)
      const cost =
        index * 0.5 +
        (outside(box, frame) ? costs.outside : 0) +
        costs.overLabel * placed.filter((other) => overlap(box, other)).length +
        costs.onLine * crossings(box, light)
      if (best === null || cost < best.cost) best = { place, box, cost }
      if (cost <= index * 0.5) break
    }
    if (best === null) return []
    placed.push(best.box)
    const { x, y, anchor } = best.place
    const weight = wish.strong ? 'strong' : 'regular'
    return [
      { shape: 'text', at: { x, y }, text: wish.text, size, role: wish.role, anchor, weight, rim: true },
    ]
  })
}
