import type { Shape } from '../scene.ts'
import { pipeAt } from './coolant.ts'
import { px } from './outline.ts'
import type { DrawnMachine, RowItem } from './row.ts'
import { bearingSign, breakSign, limiterSign } from './shaft-signs.ts'

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
    if (item.part === 'wires' || item.part === 'controller') return leads(from, to, y, 2)
    if (item.part === 'cooling' || item.part === 'motor') return leads(from, to, y, 3)
    return shaft(from, to, y)
  })
}

/** Whether two parts are both drawn to scale, and not to the same one. */
const scaleChanges = ({ drawn: one }: RowItem, { drawn: other }: RowItem): boolean =>
  one.scale !== null && other.scale !== null && one.scale !== other.scale

/** Whether some parts of the row are drawn to other scales than some before them. */
export function isBroken(items: readonly RowItem[]): boolean {
  return items.slice(1).some((item, index) => scaleChanges(items[index] ?? item, item))
}

/**
 * Bearings and limiter of the shafts between the parts, and a break where the scale changes; drawn over both: where there
 * is no gap they stand on the wheels.
 */
export function shaftSigns(items: readonly Placed[], machine: DrawnMachine, y: number): Shape[] {
  return items.slice(1).flatMap((item, index): Shape[] => {
    const before = items[index]
    const stage = /^stage\.(\d+)$/.exec(before?.part ?? '')
    if (before === undefined || stage === null) return []
    const { shaft, slipTorque } = machine.stages[Number(stage[1]) - 1] ?? {}
    const [from, to] = [before.left + before.drawn.width, item.left]
    const middle = (from + to) / 2
    const own = shaft?.bearing ?? null
    const track = item.part === 'track' ? (machine.track.shaft?.bearing ?? null) : null
    const apart = Math.max(9, Math.min(14, (to - from) / 3))
    const others = own !== null || track !== null || typeof slipTorque === 'number'
    const shapes = [
      ...(scaleChanges(before, item) ? [breakSign(others ? to - 4 : middle)] : []),
      ...(own === null ? [] : bearingSign(own, middle - apart)),
      ...(typeof slipTorque === 'number' ? limiterSign(middle) : []),
      ...(track === null ? [] : bearingSign(track, middle + apart)),
    ]
    return shapes.length === 0 ? [] : [{ shape: 'group', shift: { x: 0, y }, shapes }]
  })
}

/** Pipes from the circuit's cell to controller and motor: pump to motor, over the top to the controller, down to the radiator. */
export function pipes(items: readonly Placed[], y: number): Shape[] {
  const at = items.findIndex(({ part }) => part === 'cooling')
  const [controller, cell, motor] = [items[at - 1], items[at], items[at + 1]]
  if (controller === undefined || cell === undefined || motor === undefined) return []
  const middle = controller.left + controller.drawn.middle
  const rim = motor.left + motor.drawn.middle - 15
  const [left, right] = [cell.left, cell.left + cell.drawn.width]
  const d =
    `M${px(right)} ${px(y + pipeAt)}H${px(rim)}M${px(rim)} ${px(y - pipeAt)}H${px(right)}` +
    `M${px(left)} ${px(y - pipeAt)}H${px(middle)}V${px(y - 24)}M${px(middle)} ${px(y + 24)}V${px(y + pipeAt)}H${px(left)}`
  return [{ shape: 'path', id: 'pipes', d, stroke: { role: 'quiet', width: 2.2 } }]
}
