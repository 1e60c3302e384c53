import type { GroundPart } from '../../machine/parts.ts'
import type { Shape } from '../scene.ts'
import { px } from './outline.ts'

/** The ground under the machine: hatched where it is firm, dotted where it is soil; `width` px from the left. */
export function groundLine(ground: GroundPart, width: number): Shape[] {
  const line: Shape = {
    shape: 'line',
    from: { x: 0, y: 0 },
    to: { x: width, y: 0 },
    stroke: { role: 'ink', width: 1 },
  }
  const count = Math.floor(width / 7)
  const firm = Array.from({ length: count }, (_, index) => `M${px(index * 7 + 6)} 1l-5 5`).join('')
  const loose = Array.from({ length: count }, (_, index) => {
    const x = index * 7 + 3
    return `M${px(x)} 3h1.2M${px(x + 3.5)} 6.2h1.2`
  }).join('')
  const below: Shape =
    ground.model === 'soil'
      ? { shape: 'path', d: loose, stroke: { role: 'quiet', width: 1.2 } }
      : { shape: 'path', d: firm, stroke: { role: 'quiet', width: 0.7 } }
  return [below, line]
}

/** The slope as a wedge at its true angle, its foot at the origin, `width` px long; nothing on the level. */
export function slopeWedge(grade: number, width: number, most: number): Shape[] {
  if (grade <= 0) return []
  const run = Math.min(width, most / grade)
  const rise = run * grade
  return [
    {
      shape: 'path',
      d: `M0 0H${px(run)}V${px(-rise)}Z`,
      fill: 'hairline',
      fillOpacity: 0.35,
      stroke: { role: 'ink', width: 0.9 },
    },
  ]
}
