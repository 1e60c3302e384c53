import type { VehiclePart } from '../../machine/parts.ts'
import type { Box, Point, Shape } from '../scene.ts'
import { px } from './outline.ts'

/** The sign for a centre of mass: a circle with two opposite quarters filled. */
export function centreOfMass(at: Point, radius = 5): Shape[] {
  const r = px(radius)
  const quarters = `M0 0V-${r}A${r} ${r} 0 0 1 ${r} 0ZM0 0V${r}A${r} ${r} 0 0 1 -${r} 0Z`
  return [
    {
      shape: 'group',
      shift: at,
      shapes: [
        {
          shape: 'circle',
          centre: { x: 0, y: 0 },
          radius,
          fill: 'paper',
          stroke: { role: 'ink', width: 0.9 },
        },
        { shape: 'path', d: quarters, fill: 'ink' },
      ],
    },
  ]
}

/** The body above the loop, in outline only: the build knows its mass, not its shape. */
export function hull(box: Box): Shape {
  const { x, y, width, height } = box
  const slant = Math.min(height, width * 0.1)
  return {
    shape: 'path',
    d: `M${px(x)} ${px(y + height)}L${px(x + slant * 0.5)} ${px(y)}H${px(x + width - slant * 1.4)}L${px(x + width)} ${px(y + height)}`,
    stroke: { role: 'quiet', width: 0.9 },
  }
}

/** Where the centre of mass stands against the patch, px from its rear end on the ground; null where not entered. */
export function centreOfMassAt(vehicle: VehiclePart, scale: number): Point | null {
  const { centreAhead, centreHeight } = vehicle
  if (centreAhead === null || centreHeight === null) return null
  return { x: centreAhead * scale, y: -centreHeight * scale }
}
