import type { StagePart } from '../../machine/parts.ts'
import { beltScale, drawBelt } from './belt.ts'
import { chainScale, drawChain } from './chain.ts'
import { drawFixed } from './fixed.ts'
import { drawGear, gearScale } from './gear.ts'
import type { DrawnPart, Room, Turning } from './part.ts'

/** px per m at which a reduction fits its room; null for one that is not drawn to scale. */
export function stageScale(stage: StagePart, room: Room): number | null {
  switch (stage.kind) {
    case 'gear':
      return gearScale(stage, room)
    case 'belt':
      return beltScale(stage, room)
    case 'chain':
      return chainScale(stage, room)
    case 'fixed':
      return null
  }
}

/** A reduction of any kind in its room. */
export function drawStage(stage: StagePart, room: Room, scale: number, turning: Turning): DrawnPart {
  switch (stage.kind) {
    case 'gear':
      return drawGear(stage, room, scale, turning)
    case 'belt':
      return drawBelt(stage, room, scale, turning)
    case 'chain':
      return drawChain(stage, room, scale, turning)
    case 'fixed':
      return drawFixed(stage, room, scale, turning)
  }
}

/** +1 where the driven wheel turns the way of its driver, −1 where gear teeth turn it round. */
export function senseOf(stage: StagePart): number {
  return stage.kind === 'gear' ? -1 : 1
}

/**
 * One scale for all reductions where they lie within a factor of 1.6 of each other, so that they can be compared by
 * eye; else each its own.
 */
export function stageScales(stages: readonly StagePart[], room: Room): (number | null)[] {
  const own = stages.map((stage) => stageScale(stage, room))
  const known = own.filter((scale) => scale !== null)
  const least = Math.min(...known)
  const together = Math.max(...known) <= 1.6 * least
  return own.map((scale) => (scale !== null && together ? least : scale))
}
