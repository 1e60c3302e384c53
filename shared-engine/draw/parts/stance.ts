import type { VehiclePart } from '../../machine/parts.ts'
import type { Shape } from '../scene.ts'
import { px } from './outline.ts'

/** Where the machine stands, px: rear and front of the patch, the rear end of its loop, the ground. */
interface Stance {
  readonly patchFrom: number
  readonly patchTo: number
  readonly rear: number
  /** Of the hull: its rear end, and the top of the loop under it. */
  readonly hull: number
  readonly loopTop: number
  readonly ground: number
}

/** The hook that a load is towed by, at its height, where one is towed; nothing above what is drawn. */
export function hitch({ towForce, towHeight }: VehiclePart, scale: number, stance: Stance): Shape[] {
  const y = stance.ground - towHeight * scale
  if (towForce <= 0 || y < 24) return []
  const { rear } = stance
  const held = y < stance.loopTop ? stance.hull : rear + 5
  const d = `M${px(held)} ${px(y)}H${px(rear - 3)}M${px(rear - 3)} ${px(y - 3)}a3 3 0 1 0 0 6`
  return [{ shape: 'path', id: 'hitch', d, stroke: { role: 'ink', width: 1.4 } }]
}

/** The belly over the ground: a chain line at its clearance, with the height marked at one end. */
export function belly({ clearance }: VehiclePart, scale: number, stance: Stance): Shape[] {
  if (clearance === null || clearance * scale < 3) return []
  const { patchFrom, patchTo, ground } = stance
  const y = ground - clearance * scale
  const x = (patchFrom + patchTo) / 2
  const arrow = `M${px(x - 2)} ${px(y + 3)}l2 -3l2 3M${px(x)} ${px(y)}V${px(ground - 2)}M${px(x - 2)} ${px(ground - 5)}l2 3l2 -3`
  return [
    {
      shape: 'line',
      id: 'belly',
      from: { x: patchFrom, y },
      to: { x: patchTo, y },
      stroke: { role: 'quiet', width: 0.8, dash: [8, 2, 1.5, 2] },
    },
    { shape: 'path', d: arrow, stroke: { role: 'quiet', width: 0.8 } },
  ]
}
