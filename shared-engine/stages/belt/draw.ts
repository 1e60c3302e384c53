import type { BeltStage } from './machine.ts'
import { pulleyRadius } from './geometry.ts'
import type { GroupShape, Shape } from '../../draw/scene.ts'
import { loopPath } from '../../draw/parts/loop.ts'
import { driveOf, driveWheels, runningLinks } from '../loop/draw.ts'
import type { Drive } from '../loop/draw.ts'
import { circlePath, degrees, pathOf, polar, px, roundWheel } from '../../draw/parts/outline.ts'
import { ratioText, teethText } from '../../draw/parts/part.ts'
import type { DrawnPart, Room, StageDrawing, Turning } from '../../draw/parts/part.ts'
import { wheelGroup } from '../../draw/parts/wheel.ts'

/** Shares of the pitch, for the drawing (*assumption*: near those of round-toothed synchronous belts). */
const toothDepth = 0.38
const pitchLineAboveTooth = 0.1
const bodyThickness = 0.26

const finestPitch = 2.4

function driveForm(stage: BeltStage): Drive {
  const { driverTeeth, drivenTeeth, pitch, centre } = stage
  const driverRadius = pulleyRadius(stage.pitch, stage.driverTeeth)
  const drivenRadius = pulleyRadius(stage.pitch, stage.drivenTeeth)
  return driveOf({
    driverTeeth,
    drivenTeeth,
    driverRadius,
    drivenRadius,
    pitch,
    centre,
    polygon: false,
    even: false,
  })
}

/** px per m at which both pulleys and the belt round them fit their room. */
function beltScale(stage: BeltStage, room: Room): number {
  const driver = pulleyRadius(stage.pitch, stage.driverTeeth)
  const driven = pulleyRadius(stage.pitch, stage.drivenTeeth)
  const rim = stage.pitch * bodyThickness
  const across = driver + driven + driveForm(stage).centre + 2 * rim
  return Math.min(room.half / (Math.max(driver, driven) + rim), room.width / across)
}

function pulleyOutline(radius: number, teeth: number, pitch: number, scale: number): string {
  const tip = radius - pitchLineAboveTooth * pitch
  const root = tip - toothDepth * pitch
  if (pitch * scale < finestPitch) return circlePath(tip * scale)
  const atTip = (0.2 * pitch) / radius
  const atRoot = (0.27 * pitch) / radius
  const tooth = [polar(-atRoot, root), polar(-atTip, tip), polar(atTip, tip), polar(atRoot, root)]
  return pathOf(roundWheel(tooth, teeth), scale)
}

function pulley(
  stage: BeltStage,
  drive: Drive,
  end: 'driver' | 'driven',
  scale: number,
  { id, joint }: Turning,
): GroupShape {
  const driver = end === 'driver'
  const radius = pulleyRadius(stage.pitch, end === 'driver' ? stage.driverTeeth : stage.drivenTeeth)
  const teeth = driver ? stage.driverTeeth : stage.drivenTeeth
  return wheelGroup({
    id: `${id}.${end}`,
    centre: { x: driver ? 0 : drive.centre * scale, y: 0 },
    phase: degrees(driver ? drive.driverPhase : drive.drivenPhase),
    joint: (driver ? joint : stage.shaft?.joint) ?? null,
    outline: pulleyOutline(radius, teeth, stage.pitch, scale),
    pitchRadius: radius * scale,
    rootRadius: (radius - (pitchLineAboveTooth + toothDepth) * stage.pitch) * scale,
  })
}

/** One belt tooth below its body, hanging inwards (y down is inwards where the belt runs to the right). */
function beltTooth(pitch: number): Shape {
  const top = pitchLineAboveTooth * pitch
  const bottom = top + toothDepth * 0.92 * pitch
  const d = `M${px(-0.27 * pitch)} ${px(top - 0.5)}L${px(-0.19 * pitch)} ${px(bottom)}H${px(0.19 * pitch)}L${px(0.27 * pitch)} ${px(top - 0.5)}Z`
  return { shape: 'path', d, fill: 'ink' }
}

/** A synchronous belt round its two pulleys, to scale, a whole number of teeth long. */
function drawBelt(stage: BeltStage, _room: Room, scale: number, turning: Turning): DrawnPart {
  const drive = driveForm(stage)
  const rim = stage.pitch * bodyThickness * scale + 1
  const entry = pulleyRadius(stage.pitch, stage.driverTeeth) * scale + rim
  const driven = pulleyRadius(stage.pitch, stage.drivenTeeth) * scale
  const exit = entry + drive.centre * scale
  const fine = stage.pitch * scale < finestPitch
  const links = fine
    ? { shapes: [], loops: [] }
    : runningLinks(
        drive,
        scale,
        { id: `${turning.id}.belt`, pitchesPerMotorTurn: turning.turns * stage.driverTeeth },
        () => [beltTooth(stage.pitch * scale)],
      )
  const bodyWidth = Math.max(1.6, bodyThickness * stage.pitch * scale)
  const body: Shape = {
    shape: 'path',
    d: loopPath(drive.loop, scale),
    stroke: { role: 'ink', width: bodyWidth },
  }
  const shapes = [
    pulley(stage, drive, 'driven', scale, turning),
    pulley(stage, drive, 'driver', scale, turning),
    ...links.shapes,
    body,
  ]
  const width = exit + driven + rim
  return {
    shapes: [{ shape: 'group', shift: { x: entry, y: 0 }, shapes }],
    wheels: driveWheels(drive, scale, stage.ratio, turning),
    loops: links.loops,
    width,
    middle: width / 2,
    entry,
    exit,
    description: `toothed belt of ${drive.links} teeth, ${stage.driverTeeth} driving ${teethText(stage.drivenTeeth)}, ratio ${ratioText(stage.ratio)}`,
    scale,
  }
}

export const beltDrawing: StageDrawing<BeltStage> = { sense: 1, scale: beltScale, draw: drawBelt }
