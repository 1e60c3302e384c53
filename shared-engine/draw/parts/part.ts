import type { RunningLoop, TurningWheel } from '../power-path-scene.ts'
import type { DrawnJoint } from './joint.ts'
import type { Shape } from '../scene.ts'

/**
 * One part of the power path in its own px: x from its left edge, y = 0 on the axis that runs through the whole row.
 * Every drawn part has this shape.
 */
export interface DrawnPart {
  readonly shapes: readonly Shape[]
  readonly wheels: readonly TurningWheel[]
  readonly loops: readonly RunningLoop[]
  readonly width: number
  /** x of the middle of its words. */
  readonly middle: number
  /** x where its shaft or lead comes in, and where the next one leaves. */
  readonly entry: number
  readonly exit: number
  /** What is drawn, for screen readers. */
  readonly description: string
  /** px per m; null where it is a symbol, not to scale. */
  readonly scale: number | null
}

/** The room that a part may take, px; `half` up and down from the axis. */
export interface Room {
  readonly width: number
  readonly half: number
}

/** How a motor's turning reaches this part: motor turns as 1 or −1 as drawn, times the ratios so far. */
export interface Turning {
  readonly id: string
  /** Turns of this part's driver per motor turn, clockwise positive as drawn. */
  readonly turns: number
  /** How its first wheel sits on the shaft that comes in. */
  readonly joint?: DrawnJoint
}

/** One wheel's tooth count as words: "13 teeth". */
export function teethText(teeth: number): string {
  return `${teeth} teeth`
}

/** A ratio in three figures. */
export function ratioText(ratio: number): string {
  return String(Number(ratio.toPrecision(3)))
}

/** How a kind of reduction is drawn. Methods, so that a table of all kinds can be called with any reduction. */
export interface StageDrawing<Stage> {
  /** +1 where the driven wheel turns the way of its driver, −1 where it is turned round. */
  readonly sense: 1 | -1
  /** px per m at which it fits its room; null where it is not drawn to scale. */
  scale(stage: Stage, room: Room): number | null
  draw(stage: Stage, room: Room, scale: number, turning: Turning): DrawnPart
}
