import type { Point, Box, Scene } from './scene.ts'

/** 'pack', 'controller', 'motor', `stage.${n}`, 'track', 'vehicle', 'ground', 'wires', 'stepDowns', 'cooling'. */
type DrawnPart = string

/** One part of the row from pack to ground: where it is, where its words go, what it is called. */
export interface PathPart {
  readonly part: DrawnPart
  /** Short name under the drawing: "Motor ×2". */
  readonly label: string
  /** What is drawn, for screen readers: "gear, 13 driving 40 teeth, ratio 3.08". */
  readonly description: string
  /** px: where a click or the focus ring belongs. */
  readonly box: Box
  /** px: middle of the first line of its two live figures. */
  readonly figures: Point
  /** px: where the sign of its worst limit stands. */
  readonly sign: Point
}

/** A wheel that can turn: the group of that id stands at its centre, so turning it is one attribute. */
export interface TurningWheel {
  readonly id: string
  readonly shift: Point
  /** Degrees clockwise at rest: keeps teeth in mesh. */
  readonly phase: number
  /** Turns per motor turn, clockwise positive as drawn. */
  readonly turnsPerMotorTurn: number
}

/** A belt, chain or loop that runs: equal links along a closed path, each link one group. */
export interface RunningLoop {
  /** Ids of its links are `${id}.${index}` from 0. */
  readonly id: string
  readonly count: number
  /** Where link 0 can stand within one pitch; link k follows k pitches on. One place per step of `steps`. */
  readonly places: readonly LinkPlace[]
  /** Pitches moved per motor turn, along the path's direction positive. */
  readonly pitchesPerMotorTurn: number
  /** Places per pitch: place of link k at phase f is `places[(k · steps + round(f · steps)) mod (count · steps)]`. */
  readonly steps: number
}

export interface LinkPlace extends Point {
  /** Degrees. */
  readonly turn: number
}

/** The machine drawn from pack to ground. */
export interface PowerPathScene extends Scene {
  readonly parts: readonly PathPart[]
  readonly wheels: readonly TurningWheel[]
  readonly loops: readonly RunningLoop[]
  /** Where a flag may stand: under the motor, and with its foot on the ground. */
  readonly flags: { readonly motor: Point; readonly ground: Point }
  /** Parts without a place in it: words at the row's end, over the ground. */
  readonly undrawn: readonly { readonly part: string; readonly label: string }[]
}
