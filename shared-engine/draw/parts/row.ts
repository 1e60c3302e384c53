import type { Machine } from '../../machine/parts.ts'
import { drawController } from './controller.ts'
import { drawMotor } from './motor.ts'
import { drawPack } from './pack.ts'
import type { DrawnPart, Room } from './part.ts'
import { drawStage, senseOf, stageScales } from './stage.ts'
import { drawTrack } from './track.ts'
import type { TrackLayout } from './track-loop.ts'

/** Less room that the loop has above and below the axis than the other parts, px: the hull stands on it. */
const hullRoom = 8
/** Least px of a part with its words, and between two parts. */
export const leastCell = 70
const gap = 16
const groundWidth = 78

/** What of a machine is drawn; nothing else of it reaches the drawing. */
export interface DrawnMachine extends Pick<Machine, 'stages' | 'track' | 'vehicle' | 'ground'> {
  readonly pack: Pick<Machine['pack'], 'series'>
  readonly motor: Pick<Machine['motor'], 'count' | 'polePairs'>
  readonly train: Pick<Machine['train'], 'ratio'>
}

/** What stands in the row, left to right, before it is spread over the width. */
export interface RowItem {
  readonly part: string
  readonly label: string
  readonly drawn: DrawnPart
}

export interface Row {
  readonly items: readonly RowItem[]
  readonly layout: TrackLayout | null
  readonly groundWidth: number
}

const times = (label: string, count: number): string => (count > 1 ? `${label} ×${count}` : label)

function trackWidth(width: number, stages: number): number {
  const share = stages > 4 ? 0.2 : stages > 3 ? 0.24 : 0.32
  return Math.max(190, Math.min(430, width * share))
}

/** Room for each reduction after everything else has its own. */
function stageRoom(machine: DrawnMachine, width: number, half: number): Room {
  const count = machine.stages.length
  const fixed = 74 + 56 + 74 + groundWidth + trackWidth(width, count)
  const left = width - fixed - (count + 4) * gap
  return { width: Math.max(leastCell, Math.min(250, left / Math.max(1, count))), half }
}

/** Motor turns as drawn: clockwise or not, so that the sprocket always rolls the machine to the right. */
function motorSense(machine: DrawnMachine): number {
  return machine.stages.reduce((sense, stage) => sense * senseOf(stage), 1)
}

function stageItems(machine: DrawnMachine, width: number, half: number): RowItem[] {
  const room = stageRoom(machine, width, half)
  const scales = stageScales(machine.stages, room)
  let turns = motorSense(machine)
  return machine.stages.map((stage, index) => {
    const part = `stage.${index + 1}`
    const drawn = drawStage(stage, room, scales[index] ?? 1, { id: part, turns })
    turns *= senseOf(stage) / stage.ratio
    const label = machine.stages.length > 1 ? `Reduction ${index + 1}` : 'Reduction'
    return { part, label, drawn }
  })
}

/**
 * Every part of the machine in its room, from the pack to the loop.
 *
 * @param half room for drawing above and below the row's axis, px
 */
export function rowOf(machine: DrawnMachine, width: number, cellsInParallel: number, half: number): Row {
  const { motor, track, vehicle } = machine
  const room = { width: trackWidth(width, machine.stages.length), half: half - hullRoom }
  const loop = drawTrack(track, vehicle.contactLength, room, { id: 'track', turns: 1 / machine.train.ratio })
  const items: RowItem[] = [
    {
      part: 'pack',
      label: 'Pack',
      drawn: drawPack(machine.pack.series, cellsInParallel, { width, half }),
    },
    { part: 'controller', label: times('Controller', motor.count), drawn: drawController(motor.count) },
    {
      part: 'motor',
      label: times('Motor', motor.count),
      drawn: drawMotor(motor.count, 2 * motor.polePairs, { id: 'motor', turns: motorSense(machine) }),
    },
    ...stageItems(machine, width, half),
    { part: 'track', label: times('Track', track.count), drawn: loop },
  ]
  return { items, layout: loop.layout, groundWidth }
}
