import type { Shape } from '../scene.ts'
import type { RowItem } from './row.ts'

interface Placed extends RowItem {
  readonly left: number
}

const line = (x1: number, x2: number, y: number, width: number): Shape => ({
  shape: 'line',
  from: { x: x1, y },
  to: { x: x2, y },
  stroke: { role: 'ink', width },
})

/** Leads between electrical parts: two from the pack, three to the motor. */
function leads(from: number, to: number, y: number, count: number): Shape[] {
  return Array.from({ length: count }, (_, index) => line(from, to, y + (index - (count - 1) / 2) * 7, 1))
}

/** A shaft seen from its side: two lines and, along its middle, a chain line. */
function shaft(from: number, to: number, y: number): Shape[] {
  const middle: Shape = {
    shape: 'line',
    from: { x: from, y },
    to: { x: to, y },
    stroke: { role: 'quiet', width: 0.6, dash: [8, 2, 1.5, 2] },
  }
  return [line(from, to, y - 2.5, 0.9), line(from, to, y + 2.5, 0.9), middle]
}

/** What joins each part to the next, drawn behind both. */
export function connectors(items: readonly Placed[], y: number): Shape[] {
  return items.slice(1).flatMap((item, index): Shape[] => {
    const before = items[index]
    if (before === undefined) return []
    const from = before.left + before.drawn.exit
    const to = item.left + item.drawn.entry
    if (item.part === 'controller') return leads(from, to, y, 2)
    if (item.part === 'motor') return leads(from, to, y, 3)
    return shaft(from, to, y)
  })
}
