import type { UnitSystem } from '../units/kinds.ts'
import { connectors, isBroken, pipes, shaftSigns } from './parts/connectors.ts'
import { groundLine, slopeWedge } from './parts/ground.ts'
import { degrees } from './parts/outline.ts'
import { leastCell, rowOf } from './parts/row.ts'
import type { DrawnMachine, Row, RowItem } from './parts/row.ts'
import { scaleBar } from './parts/scale-bar.ts'
import { belly, hitch } from './parts/stance.ts'
import { centreOfMass, centreOfMassAt, hull } from './parts/vehicle.ts'
import type { PathPart, PowerPathScene } from './power-path-scene.ts'
import type { Shape } from './scene.ts'

/** Where things stand below each other, px from the top. */
interface Levels {
  /** Room for drawing above and below the axis. */
  readonly half: number
  /** Of the axis that runs through every shaft. */
  readonly axis: number
  readonly bar: number
  readonly label: number
  /** Of the first of a part's two figures. */
  readonly figures: number
  readonly height: number
}

function levelsOf(half: number): Levels {
  const axis = half + 22
  const below = axis + half
  return { half, axis, bar: below + 9, label: below + 29, figures: below + 45, height: below + 72 }
}

const usual = levelsOf(60)
/** Where the window is low: the drawing gives way, not the words. */
const low = levelsOf(40)
const margin = 12

interface PowerPathLook {
  /** px. */
  readonly width: number
  readonly system: UnitSystem
  /** Cells side by side in the pack: drawn, but nothing the physics needs. */
  readonly cellsInParallel?: number
  /** Whether the window is low, and the row with it. */
  readonly low?: boolean
}

/** An item of the row with the x of its left edge. */
interface PlacedItem extends RowItem {
  readonly left: number
}

/** Spreads the parts over the width: each at least as wide as its words, what is left shared between them. */
function placed(row: Row, width: number): { readonly items: readonly PlacedItem[]; readonly ground: number } {
  const cells = row.items.map((item) => Math.max(leastCell, item.drawn.width))
  const used = cells.reduce((sum, cell) => sum + cell, 0) + row.groundWidth + 2 * margin
  const gap = Math.max(4, Math.min(72, (width - used) / row.items.length))
  let left = Math.max(margin, (width - used - gap * row.items.length) / 2 + margin)
  const items = row.items.map((item, index) => {
    const cell = cells[index] ?? 0
    const place = { ...item, left: left + (cell - item.drawn.width) / 2 }
    left += cell + gap
    return place
  })
  return { items, ground: left }
}

function pathPart(item: PlacedItem, { height, figures }: Levels): PathPart {
  const { drawn } = item
  const wide = Math.max(leastCell, drawn.width)
  const middle = item.left + drawn.middle
  return {
    part: item.part,
    label: item.label,
    description: drawn.description,
    box: { x: item.left + (drawn.width - wide) / 2, y: 4, width: wide, height: height - 8 },
    figures: { x: middle, y: figures },
    // Above the track there may be a hull: its sign stands over the sprocket.
    sign: { x: item.part === 'track' ? item.left + 30 : middle, y: 14 },
  }
}

function label(text: string, x: number, y: number): Shape {
  return { shape: 'text', at: { x, y }, text, size: 13, role: 'quiet', anchor: 'middle' }
}

/** Scale bars: one under every part with a scale of its own, once where neighbours share it. */
function bars(items: readonly PlacedItem[], system: UnitSystem, y: number): Shape[] {
  return items.flatMap((item, index): Shape[] => {
    const { scale } = item.drawn
    if (scale === null || items[index - 1]?.drawn.scale === scale) return []
    const shift = { x: item.left + item.drawn.middle, y }
    const longest = Math.min(52, Math.max(leastCell, item.drawn.width) - 46)
    return [{ shape: 'group', shift, shapes: scaleBar(scale, system, longest) }]
  })
}

/** Ground line, contact patch, slope: from the loop's rear to the row's end. */
/** px: where the ground's line runs. */
function groundLevel({ layout }: Row, scale: number, { axis, half }: Pick<Levels, 'axis' | 'half'>): number {
  return axis + (layout === null ? half : layout.ground * scale + 1.5)
}

function groundShapes(
  machine: DrawnMachine,
  row: Row,
  track: PlacedItem,
  ground: number,
  { axis, half }: Levels,
): Shape[] {
  const scale = track.drawn.scale ?? 1
  const y = groundLevel(row, scale, { axis, half })
  const from = track.left - 8
  const to = ground + row.groundWidth
  const shapes: Shape[] = [
    { shape: 'group', id: 'ground', shift: { x: from, y }, shapes: groundLine(machine.ground, to - from) },
  ]
  const wedge = slopeWedge(machine.ground.grade, 64, 44)
  if (wedge.length > 0) shapes.push({ shape: 'group', shift: { x: ground + 4, y }, shapes: wedge })
  return shapes
}

/** The contact patch: where the loop presses on the ground. */
function patchShapes(row: Row, track: PlacedItem, axis: number): Shape[] {
  const { layout } = row
  if (layout === null) return []
  const scale = track.drawn.scale ?? 1
  const zero = track.left + track.drawn.entry
  const at = (x: number) => ({ x: zero + x * scale, y: axis + layout.ground * scale + 3 })
  const stroke = { role: 'accent', width: 3 } as const
  return [{ shape: 'line', id: 'patch', from: at(layout.patch.from), to: at(layout.patch.to), stroke }]
}

function vehicleShapes(
  machine: DrawnMachine,
  row: Row,
  track: PlacedItem,
  axis: number,
): { shapes: Shape[]; part: PathPart | null } {
  const { layout } = row
  const scale = track.drawn.scale ?? 1
  if (layout === null) return { shapes: [], part: null }
  const zero = track.left + track.drawn.entry
  const loopTop = axis - layout.sprocket.radius * scale - 7
  const mass = layout.patchAsEntered ? centreOfMassAt(machine.vehicle, scale) : null
  const massAt = mass && {
    x: zero + layout.patch.from * scale + mass.x,
    y: axis + layout.ground * scale + mass.y,
  }
  const top = Math.max(22, Math.min(loopTop - 24, (massAt?.y ?? loopTop) - 10))
  const box = {
    x: zero + layout.sprocket.radius * 0.1 * scale,
    y: top,
    width: (layout.idler.centre.x - layout.sprocket.radius * 0.2) * scale,
    height: Math.max(12, loopTop - top),
  }
  const shown = massAt && massAt.y > 12 && massAt.x < zero + track.drawn.width
  const shapes: Shape[] = [
    { shape: 'group', id: 'vehicle', shapes: [hull(box), ...(shown ? centreOfMass(massAt) : [])] },
  ]
  const middle = box.x + box.width / 2
  // Words keep clear of the sign of the centre of mass.
  const clear = shown && Math.abs(massAt.x - middle) < 44 ? massAt.x - 52 : middle
  const part: PathPart = {
    part: 'vehicle',
    label: 'Machine',
    description: 'the machine on its loop',
    box,
    figures: { x: clear, y: box.y + box.height / 2 + 4.5 },
    sign: { x: clear - 54, y: box.y + box.height / 2 + 4.5 },
  }
  return { shapes, part }
}

/** The supplies hang in the wiring's cell and have fields of their own. */
function suppliesPart(row: Row, items: readonly PlacedItem[], axis: number): PathPart[] {
  const wiring = items.find(({ part }) => part === 'wires')
  if (row.supplies === null || wiring === undefined) return []
  const { x, y, width, height } = row.supplies
  const box = { x: wiring.left + x, y: axis + y, width, height }
  const middle = { x: box.x + width / 2, y: box.y + height / 2 }
  return [
    {
      part: 'stepDowns',
      label: 'Supplies',
      description: 'supplies of a lower voltage',
      box,
      figures: middle,
      sign: { x: middle.x + 8, y: box.y + height + 14 },
    },
  ]
}

/** Hook and belly: what stands over the ground by its own height. */
function stanceShapes(machine: DrawnMachine, row: Row, track: PlacedItem, axis: number): Shape[] {
  const { layout } = row
  if (layout === null) return []
  const scale = track.drawn.scale ?? 1
  const zero = track.left + track.drawn.entry
  const stance = {
    patchFrom: zero + layout.patch.from * scale,
    patchTo: zero + layout.patch.to * scale,
    rear: track.left,
    hull: zero + layout.sprocket.radius * 0.1 * scale + 8,
    loopTop: axis - layout.sprocket.radius * scale - 4,
    ground: axis + layout.ground * scale,
  }
  return [...belly(machine.vehicle, scale, stance), ...hitch(machine.vehicle, scale, stance)]
}

function groundPart(machine: DrawnMachine, left: number, width: number, levels: Levels): PathPart {
  const { ground } = machine
  const slope = degrees(Math.atan(ground.grade))
  const words = ground.model === 'soil' ? 'soil that yields' : 'firm ground'
  return {
    part: 'ground',
    label: 'Ground',
    description: slope > 0 ? `${words}, rising ${slope.toFixed(1)} degrees` : `${words}, level`,
    box: { x: left, y: 4, width, height: levels.height - 8 },
    figures: { x: left + width / 2, y: levels.figures },
    sign: { x: left + width / 2, y: 14 },
  }
}

/**
 * Everything that the drawing shows, as one text: while it stays the same, so does the drawing. Most edits move figures
 * and leave the machine's shape alone.
 */
export function powerPathKey(machine: DrawnMachine, look: PowerPathLook): string {
  const { pack, motor, stages, train, track, vehicle, ground, wires, stepDowns, cooling } = machine
  const shown: DrawnMachine = {
    pack: { series: pack.series, fuseAmps: pack.fuseAmps },
    motor: { count: motor.count, polePairs: motor.polePairs, joint: motor.joint },
    stages,
    train: { ratio: train.ratio },
    track,
    vehicle,
    ground,
    wires: wires.map(({ circuit, area, parallel }) => ({ circuit, area, parallel })),
    stepDowns: stepDowns.map(({ volts }) => ({ volts })),
    cooling: cooling && { capPressure: cooling.capPressure },
  }
  // JSON has one word for what is not finite and for what is not there; the drawing may have two.
  return JSON.stringify([shown, look], (_, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  )
}

/**
 * The machine drawn from pack to ground. Wheels of one reduction stand at true relative size with their true tooth
 * counts; reductions and loop have a scale bar wherever the scale changes, and a break on the shaft before it, because a
 * 9-tooth pinion and a 2 m loop have no common scale that a person could read. Pack, controller and motor are signs: the build does not know their size.
 */
export function powerPath(machine: DrawnMachine, look: PowerPathLook): PowerPathScene {
  const { system } = look
  const levels = look.low === true ? low : usual
  const { axis } = levels
  const room = { width: look.width, half: levels.half }
  const row = rowOf(machine, room, { system, cellsInParallel: look.cellsInParallel ?? 1 })
  const { items, ground } = placed(row, look.width)
  // A row with more parts than fit is wider: the page moves it sideways.
  const width = Math.max(look.width, ground + row.groundWidth)
  const track = items[items.length - 1] as PlacedItem
  const vehicle = vehicleShapes(machine, row, track, axis)
  const parts = [
    ...items.map((item) => pathPart(item, levels)),
    ...(vehicle.part === null ? [] : [vehicle.part]),
    ...suppliesPart(row, items, axis),
    groundPart(machine, ground, row.groundWidth, levels),
  ]
  const labelled = parts.filter(({ part }) => part !== 'vehicle' && part !== 'stepDowns')
  const drawn = items.map((item): Shape => ({
    shape: 'group',
    id: item.part,
    shift: { x: item.left, y: axis },
    shapes: item.drawn.shapes,
  }))
  return {
    name: 'power-path',
    title: 'Power path',
    summary: `From pack to ground: ${items.map((item) => item.drawn.description).join('; ')}.${isBroken(items) ? ' Not all to one scale: a break on a shaft says where it changes.' : ''}`,
    width,
    height: levels.height,
    shapes: [
      ...connectors(items, axis),
      ...pipes(items, axis),
      ...groundShapes(machine, row, track, ground, levels),
      ...vehicle.shapes,
      ...drawn,
      ...shaftSigns(items, machine, axis),
      ...stanceShapes(machine, row, track, axis),
      ...patchShapes(row, track, axis),
      ...bars(items, system, levels.bar),
      ...labelled.map((part) => label(part.label, part.figures.x, levels.label)),
    ],
    plot: null,
    parts,
    wheels: items.flatMap((item) => item.drawn.wheels),
    loops: items.flatMap((item) => item.drawn.loops),
    flags: {
      motor: { x: parts.find(({ part }) => part === 'motor')?.figures.x ?? 0, y: levels.bar },
      ground: { x: ground + 12, y: groundLevel(row, track.drawn.scale ?? 1, levels) },
    },
    // A loop too short to go round two wheels has no room for the machine on it.
    undrawn: vehicle.part === null ? [...row.undrawn, { part: 'vehicle', label: 'Machine' }] : row.undrawn,
  }
}
