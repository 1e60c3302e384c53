import type { GearStage } from './machine.ts'
import type { TurningWheel } from '../../draw/power-path-scene.ts'
import type { GroupShape } from '../../draw/scene.ts'
import { gearOutline, gearRadii, meshingPhase } from '../../draw/parts/involute.ts'
import type { GearForm } from '../../draw/parts/involute.ts'
import { circlePath, degrees, pathOf } from '../../draw/parts/outline.ts'
import type { DrawnJoint } from '../../draw/parts/joint.ts'
import { ratioText, teethText } from '../../draw/parts/part.ts'
import type { DrawnPart, Room, StageDrawing, Turning } from '../../draw/parts/part.ts'
import { wheelGroup } from '../../draw/parts/wheel.ts'

/** Below this tooth pitch (px) teeth are a grey blur: tip and root circles are drawn instead. */
const finestPitch = 2
/** px per m at which the pair fits its room, whole, however small the pinion then is: a wheel that is cut reads as none. */
function gearScale(stage: GearStage, room: Room): number {
  const [driver, driven] = formsOf(stage).map(gearRadii)
  if (driver === undefined || driven === undefined) return 1
  const across = driver.tip + driver.pitch + driven.pitch + driven.tip
  return Math.min(room.half / Math.max(driver.tip, driven.tip), room.width / across)
}

function formsOf(stage: GearStage): readonly GearForm[] {
  const { module } = stage
  const { pressureAngle } = stage
  return [stage.driverTeeth, stage.drivenTeeth].map((teeth) => ({ module, pressureAngle, teeth }))
}

function outlineAt(form: GearForm, scale: number): string {
  const radii = gearRadii(form)
  const pitch = Math.PI * form.module * scale
  if (pitch < finestPitch) return circlePath(radii.tip * scale) + circlePath(radii.root * scale)
  return pathOf(gearOutline(form, pitch < 5 ? 3 : pitch < 12 ? 5 : 8), scale)
}

function wheelAt(
  form: GearForm,
  scale: number,
  { id, x, phase, joint }: { id: string; x: number; phase: number; joint: DrawnJoint },
): GroupShape {
  const radii = gearRadii(form)
  return wheelGroup({
    id,
    centre: { x, y: 0 },
    phase,
    outline: outlineAt(form, scale),
    pitchRadius: radii.pitch * scale,
    rootRadius: radii.root * scale,
    joint,
  })
}

/** Two spur wheels in mesh at true relative size, involute flanks, driver left. */
function drawGear(stage: GearStage, _room: Room, scale: number, turning: Turning): DrawnPart {
  const [driver, driven] = formsOf(stage) as [GearForm, GearForm]
  const small = gearRadii(driver)
  const large = gearRadii(driven)
  const entry = small.tip * scale
  const exitTrue = entry + (small.pitch + large.pitch) * scale
  const width = exitTrue + large.tip * scale
  const phase = degrees(meshingPhase(stage.drivenTeeth))
  const wheels: TurningWheel[] = [
    { id: `${turning.id}.driver`, shift: { x: entry, y: 0 }, phase: 0, turnsPerMotorTurn: turning.turns },
    {
      id: `${turning.id}.driven`,
      shift: { x: exitTrue, y: 0 },
      phase,
      turnsPerMotorTurn: -turning.turns / stage.ratio,
    },
  ]
  const shapes = [
    wheelAt(driven, scale, {
      id: `${turning.id}.driven`,
      x: exitTrue,
      phase,
      joint: stage.shaft?.joint ?? null,
    }),
    wheelAt(driver, scale, { id: `${turning.id}.driver`, x: entry, phase: 0, joint: turning.joint ?? null }),
  ]
  return {
    shapes: [{ shape: 'group', shapes }],
    wheels,
    loops: [],
    width,
    middle: width / 2,
    entry,
    exit: exitTrue,
    description: `gear wheels, ${stage.driverTeeth} driving ${teethText(stage.drivenTeeth)}, ratio ${ratioText(stage.ratio)}`,
    scale,
  }
}

export const gearDrawing: StageDrawing<GearStage> = { sense: -1, scale: gearScale, draw: drawGear }
