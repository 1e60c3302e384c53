import type { Point } from '../scene.ts'
import { polar, px, degrees } from './outline.ts'
import type { LinkPlace } from '../power-path-scene.ts'
import { fullTurn } from '../../constants.ts'

/** A wheel that a closed loop runs round, all on its inside; radius to the loop's pitch line. */
export interface LoopWheel {
  readonly centre: Point
  readonly radius: number
  /**
   * Teeth, where the loop goes round it as a polygon (chain): a pitch then takes up 2π/teeth of the wheel. Absent: the
   * pitch is measured along the arc.
   */
  readonly teeth?: number
}

interface ArcPiece {
  readonly piece: 'arc'
  readonly wheel: LoopWheel
  /** rad, clockwise as drawn. */
  readonly from: number
  readonly sweep: number
  readonly length: number
  readonly pitches: number
}

interface RunPiece {
  readonly piece: 'run'
  readonly from: Point
  readonly to: Point
  readonly length: number
  readonly pitches: number
}

type LoopPiece = ArcPiece | RunPiece

/** The pitch line of a loop, clockwise as drawn, from where it first meets the first wheel. */
export interface Loop {
  readonly pieces: readonly LoopPiece[]
  readonly length: number
  readonly pitches: number
}

/** Outward normal (rad) of the outer tangent from one wheel to the next, clockwise as drawn. */
function tangentNormal(from: LoopWheel, to: LoopWheel): number {
  const dx = to.centre.x - from.centre.x
  const dy = to.centre.y - from.centre.y
  const distance = Math.hypot(dx, dy)
  // n · d = r_1 − r_2 holds for both touching points; the outside is left of the way, y being downwards.
  const inward = Math.acos(Math.max(-1, Math.min(1, (from.radius - to.radius) / distance)))
  return Math.atan2(dy, dx) - inward
}

/** Angle in 0 … 2π; a hair below a full turn counts as none. */
function sweepOf(angle: number): number {
  const sweep = ((angle % fullTurn) + fullTurn) % fullTurn
  return fullTurn - sweep < 1e-9 ? 0 : sweep
}

/**
 * The shortest closed line round wheels that all lie inside it: arcs on the wheels, outer tangents between them.
 *
 * @param wheels at least two, in clockwise order as drawn, none inside another
 * @param pitch m (or px, as the wheels)
 */
export function loopRound(wheels: readonly LoopWheel[], pitch: number): Loop {
  const normals = wheels.map((wheel, index) =>
    tangentNormal(wheel, wheels[(index + 1) % wheels.length] ?? wheel),
  )
  const pieces = wheels.flatMap((wheel, index): LoopPiece[] => {
    const arriving = normals[(index + wheels.length - 1) % wheels.length] ?? 0
    const leaving = normals[index] ?? 0
    const next = wheels[(index + 1) % wheels.length] ?? wheel
    const sweep = sweepOf(leaving - arriving)
    const from = polar(leaving, wheel.radius, wheel.centre)
    const to = polar(leaving, next.radius, next.centre)
    const run = Math.hypot(to.x - from.x, to.y - from.y)
    const arc = sweep * wheel.radius
    const arcPitches = wheel.teeth === undefined ? arc / pitch : (sweep / fullTurn) * wheel.teeth
    return [
      { piece: 'arc', wheel, from: arriving, sweep, length: arc, pitches: arcPitches },
      { piece: 'run', from, to, length: run, pitches: run / pitch },
    ]
  })
  return {
    pieces,
    length: pieces.reduce((sum, piece) => sum + piece.length, 0),
    pitches: pieces.reduce((sum, piece) => sum + piece.pitches, 0),
  }
}

function placeOnPiece(piece: LoopPiece, share: number): LinkPlace {
  if (piece.piece === 'arc') {
    const angle = piece.from + piece.sweep * share
    const { x, y } = polar(angle, piece.wheel.radius, piece.wheel.centre)
    return { x, y, turn: degrees(angle) + 90 }
  }
  const dx = piece.to.x - piece.from.x
  const dy = piece.to.y - piece.from.y
  return { x: piece.from.x + dx * share, y: piece.from.y + dy * share, turn: degrees(Math.atan2(dy, dx)) }
}

/** Where a point of the loop stands `along` pitches from its start, and how it is turned (0: running to the right). */
export function placeOn(loop: Loop, along: number): LinkPlace {
  let rest = ((along % loop.pitches) + loop.pitches) % loop.pitches
  for (const piece of loop.pieces) {
    if (rest <= piece.pitches && piece.pitches > 0) return placeOnPiece(piece, rest / piece.pitches)
    rest -= piece.pitches
  }
  const last = loop.pieces.at(-1)
  return last ? placeOnPiece(last, 1) : { x: 0, y: 0, turn: 0 }
}

/** The loop as path data, moved outwards by `offset` (same unit as the wheels) and multiplied by `scale`. */
export function loopPath(loop: Loop, scale = 1, offset = 0): string {
  const at = (point: Point): string => `${px(point.x * scale)} ${px(point.y * scale)}`
  const steps = loop.pieces.flatMap((piece, index) => {
    if (piece.piece === 'run') return []
    const radius = piece.wheel.radius + offset
    const from = polar(piece.from, radius, piece.wheel.centre)
    const to = polar(piece.from + piece.sweep, radius, piece.wheel.centre)
    const start = `${index === 0 ? 'M' : 'L'}${at(from)}`
    const large = piece.sweep > Math.PI ? 1 : 0
    return [start, `A${px(radius * scale)} ${px(radius * scale)} 0 ${large} 1 ${at(to)}`]
  })
  return `${steps.join('')}Z`
}

/** How links lie on their loop: as points of it, or as chords between two of its points (chain). */
export type LinkLie = 'point' | 'chord'

/** The middle of a chord from `along` to one pitch further, turned along it. */
function chordOn(loop: Loop, along: number): LinkPlace {
  const from = placeOn(loop, along)
  const to = placeOn(loop, along + 1)
  const turn = degrees(Math.atan2(to.y - from.y, to.x - from.x))
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, turn }
}

/** Places of evenly spread links, `steps` per pitch, multiplied by `scale`, for a loop that runs on the page. */
export function linkPlaces(
  loop: Loop,
  count: number,
  steps: number,
  scale: number,
  lie: LinkLie = 'point',
): LinkPlace[] {
  const placeAt = lie === 'chord' ? chordOn : placeOn
  return Array.from({ length: count * steps }, (_, index) => {
    const { x, y, turn } = placeAt(loop, (index / (count * steps)) * loop.pitches)
    return { x: x * scale, y: y * scale, turn }
  })
}
