import type { ChainStage } from './machine.ts'
import { chainWheelRadius } from './geometry.ts'
import type { GroupShape, Point, Shape } from '../../draw/scene.ts'
import { loopPath } from '../../draw/parts/loop.ts'
import { driveOf, driveWheels, runningLinks } from '../loop/draw.ts'
import type { Drive } from '../loop/draw.ts'
import { circlePath, degrees, pathOf, polar, px, roundWheel } from '../../draw/parts/outline.ts'
import { ratioText, teethText } from '../../draw/parts/part.ts'
import type { DrawnPart, Room, StageDrawing, Turning } from '../../draw/parts/part.ts'
import { wheelGroup } from '../../draw/parts/wheel.ts'

/** Roller radius and half the plate's height as shares of the pitch (near those of ISO 606's B series; for the drawing). */
const rollerShare = 0.31
const plateShare = 0.4
const finestPitch = 3

function driveForm(stage: ChainStage): Drive {
  const driverRadius = chainWheelRadius(stage.pitch, stage.driverTeeth)
  const drivenRadius = chainWheelRadius(stage.pitch, stage.drivenTeeth)
  // Where no centre is entered, the wheels stand as close as looks like a chain drive (for the drawing alone).
  const centre = stage.centre ?? driverRadius + drivenRadius + 5 * stage.pitch
  const { driverTeeth, drivenTeeth, pitch } = stage
  return driveOf({
    driverTeeth,
    drivenTeeth,
    driverRadius,
    drivenRadius,
    pitch,
    centre,
    polygon: true,
    even: true,
  })
}

/** px per m at which both wheels and the chain round them fit their room. */
function chainScale(stage: ChainStage, room: Room): number {
  const driver = chainWheelRadius(stage.pitch, stage.driverTeeth)
  const driven = chainWheelRadius(stage.pitch, stage.drivenTeeth)
  const rim = stage.pitch * plateShare
  const across = driver + driven + driveForm(stage).centre + 2 * rim
  return Math.min(room.half / (Math.max(driver, driven) + rim), room.width / across)
}

/**
 * One tooth of a chain wheel centred on angle 0, from the bottom of one roller seat to the next: seat arcs of the
 * roller's radius, straight flanks to a narrow top.
 */
export function chainTooth(pitch: number, teeth: number): Point[] {
  const radius = chainWheelRadius(pitch, teeth)
  const roller = rollerShare * pitch
  const seat = polar(-Math.PI / teeth, radius)
  // From straight towards the wheel's centre, round to where the flank leaves the roller.
  const inward = -Math.PI / teeth + Math.PI
  const rising = [0, 0.35, 0.7, 1.05].map((turn) => polar(inward - turn, roller, seat))
  // Midway between the greatest and the least tip diameter of the standard.
  const tip = radius + ((1.25 * pitch - 2 * roller) / 2 + (pitch * (1 - 1.6 / teeth) - 2 * roller) / 2) / 2
  const top = polar(-(0.07 * pitch) / tip, tip)
  const half = [...rising, top]
  return [...half, ...half.map(({ x, y }) => ({ x, y: -y })).reverse()]
}

function sprocketOutline(pitch: number, teeth: number, scale: number): string {
  if (pitch * scale < finestPitch) return circlePath(chainWheelRadius(pitch, teeth) * scale)
  return pathOf(roundWheel(chainTooth(pitch, teeth), teeth), scale)
}

function sprocket(
  stage: ChainStage,
  drive: Drive,
  end: 'driver' | 'driven',
  scale: number,
  { id, joint }: Turning,
): GroupShape {
  const driver = end === 'driver'
  const teeth = driver ? stage.driverTeeth : stage.drivenTeeth
  const radius = chainWheelRadius(stage.pitch, teeth)
  return wheelGroup({
    id: `${id}.${end}`,
    centre: { x: driver ? 0 : drive.centre * scale, y: 0 },
    phase: degrees(driver ? drive.driverPhase : drive.drivenPhase),
    joint: (driver ? joint : stage.shaft?.joint) ?? null,
    outline: sprocketOutline(stage.pitch, teeth, scale),
    pitchRadius: radius * scale,
    rootRadius: (radius - rollerShare * stage.pitch) * scale,
  })
}

/** A link between two pins, about its middle: outer plates as an outline, inner plates filled, rollers at both ends. */
function chainLink(index: number, pitch: number): Shape[] {
  const outer = index % 2 === 0
  const height = (outer ? plateShare : plateShare * 0.82) * pitch * 0.62
  const half = px(pitch / 2)
  const bow = px(height)
  const d = `M-${half} -${bow}H${half}A${bow} ${bow} 0 0 1 ${half} ${bow}H-${half}A${bow} ${bow} 0 0 1 -${half} -${bow}Z`
  const plate: Shape = {
    shape: 'path',
    d,
    fill: outer ? 'paper' : 'ink',
    stroke: { role: 'ink', width: 0.8 },
  }
  if (pitch < 6) return [plate]
  const pin = (x: number): Shape => ({
    shape: 'circle',
    centre: { x, y: 0 },
    radius: pitch * 0.11,
    fill: outer ? 'ink' : 'paper',
  })
  return [plate, pin(-pitch / 2), pin(pitch / 2)]
}

/** A roller chain round its two wheels, to scale, an even number of links long. */
function drawChain(stage: ChainStage, _room: Room, scale: number, turning: Turning): DrawnPart {
  const drive = driveForm(stage)
  const pitchPx = stage.pitch * scale
  const rim = plateShare * pitchPx + 1
  const entry = chainWheelRadius(stage.pitch, stage.driverTeeth) * scale + rim
  const exit = entry + drive.centre * scale
  const running = { id: `${turning.id}.chain`, pitchesPerMotorTurn: turning.turns * stage.driverTeeth }
  const fine = pitchPx < finestPitch
  const links = fine
    ? { shapes: [], loops: [] }
    : runningLinks(drive, scale, running, (index) => chainLink(index, pitchPx), 'chord')
  const line: Shape = {
    shape: 'path',
    d: loopPath(drive.loop, scale),
    stroke: { role: 'ink', width: Math.max(1.4, pitchPx * 0.5), dash: [1.5, 1] },
  }
  const shapes = [
    sprocket(stage, drive, 'driven', scale, turning),
    sprocket(stage, drive, 'driver', scale, turning),
    ...(links.shapes.length > 0 ? links.shapes : [line]),
  ]
  const width = exit + chainWheelRadius(stage.pitch, stage.drivenTeeth) * scale + rim
  return {
    shapes: [{ shape: 'group', shift: { x: entry, y: 0 }, shapes }],
    wheels: driveWheels(drive, scale, stage.ratio, turning),
    loops: links.loops,
    width,
    middle: width / 2,
    entry,
    exit,
    description: `roller chain of ${drive.links} links, ${stage.driverTeeth} driving ${teethText(stage.drivenTeeth)}, ratio ${ratioText(stage.ratio)}`,
    scale,
  }
}

export const chainDrawing: StageDrawing<ChainStage> = { sense: 1, scale: chainScale, draw: drawChain }
