import type { Footing } from '../ground/footing.ts'
import { shearShareInverse } from '../ground/soil-shear.ts'
import { legendreRule } from '../numeric/legendre.ts'
import { addPiece, type RunSetting, type RunSum } from './run-piece.ts'
import { moveToGroundSpeed, setSoilPoint, SoilPoint, startingShear } from './soil-motion.ts'
import { isFlat } from './flat-limit.ts'
import type { ThrustLine } from './thrust-line.ts'

/** Widest piece, as a ratio of its ends' x: eight nodes on it leave less than 1e-8 (test/laws compares with adaptive). */
const widestRatio = 4
const rule = legendreRule(8)
const point = new SoilPoint()
const start = new SoilPoint()
const end = new SoilPoint()

/**
 * Adds the part of a run on soil between two ground speeds.
 *
 * With x = i L/K as the variable everything is explicit: t = ∫ m_e v′(x)/(F(x) − R(v(x))) dx. Pieces are even in ln x,
 * because thrust bends where x is near 1 and runs out as 1/x towards full slip.
 *
 * *Source:* engine contract §5.
 */
export function addSoilRun(sum: RunSum, setting: RunSetting, from: number, to: number): void {
  const { line, footing } = setting
  let at = from
  const flat = flatPieceOf(footing, line)
  if (at < flat.end) {
    const end = Math.min(flat.end, to)
    addPiece(sum, setting, at, end, line.limitedStart, line.limitedSlope / flat.gripping)
    at = end
  }
  if (at >= to) return
  moveTo(start, setting, at)
  moveTo(end, setting, to)
  const bend = line.cornerSpeed > 0 && !isFlat(line) ? line.cornerThrust : Infinity
  if (start.thrust > bend && end.thrust < bend) {
    const bendX = shearShareInverse(bend / footing.shearStrength)
    addPieces(sum, setting, start.x, bendX)
    addPieces(sum, setting, bendX, end.x)
  } else addPieces(sum, setting, start.x, end.x)
}

/** Ground speed at which a flat limited piece ends, 0 without one, and 1 − i on it. */
function flatPieceOf(footing: Footing, line: ThrustLine): { end: number; gripping: number } {
  if (!isFlat(line) || line.cornerThrust >= footing.gripThrust) return noFlatPiece
  const slip = shearShareInverse(line.cornerThrust / footing.shearStrength) / footing.fullShear
  return { end: line.cornerSpeed * (1 - slip), gripping: 1 - slip }
}

const noFlatPiece = { end: 0, gripping: 1 }

/** Moves a point to a ground speed; at rest it is the start's. */
function moveTo(point: SoilPoint, setting: RunSetting, speed: number): void {
  const { line, footing } = setting
  const restThrust = line.cornerSpeed > 0 && !isFlat(line) ? line.limitedStart : openRestThrust(line)
  const high = startingShear(footing, restThrust)
  if (speed === 0) setSoilPoint(point, footing, line, high)
  else moveToGroundSpeed(point, footing, line, 0, high, speed)
}

/** Most thrust of the pieces that belt speed can be told from. */
function openRestThrust(line: ThrustLine): number {
  return line.cornerSpeed > 0 ? line.cornerThrust : line.openStart
}

function addPieces(sum: RunSum, setting: RunSetting, from: number, to: number): void {
  const whole = Math.log(from / to)
  const count = Math.max(1, Math.ceil(whole / Math.log(widestRatio)))
  for (let piece = 0; piece < count; piece += 1) {
    const high = from * Math.exp((-whole * piece) / count)
    addEvenPiece(sum, setting, high, whole / count)
  }
}

/** Adds a piece from x down to x e^−width, even in ln x. */
function addEvenPiece(sum: RunSum, setting: RunSetting, high: number, width: number): void {
  const { line, footing, airDragFactor, mass } = setting
  const resistance = footing.standingResistance
  let seconds = 0
  let metres = 0
  for (let index = 0; index < rule.nodes.length; index += 1) {
    const x = high * Math.exp(-0.5 * width * (1 + (rule.nodes[index] ?? 0)))
    setSoilPoint(point, footing, line, x)
    const speed = point.groundSpeed
    const surplus = point.thrust - resistance - airDragFactor * speed * speed
    const part = ((rule.weights[index] ?? 0) * -point.groundSpeedSlope * x) / surplus
    seconds += part
    metres += part * speed
  }
  sum.seconds += 0.5 * width * mass * seconds
  sum.metres += 0.5 * width * mass * metres
}
