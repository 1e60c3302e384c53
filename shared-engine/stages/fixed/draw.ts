import type { FixedStage } from './machine.ts'
import type { Shape } from '../../draw/scene.ts'
import { ratioText } from '../../draw/parts/part.ts'
import type { DrawnPart, Room, StageDrawing, Turning } from '../../draw/parts/part.ts'

/** A gearbox of which only the ratio is known: a housing with its ratio, and shaft stubs; not to scale. */
function drawFixed(stage: FixedStage, room: Room, _scale: number, turning: Turning): DrawnPart {
  const width = Math.min(76, Math.max(64, room.width))
  const half = Math.min(26, room.half)
  const shapes: Shape[] = [
    {
      shape: 'path',
      d: `M7 ${-half + 6}L13 ${-half}H${width - 13}L${width - 7} ${-half + 6}V${half - 6}L${width - 13} ${half}H13L7 ${half - 6}Z`,
      fill: 'paper',
      stroke: { role: 'ink', width: 1.1 },
    },
    { shape: 'path', d: `M0 -3H7V3H0ZM${width - 7} -4H${width}V4H${width - 7}Z`, fill: 'ink' },
    {
      shape: 'text',
      at: { x: width / 2, y: 4.5 },
      text: `${ratioText(stage.ratio)} : 1`,
      size: 13,
      role: 'ink',
      anchor: 'middle',
    },
  ]
  return {
    shapes: [{ shape: 'group', id: `${turning.id}.box`, shapes }],
    wheels: [],
    loops: [],
    width,
    middle: width / 2,
    entry: 0,
    exit: width,
    description: `closed gearbox, ratio ${ratioText(stage.ratio)}`,
    scale: null,
  }
}

export const fixedDrawing: StageDrawing<FixedStage> = { sense: 1, scale: () => null, draw: drawFixed }
