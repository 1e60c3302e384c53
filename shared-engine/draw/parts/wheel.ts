import type { GroupShape, Point, Shape } from '../scene.ts'
import { borePath, type DrawnJoint } from './joint.ts'
import { circlePath, polar } from './outline.ts'
import { fullTurn } from '../../constants.ts'

/** What a wheel looks like inside its teeth; radii in px. */
interface WheelLook {
  readonly id: string
  readonly centre: Point
  /** Degrees clockwise. */
  readonly phase: number
  /** Outline as path data about the wheel's own centre. */
  readonly outline: string
  readonly pitchRadius: number
  /** Where the teeth begin. */
  readonly rootRadius: number
  /** How it sits on its shaft. */
  readonly joint?: DrawnJoint
}

/** Round holes in the web of a large wheel: they lighten it, and show that it turns. */
function lightening(rootRadius: number): string {
  if (rootRadius < 22) return ''
  const holes = rootRadius < 60 ? 5 : 6
  const radius = rootRadius * 0.16
  return Array.from({ length: holes }, (_, index) =>
    circlePath(radius, polar((fullTurn * (index + 0.5)) / holes, rootRadius * 0.6)),
  ).join('')
}

/** A wheel as a group that stands at its centre: toothed outline, pitch circle as a chain line, hub, bore and joint. */
export function wheelGroup(look: WheelLook): GroupShape {
  const { rootRadius, pitchRadius } = look
  const boreRadius = Math.min(7, Math.max(1.6, rootRadius * 0.2))
  const large = rootRadius > 14
  const shapes: Shape[] = [
    {
      shape: 'path',
      d: look.outline + lightening(rootRadius),
      fill: 'paper',
      stroke: { role: 'ink', width: large ? 1.1 : 0.9 },
    },
    {
      shape: 'path',
      d: borePath(boreRadius, look.joint ?? null),
      fill: 'paper',
      stroke: { role: 'ink', width: 0.9 },
    },
  ]
  if (large) {
    const chainLine = { role: 'quiet', width: 0.6, dash: [7, 2, 1.5, 2] } as const
    shapes.push({ shape: 'circle', centre: { x: 0, y: 0 }, radius: pitchRadius, stroke: chainLine })
    shapes.push({
      shape: 'circle',
      centre: { x: 0, y: 0 },
      radius: boreRadius * 1.9,
      stroke: { role: 'quiet', width: 0.7 },
    })
  }
  return { shape: 'group', id: look.id, shift: look.centre, turn: look.phase, shapes }
}
