import type { Marker, Role } from '../role.ts'
import type { Point, Shape } from '../scene.ts'

const half = 3.2

/** The small sign by which a series is known without its colour. */
export function markerShape(marker: Marker, at: Point, role: Role, size = half): Shape {
  const { x, y } = at
  const points = (...steps: readonly (readonly [number, number])[]): readonly Point[] =>
    steps.map(([dx, dy]) => ({ x: x + dx * size, y: y + dy * size }))
  const rim = { role: 'paper', width: 1 } as const
  switch (marker) {
    case 'disc':
      return { shape: 'circle', centre: at, radius: size, fill: role, stroke: rim }
    case 'ring':
      return { shape: 'circle', centre: at, radius: size, fill: 'paper', stroke: { role, width: 1.5 } }
    case 'square':
      return {
        shape: 'polygon',
        points: points([-0.9, -0.9], [0.9, -0.9], [0.9, 0.9], [-0.9, 0.9]),
        fill: role,
        stroke: rim,
      }
    case 'triangle':
      return { shape: 'polygon', points: points([0, -1.2], [1.1, 0.8], [-1.1, 0.8]), fill: role, stroke: rim }
    case 'diamond':
      return {
        shape: 'polygon',
        points: points([0, -1.3], [1.3, 0], [0, 1.3], [-1.3, 0]),
        fill: role,
        stroke: rim,
      }
    case 'flag': {
      const [h, w] = [3.4 * size, 2 * size]
      const d = `M${x} ${y}v${-h}l${w} ${0.28 * h}l${-w} ${0.28 * h}`
      return { shape: 'path', d, stroke: { role, width: 1.6 } }
    }
    case 'cross': {
      const d = `M${x - size} ${y - size}l${2 * size} ${2 * size}M${x - size} ${y + size}l${2 * size} ${-2 * size}`
      return { shape: 'path', d, stroke: { role, width: 1.6 } }
    }
  }
}
