import type { StageKindId } from '../../entries/parts/stages/kinds.ts'
import type { StagePart } from '../../machine/parts.ts'
import type { DrawnPart, Room, StageDrawing, Turning } from './part.ts'
import * as table from './stage-kinds.ts'

/** How each kind of reduction is drawn. */
const kinds = { ...table } satisfies {
  readonly [Kind in StageKindId]: StageDrawing<Extract<StagePart, { kind: Kind }>>
}

/** The same, to be called with a reduction of the very kind that it is looked up by. */
const drawingOf: Readonly<Record<StageKindId, StageDrawing<StagePart>>> = kinds

/** px per m at which a reduction fits its room; null for one that is not drawn to scale. */
function stageScale(stage: StagePart, room: Room): number | null {
  return drawingOf[stage.kind].scale(stage, room)
}

/** A reduction of any kind in its room. */
export function drawStage(stage: StagePart, room: Room, scale: number, turning: Turning): DrawnPart {
  return drawingOf[stage.kind].draw(stage, room, scale, turning)
}

/** +1 where the driven wheel turns the way of its driver, −1 where gear teeth turn it round. */
export function senseOf(stage: StagePart): 1 | -1 {
  return drawingOf[stage.kind].sense
}

/** How far the scales of reductions may lie apart for one to serve all: the smallest is then still half as large as it could be. */
const mostApart = 2

/**
 * One scale for all reductions where they lie within a factor of two of each other, so that they can be compared by eye.
 * Else each its own, drawn apart by the square root of what they are: what is smaller in truth is smaller on the page too,
 * and a break on the shaft between says that the scale changes.
 */
export function stageScales(stages: readonly StagePart[], room: Room): (number | null)[] {
  const own = stages.map((stage) => stageScale(stage, room))
  const known = own.filter((scale) => scale !== null)
  const least = Math.min(...known)
  const together = Math.max(...known) <= mostApart * least
  return own.map((scale) => (scale === null ? null : together ? least : Math.sqrt(least * scale)))
}
