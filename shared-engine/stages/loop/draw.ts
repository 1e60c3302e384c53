import type { RunningLoop, TurningWheel } from '../../draw/power-path-scene.ts'
import type { Shape } from '../../draw/scene.ts'
import { linkPlaces, loopRound } from '../../draw/parts/loop.ts'
import type { LinkLie, Loop, LoopWheel } from '../../draw/parts/loop.ts'
import { degrees } from '../../draw/parts/outline.ts'
import type { Turning } from '../../draw/parts/part.ts'
import { fullTurn } from '../../constants.ts'

/** Two wheels and what runs round them, in m, driver at the origin, driven to its right. */
export interface Drive {
  readonly loop: Loop
  readonly centre: number
  /** Links of a chain or teeth of a belt: whole. */
  readonly links: number
  /** rad: turn of each wheel that puts a gap under every link. */
  readonly driverPhase: number
  readonly drivenPhase: number
}

interface DriveForm {
  readonly driverTeeth: number
  readonly drivenTeeth: number
  readonly driverRadius: number
  readonly drivenRadius: number
  readonly pitch: number
  readonly centre: number
  /** Links lie as chords of their wheels (chain), not along the arc (belt). */
  readonly polygon: boolean
  /** Links come in pairs (chain). */
  readonly even: boolean
}

/** How a wheel must be turned (rad) so that a gap of its teeth lies under each link that stands on it. */
export function gapPhase(loop: Loop, wheelIndex: number, teeth: number): number {
  const before = loop.pieces.slice(0, 2 * wheelIndex).reduce((sum, piece) => sum + piece.pitches, 0)
  const arc = loop.pieces[2 * wheelIndex]
  if (arc === undefined || arc.piece !== 'arc') return 0
  const toFirstLink = Math.ceil(before - 1e-9) - before
  return arc.from + (fullTurn * (toFirstLink + 0.5)) / teeth
}

function loopAt(form: DriveForm, centre: number): Loop {
  const wheels: LoopWheel[] = [
    { centre: { x: 0, y: 0 }, radius: form.driverRadius, ...(form.polygon && { teeth: form.driverTeeth }) },
    {
      centre: { x: centre, y: 0 },
      radius: form.drivenRadius,
      ...(form.polygon && { teeth: form.drivenTeeth }),
    },
  ]
  return loopRound(wheels, form.pitch)
}

/**
 * The drive with a whole number of links: the nearest to what the entered centre asks for, and the centre moved to
 * where that number closes.
 */
export function driveOf(form: DriveForm): Drive {
  const wanted = loopAt(form, form.centre).pitches
  const links = form.even ? 2 * Math.round(wanted / 2) : Math.round(wanted)
  let centre = form.centre
  for (let round = 0; round < 12; round++) {
    const short = links - loopAt(form, centre).pitches
    centre = Math.max(
      centre + (short * form.pitch) / 2,
      Math.abs(form.driverRadius - form.drivenRadius) * 1.001,
    )
  }
  const loop = loopAt(form, centre)
  return {
    loop,
    centre,
    links,
    driverPhase: gapPhase(loop, 0, form.driverTeeth),
    drivenPhase: gapPhase(loop, 1, form.drivenTeeth),
  }
}

/** Steps per pitch in which a running loop moves. */
const stepsPerPitch = 6
/** More links than this are too fine to see and too many to move. */
const mostLinks = 240

/** Links as groups that can run, and the loop they run on; none where they would be too fine to see. */
export function runningLinks(
  drive: { readonly loop: Loop; readonly links: number },
  scale: number,
  turning: { readonly id: string; readonly pitchesPerMotorTurn: number },
  link: (index: number) => readonly Shape[],
  lie: LinkLie = 'point',
): { readonly shapes: readonly Shape[]; readonly loops: readonly RunningLoop[] } {
  if (drive.links > mostLinks) return { shapes: [], loops: [] }
  const places = linkPlaces(drive.loop, drive.links, stepsPerPitch, scale, lie)
  const shapes = Array.from({ length: drive.links }, (_, index): Shape => {
    const place = places[index * stepsPerPitch] ?? { x: 0, y: 0, turn: 0 }
    return {
      shape: 'group',
      id: `${turning.id}.${index}`,
      shift: { x: place.x, y: place.y },
      turn: place.turn,
      shapes: link(index),
    }
  })
  const loop = {
    id: turning.id,
    count: drive.links,
    places,
    steps: stepsPerPitch,
    pitchesPerMotorTurn: turning.pitchesPerMotorTurn,
  }
  return { shapes, loops: [loop] }
}

/** The two wheels of a belt or chain as they turn: same way, by the ratio. */
export function driveWheels(drive: Drive, scale: number, ratio: number, turning: Turning): TurningWheel[] {
  return [
    {
      id: `${turning.id}.driver`,
      shift: { x: 0, y: 0 },
      phase: degrees(drive.driverPhase),
      turnsPerMotorTurn: turning.turns,
    },
    {
      id: `${turning.id}.driven`,
      shift: { x: drive.centre * scale, y: 0 },
      phase: degrees(drive.drivenPhase),
      turnsPerMotorTurn: turning.turns / ratio,
    },
  ]
}
