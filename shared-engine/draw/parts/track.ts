import type { TrackPart } from '../../machine/parts.ts'
import type { TurningWheel } from '../power-path-scene.ts'
import type { Point, Shape } from '../scene.ts'
import { loopPath } from './loop.ts'
import type { LoopWheel } from './loop.ts'
import { gapPhase, runningLinks } from '../../stages/loop/draw.ts'
import { circlePath, degrees, pathOf, polar, px, roundWheel } from './outline.ts'
import { teethText } from './part.ts'
import type { DrawnPart, Room, Turning } from './part.ts'
import { jointText } from './joint.ts'
import { tensioner, tensionerText } from './tensioner.ts'
import { trackLayout } from './track-loop.ts'
import type { TrackLayout } from './track-loop.ts'
import { wheelGroup } from './wheel.ts'

/** Below this pitch (px) teeth are not drawn one by one. */
const finestPitch = 3

/** Drive tooth as drawn, m: entered, or a share of the pitch; held to what fits between two others. */
interface DriveTooth {
  readonly height: number
  readonly root: number
  /** From the pitch line to where teeth begin. */
  readonly body: number
}

function driveTooth(track: TrackPart): DriveTooth {
  const { pitch, radius, tooth } = track
  const height = Math.min(tooth?.height ?? 0.34 * pitch, 0.45 * radius)
  return { height, root: Math.min(tooth?.root ?? 0.4 * pitch, 0.66 * pitch), body: 0.07 * pitch }
}

function sprocketOutline(track: TrackPart, tooth: DriveTooth, scale: number): string {
  const tip = track.radius - tooth.body
  const root = tip - tooth.height * 1.08
  if (track.pitch * scale < finestPitch) return circlePath(tip * scale)
  const gapAtTip = Math.min(tooth.root * 1.12, 0.8 * track.pitch)
  const atTip = (track.pitch - gapAtTip) / 2 / track.radius
  const atRoot = (track.pitch - gapAtTip * 0.8) / 2 / track.radius
  const outline = [polar(-atRoot, root), polar(-atTip, tip), polar(atTip, tip), polar(atRoot, root)]
  return pathOf(roundWheel(outline, track.sprocketTeeth), scale)
}

/** A drive tooth on the inside of the loop and a short cleat outside (y down is inwards where the loop runs right). */
function loopTooth(tooth: DriveTooth, scale: number): Shape[] {
  const top = px(tooth.body * scale - 0.4)
  const bottom = px((tooth.body + tooth.height) * scale)
  const wide = (tooth.root / 2) * scale
  const narrow = wide * 0.72
  const d = `M${px(-wide)} ${top}L${px(-narrow)} ${bottom}H${px(narrow)}L${px(wide)} ${top}Z`
  return [{ shape: 'path', d, fill: 'ink' }]
}

function plainWheel(wheel: LoopWheel, body: number, scale: number, id: string): Shape {
  const radius = (wheel.radius - body) * scale
  return wheelGroup({
    id,
    centre: { x: wheel.centre.x * scale, y: wheel.centre.y * scale },
    phase: 0,
    outline: circlePath(radius),
    pitchRadius: radius * 0.86,
    rootRadius: radius * 0.9,
  })
}

function wheelsOf(
  layout: TrackLayout,
  track: TrackPart,
  tooth: DriveTooth,
  scale: number,
  id: string,
): Shape[] {
  const inner = tooth.body + tooth.height * 1.05
  const sprocket = wheelGroup({
    id: `${id}.sprocket`,
    centre: { x: 0, y: 0 },
    phase: degrees(gapPhase(layout.loop, 0, track.sprocketTeeth)),
    outline: sprocketOutline(track, tooth, scale),
    pitchRadius: track.radius * scale,
    rootRadius: (track.radius - tooth.body - tooth.height * 1.08) * scale,
    joint: track.shaft?.joint ?? null,
  })
  // Road wheels and idler run on the belt's inner face, beside its teeth.
  const beside = Math.min(inner, layout.roadWheels[0]?.radius ?? inner) > 0 ? tooth.body : inner
  const plain = [...layout.roadWheels, layout.idler].map((wheel, index) =>
    plainWheel(wheel, beside, scale, `${id}.wheel.${index}`),
  )
  return [...plain, sprocket]
}

function turningWheels(
  layout: TrackLayout,
  track: TrackPart,
  scale: number,
  turning: Turning,
): TurningWheel[] {
  const at = ({ x, y }: Point): Point => ({ x: x * scale, y: y * scale })
  const plain = [...layout.roadWheels, layout.idler].map((wheel, index) => ({
    id: `${turning.id}.wheel.${index}`,
    shift: at(wheel.centre),
    phase: 0,
    turnsPerMotorTurn: (turning.turns * track.radius) / wheel.radius,
  }))
  const phase = degrees(gapPhase(layout.loop, 0, track.sprocketTeeth))
  return [
    { id: `${turning.id}.sprocket`, shift: { x: 0, y: 0 }, phase, turnsPerMotorTurn: turning.turns },
    ...plain,
  ]
}

/** px per m at which the loop fits its room, standing on the ground line `room.half` below the axis. */
function trackScale(layout: TrackLayout, room: Room): number {
  const above = layout.sprocket.radius
  const across = layout.idler.centre.x + layout.idler.radius + layout.sprocket.radius
  const body = 0.1 * layout.sprocket.radius
  return Math.min(room.width / (across + 2 * body), room.half / (Math.max(above, layout.ground) + body))
}

/** The track loop with its drive teeth in the sprocket, idler and road wheels; true length, true pitch. */
export function drawTrack(
  track: TrackPart,
  contactLength: number | null,
  room: Room,
  turning: Turning,
): DrawnPart & { readonly layout: TrackLayout | null } {
  const layout = trackLayout(track, contactLength)
  if (layout === null) return drawSprocketAlone(track, room, turning)
  const scale = trackScale(layout, room)
  const tooth = driveTooth(track)
  const bodyWidth = Math.max(2, 2 * tooth.body * scale)
  const entry = track.radius * scale + bodyWidth
  const running = { id: `${turning.id}.loop`, pitchesPerMotorTurn: turning.turns * track.sprocketTeeth }
  const fine = track.pitch * scale < finestPitch
  const links = fine
    ? { shapes: [], loops: [] }
    : runningLinks({ loop: layout.loop, links: track.loopPitches }, scale, running, () =>
        loopTooth(tooth, scale),
      )
  const body: Shape = {
    shape: 'path',
    d: loopPath(layout.loop, scale),
    stroke: { role: 'ink', width: bodyWidth },
  }
  const shapes = [
    ...tensioner(track.hold.tensioner, layout.idler, scale),
    ...wheelsOf(layout, track, tooth, scale, turning.id),
    ...links.shapes,
    body,
  ]
  const width = entry + (layout.idler.centre.x + layout.idler.radius) * scale + bodyWidth
  return {
    layout,
    shapes: [{ shape: 'group', shift: { x: entry, y: 0 }, shapes }],
    wheels: turningWheels(layout, track, scale, turning),
    loops: links.loops,
    width,
    middle: width / 2,
    entry,
    exit: width,
    description: `drive sprocket of ${teethText(track.sprocketTeeth)}, loop of ${track.loopPitches} pitches, ${tensionerText(track.hold.tensioner)}${jointText('sprocket', track.shaft?.joint ?? null)}`,
    scale,
  }
}

/** A loop shorter than its own sprocket cannot be laid: the sprocket alone, and a word. */
function drawSprocketAlone(
  track: TrackPart,
  room: Room,
  turning: Turning,
): DrawnPart & { readonly layout: null } {
  const scale = (room.half * 0.8) / track.radius
  const tooth = driveTooth(track)
  const entry = track.radius * scale + 2
  const wheel = wheelGroup({
    id: `${turning.id}.sprocket`,
    centre: { x: entry, y: 0 },
    phase: 0,
    outline: sprocketOutline(track, tooth, scale),
    pitchRadius: track.radius * scale,
    rootRadius: (track.radius - tooth.body - tooth.height * 1.08) * scale,
  })
  const sprocket = { id: `${turning.id}.sprocket`, shift: { x: entry, y: 0 }, phase: 0 }
  return {
    layout: null,
    shapes: [wheel],
    wheels: [{ ...sprocket, turnsPerMotorTurn: turning.turns }],
    loops: [],
    width: 2 * entry,
    middle: entry,
    entry,
    exit: 2 * entry,
    description: `drive sprocket of ${teethText(track.sprocketTeeth)}; a loop of ${track.loopPitches} pitches is too short to go round it and an idler`,
    scale,
  }
}
