import type { Footing } from '../ground/footing.ts'
import { shearShareGuess, shearShareInverse } from '../ground/soil-shear.ts'
import { legendreRule, type Rule } from '../numeric/legendre.ts'
import { power } from '../numeric/power.ts'
import { addPiece, type RunSetting, type RunSum } from './run-piece.ts'
import { moveToGroundSpeed, setSoilPoint, SoilPoint, startingShear } from './soil-motion.ts'
import { isFlat } from './flat-limit.ts'
import { beltSpeedForThrust, motorThrustAt, type ThrustLine } from './thrust-line.ts'

/** Widest piece, as a ratio of its ends' x^¼. */
const widestRatio = 2
/**
 * Nodes by the ratio of a piece's ends: each leaves less than 1e-7 (test/laws compares with adaptive integration).
 */
const narrow = legendreRule(6)
const middling = legendreRule(8)
const wide = legendreRule(10)

function ruleFor(high: number, low: number): Rule {
  if (high < 1.15 * low) return narrow
  return high < 1.35 * low ? middling : wide
}

const point = new SoilPoint()
const start = new SoilPoint()
const end = new SoilPoint()

/**
 * Adds the part of a run on soil between two ground speeds.
 *
 * With x = i L/K as the variable everything is explicit: t = ∫ m_e v′(x)/(F(x) − R(v(x))) dx. Pieces are even in the
 * fourth root of x, because thrust bends where x is near 1 and runs out as 1/x towards full slip.
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
  else moveToGroundSpeed(point, footing, line, 0, high, guessAt(footing, line, speed), speed)
}

/** About the x of a ground speed: spinning at the grip's thrust, or pushing with what the motors have at that speed. */
function guessAt(footing: Footing, line: ThrustLine, speed: number): number {
  const thrust = motorThrustAt(line, speed)
  if (thrust < footing.gripThrust) return shearShareGuess(thrust / footing.shearStrength)
  return footing.fullShear * (1 - speed / beltSpeedForThrust(line, footing.gripThrust))
}

/** Most thrust of the pieces that belt speed can be told from. */
function openRestThrust(line: ThrustLine): number {
  return line.cornerSpeed > 0 ? line.cornerThrust : line.openStart
}

/** Pieces that a ratio of ends wants. */
const piecesFor = (ratio: number): number => Math.ceil(Math.log(ratio) / Math.log(widestRatio))

/** As many as x of 1e-70 wants: no run may go on for ever. */
const mostPieces = 64

function addPieces(sum: RunSum, setting: RunSetting, from: number, to: number): void {
  const high = Math.sqrt(Math.sqrt(from))
  const low = Math.sqrt(Math.sqrt(to))
  const count = high <= widestRatio * low ? 1 : Math.min(mostPieces, piecesFor(high / low))
  let top = high
  for (let piece = 1; piece <= count; piece += 1) {
    const bottom = piece === count ? low : high * power(low / high, piece / count)
    addRootPiece(sum, setting, top, bottom)
    top = bottom
  }
}

/** Adds a piece that is even in w = x^¼, from the larger down to the smaller; dx = 4 w³ dw. */
function addRootPiece(sum: RunSum, setting: RunSetting, high: number, low: number): void {
  const { line, footing, airDragFactor, mass } = setting
  const rule = ruleFor(high, low)
  const resistance = footing.standingResistance
  const middle = 0.5 * (high + low)
  const reach = 0.5 * (high - low)
  let seconds = 0
  let metres = 0
  for (let index = 0; index < rule.nodes.length; index += 1) {
    const root = middle + reach * (rule.nodes[index] ?? 0)
    const square = root * root
    setSoilPoint(point, footing, line, square * square)
    const speed = point.groundSpeed
    const surplus = point.thrust - resistance - airDragFactor * speed * speed
    const part = ((rule.weights[index] ?? 0) * -4 * square * root * point.groundSpeedSlope) / surplus
    seconds += part
    metres += part * speed
  }
  sum.seconds += reach * mass * seconds
  sum.metres += reach * mass * metres
}
