import type { BearingPart } from '../../machine/bearing.ts'
import type { Shape } from '../scene.ts'
import { circlePath, px } from './outline.ts'

/**
 * A rolling bearing in section, on either side of a shaft along y = 0: a frame with the ball or the roller in it.
 *
 * *Source:* after the frames of ISO 8826-2 (from memory).
 */
export function bearingSign({ kind }: Pick<BearingPart, 'kind'>, x: number): Shape[] {
  const frame = (top: number) => `M${px(x - 3.5)} ${px(top)}h7v7h-7Z`
  const element = (middle: number) =>
    kind === 'ball' ? circlePath(1.9, { x, y: middle }) : `M${px(x - 2)} ${px(middle - 1.3)}h4v2.6h-4Z`
  return [
    { shape: 'path', d: frame(-10) + frame(3), fill: 'paper', stroke: { role: 'ink', width: 0.9 } },
    { shape: 'path', d: element(-6.5) + element(6.5), fill: 'ink' },
  ]
}

/** A break of a shaft along y = 0: what stands on either side is drawn to another scale. */
export function breakSign(x: number): Shape {
  const slant = 'l2.5 -13'
  return {
    shape: 'group',
    shapes: [
      { shape: 'path', d: `M${px(x - 3.5)} 6.5${slant}h4.5l-2.5 13Z`, fill: 'paper' },
      {
        shape: 'path',
        d: `M${px(x - 3.5)} 6.5${slant}M${px(x + 1)} 6.5${slant}`,
        stroke: { role: 'ink', width: 0.9 },
      },
    ],
  }
}

/** A limiter on a shaft along y = 0: two plates face to face, pressed by a spring. */
export function limiterSign(x: number): Shape[] {
  const plates = `M${px(x - 1.6)} -9V9M${px(x + 1.6)} -9V9`
  const spring = `M${px(x + 1.6)} 0l1.5 -3l2 6l2 -6l2 6l1.5 -3`
  return [
    { shape: 'path', d: plates, stroke: { role: 'ink', width: 1.6 } },
    { shape: 'path', d: spring, stroke: { role: 'ink', width: 0.8 } },
  ]
}
