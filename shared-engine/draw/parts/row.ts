import type { CoolingPart, Machine } from '../../machine/parts.ts'
import type { UnitSystem } from '../../units/kinds.ts'
import type { Box } from '../scene.ts'
import { drawController } from './controller.ts'
import { drawCoolant } from './coolant.ts'
import type { DrawnJoint } from './joint.ts'
import { drawMotor } from './motor.ts'
import { drawPack } from './pack.ts'
import type { DrawnPart, Room } from './part.ts'
import { drawStage, senseOf, stageScales } from './stage.ts'
import { drawTrack } from './track.ts'
import type { TrackLayout } from './track-loop.ts'
import { drawWiring, hasWiring, wireText, type DrawnWire, type DrawnWiring } from './wiring.ts'

/** Less room that the loop has above and below the axis than the other parts, px: the hull stands on it. */
const hullRoom = 8
/** Least px of a part with its words, and between two parts. */
export const leastCell = 70
const gap = 16
/** Of the ground, with room above it for the words of what is not drawn, in one column or two. */
const groundWidths = { narrow: 90, wide: 158 } as const
/** Words that stand in one column. */
const wordsInColumn = 3
/** With more reductions than this, the drawing needs the room. */
const roomyStages = 4

/** What of a machine is drawn; nothing else of it reaches the drawing. */
export interface DrawnMachine extends Pick<Machine, 'stages' | 'track' | 'vehicle' | 'ground'> {
  readonly pack: Pick<Machine['pack'], 'series' | 'fuseAmps'>
  readonly motor: Pick<Machine['motor'], 'count' | 'polePairs'> & {
    readonly joint: { readonly joint: DrawnJoint } | null
  }
  readonly train: Pick<Machine['train'], 'ratio'>
  readonly wires: readonly DrawnWire[]
  readonly stepDowns: DrawnWiring['stepDowns']
  readonly cooling: Pick<CoolingPart, 'capPressure'> | null
}

interface RowLook {
  readonly system: UnitSystem
  readonly cellsInParallel: number
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
  /** Where the supplies hang, from the left edge of the wiring; null where none are. */
  readonly supplies: Box | null
  readonly undrawn: readonly UndrawnPart[]
}

/** A part of the build that has no place in the drawing: a word at the row's end. */
interface UndrawnPart {
  readonly part: string
  readonly label: string
}

function undrawnOf(machine: DrawnMachine): UndrawnPart[] {
  return [
    { part: 'accessories', label: 'Accessories' },
    ...(machine.stepDowns.length > 0 ? [] : [{ part: 'stepDowns', label: 'Supplies' }]),
    ...(hasWiring(wiringOf(machine)) ? [] : [{ part: 'wires', label: 'Wires' }]),
    ...(machine.cooling === null ? [{ part: 'cooling', label: 'Cooling' }] : []),
    { part: 'service', label: 'Conditions' },
  ]
}

function wiringOf({ wires, stepDowns, pack }: DrawnMachine): DrawnWiring {
  return { wires, stepDowns, fuseAmps: pack.fuseAmps }
}

const times = (label: string, count: number): string => (count > 1 ? `${label} ×${count}` : label)

function trackWidth(width: number, cells: number): number {
  const share = cells > 4 ? 0.2 : cells > 3 ? 0.24 : 0.32
  return Math.max(190, Math.min(430, width * share))
}

/** Room for each reduction after everything else has its own. */
function stageRoom(machine: DrawnMachine, { width, half }: Room, ends: Ends): Room {
  const count = machine.stages.length
  const extra = ends.extras.reduce((sum, { drawn }) => sum + drawn.width, 0)
  const fixed = 74 + 56 + 74 + ends.ground + extra + trackWidth(width, count + ends.extras.length)
  const left = width - fixed - (count + ends.extras.length + 4) * gap
  return { width: Math.max(leastCell, Math.min(250, left / Math.max(1, count))), half }
}

/** What takes room besides the reductions: cells that not every machine has, and the ground. */
interface Ends {
  readonly extras: readonly RowItem[]
  readonly ground: number
}

/** Motor turns as drawn: clockwise or not, so that the sprocket always rolls the machine to the right. */
function motorSense(machine: DrawnMachine): number {
  return machine.stages.reduce((sense, stage) => sense * senseOf(stage), 1)
}

function stageItems(machine: DrawnMachine, row: Room, ends: Ends): RowItem[] {
  const room = stageRoom(machine, row, ends)
  const scales = stageScales(machine.stages, room)
  let turns = motorSense(machine)
  return machine.stages.map((stage, index) => {
    const part = `stage.${index + 1}`
    const joint = index === 0 ? (machine.motor.joint?.joint ?? null) : null
    const drawn = drawStage(stage, room, scales[index] ?? 1, { id: part, turns, joint })
    turns *= senseOf(stage) / stage.ratio
    const label = machine.stages.length > 1 ? `Reduction ${index + 1}` : 'Reduction'
    return { part, label, drawn }
  })
}

/**
 * Every part of the machine in its room, from the pack to the loop.
 *
 * @param room px of the whole row, and above and below its axis
 */
export function rowOf(machine: DrawnMachine, { width, half }: Room, look: RowLook): Row {
  const { motor, track, vehicle } = machine
  const undrawn = undrawnOf(machine)
  const motorWire = wireText(machine.wires, 'motor', look.system)
  const wiring = hasWiring(wiringOf(machine)) ? drawWiring(wiringOf(machine), look.system) : null
  const wires: RowItem[] = wiring === null ? [] : [{ part: 'wires', label: 'Wires', drawn: wiring }]
  const cooling: RowItem[] =
    machine.cooling === null
      ? []
      : [{ part: 'cooling', label: 'Cooling', drawn: drawCoolant(machine.cooling, motorWire) }]
  const extras = [...wires, ...cooling]
  const wide = undrawn.length > wordsInColumn && machine.stages.length + extras.length <= roomyStages
  const ground = wide ? groundWidths.wide : groundWidths.narrow
  const room = { width: trackWidth(width, machine.stages.length + extras.length), half: half - hullRoom }
  const loop = drawTrack(track, vehicle.contactLength, room, { id: 'track', turns: 1 / machine.train.ratio })
  const items: RowItem[] = [
    {
      part: 'pack',
      label: 'Pack',
      drawn: drawPack(machine.pack.series, look.cellsInParallel, { width, half }),
    },
    ...wires,
    {
      part: 'controller',
      label: times('Controller', motor.count),
      drawn: drawController(motor.count, machine.cooling === null ? motorWire : null),
    },
    ...cooling,
    {
      part: 'motor',
      label: times('Motor', motor.count),
      drawn: drawMotor(motor.count, 2 * motor.polePairs, {
        id: 'motor',
        turns: motorSense(machine),
        joint: motor.joint?.joint ?? null,
      }),
    },
    ...stageItems(machine, { width, half }, { extras, ground }),
    { part: 'track', label: times('Track', track.count), drawn: loop },
  ]
  return { items, layout: loop.layout, groundWidth: ground, supplies: wiring?.supplies ?? null, undrawn }
}
