import type { Footing } from '../ground/footing.ts'
import { setShear, Shear, shearShareInverse } from '../ground/soil-shear.ts'
import { legendreRule, type Rule } from '../numeric/legendre.ts'
import { power } from '../numeric/power.ts'
import { isFlat } from './flat-limit.ts'
import type { Motion } from './motion.ts'
import { addPiece, type RunProgress } from './run-piece.ts'
import { moveToGroundSpeed, SoilPoint, startingShear } from './soil-motion.ts'
import type { ThrustLine } from './thrust-line.ts'

/** Widest piece, as a ratio of its ends' x^¼. */
const widestRatio = 2
/** Nodes by the ratio of a piece's ends: each leaves less than 1e-7 (test/laws compares with adaptive integration). */
const narrow = legendreRule(8)
const wide = legendreRule(10)

function ruleFor(high: number, low: number): Rule {
  return high < 1.35 * low ? narrow : wide
}

const shear = new Shear()
const reached = new SoilPoint()

/** Puts a run on soil at rest. */
export function startSoilRun(progress: RunProgress, motion: Motion): void {
  const { line, footing } = motion
  const thrust = line.cornerSpeed > 0 && !isFlat(line) ? line.limitedStart : openRestThrust(line)
  progress.startShear = startingShear(footing, thrust)
  progress.shear = flatPieceOf(footing, line).end > 0 ? NaN : progress.startShear
  progress.thrust = Math.min(thrust, footing.gripThrust)
}

/**
 * Adds the part of a run on soil from where it stands to a ground speed.
 *
 * With x = i L/K as the variable everything is explicit: t = ∫ m_e v′(x)/(F(x) − R(v(x))) dx. Pieces are even in the
 * fourth root of x, because thrust bends where x is near 1 and runs out as 1/x towards full slip.
 *
 * *Source:* `docs/model.md` §5.
 */
export function addSoilRun(progress: RunProgress, motion: Motion, to: number): void {
  const { line, footing } = motion
  if (Number.isNaN(progress.shear) && leaveFlat(progress, motion, to)) return
  moveToGroundSpeed(reached, motion, progress.startShear, to)
  const bend = line.cornerSpeed > 0 && !isFlat(line) ? line.cornerThrust : Infinity
  let limited = progress.thrust > bend
  if (limited && reached.thrust < bend) {
    addPieces(progress, motion, limited, shearShareInverse(bend / footing.shearStrength))
    limited = false
  }
  addPieces(progress, motion, limited, reached.x)
  progress.thrust = reached.thrust
  progress.speed = to
}

/** Adds what lies on a flat limited piece; true where that is all, else the run stands where the piece ends. */
function leaveFlat(progress: RunProgress, motion: Motion, to: number): boolean {
  const { line, footing } = motion
  const flat = flatPieceOf(footing, line)
  const end = Math.min(flat.end, to)
  addPiece(progress, motion, end, line.limitedStart, line.limitedSlope / flat.gripping)
  if (end === to) return true
  moveToGroundSpeed(reached, motion, progress.startShear, end)
  progress.shear = reached.x
  progress.thrust = reached.thrust
  return false
}

/** Ground speed at which a flat limited piece ends, 0 without one, and 1 − i on it. */
function flatPieceOf(footing: Footing, line: ThrustLine): { end: number; gripping: number } {
  if (!isFlat(line) || line.cornerThrust >= footing.gripThrust) return noFlatPiece
  const slip = shearShareInverse(line.cornerThrust / footing.shearStrength) / footing.fullShear
  return { end: line.cornerSpeed * (1 - slip), gripping: 1 - slip }
}

const noFlatPiece = { end: 0, gripping: 1 }

/** Most thrust of the pieces that belt speed can be told from. */
function openRestThrust(line: ThrustLine): number {
  return line.cornerSpeed > 0 ? line.cornerThrust : line.openStart
}

/** Pieces that a ratio of ends wants. */
const piecesFor = (ratio: number): number => Math.ceil(Math.log(ratio) / Math.log(widestRatio))

/** As many as x of 1e-70 wants: no run may go on for ever. */
const mostPieces = 64

/** Adds all from the x that the run stands at to another, both on one side of the current limit's corner. */
function addPieces(progress: RunProgress, motion: Motion, limited: boolean, to: number): void {
  const high = Math.sqrt(Math.sqrt(progress.shear))
  const low = Math.sqrt(Math.sqrt(to))
  const count = high <= widestRatio * low ? 1 : Math.min(mostPieces, piecesFor(high / low))
  let top = high
  for (let piece = 1; piece <= count; piece += 1) {
    const bottom = piece === count ? low : high * power(low / high, piece / count)
    addRootPiece(progress, motion, limited, top, bottom)
    top = bottom
  }
  progress.shear = to
}

/**
 * Adds a piece that is even in w = x^¼, from the larger down to the smaller; dx = 4 w³ dw. What `setSoilPoint` tells of a
 * point is worked out in local numbers here, as it is the innermost loop of a run; test/laws compares it with a thrust
 * found by root.
 */
function addRootPiece(
  progress: RunProgress,
  motion: Motion,
  limited: boolean,
  high: number,
  low: number,
): void {
  const { line, footing, airDragFactor } = motion
  const { shearStrength, slipPerShear, standingResistance } = footing
  const { nodes, weights } = ruleFor(high, low)
  const middle = 0.5 * (high + low)
  const reach = 0.5 * (high - low)
  const start = limited ? line.limitedStart : line.openStart
  const give = limited ? line.limitedGive : line.openGive
  let seconds = 0
  let metres = 0
  for (let index = 0; index < nodes.length; index += 1) {
    const root = middle + reach * (nodes[index] ?? 0)
    const square = root * root
    const x = square * square
    setShear(shear, x)
    const thrust = shearStrength * shear.share
    const beltSpeed = (start - thrust) * give
    const gripping = 1 - x * slipPerShear
    const speed = beltSpeed * gripping
    const fall = shearStrength * shear.slope * gripping * give + beltSpeed * slipPerShear
    const surplus = thrust - standingResistance - airDragFactor * speed * speed
    const part = ((weights[index] ?? 0) * square * root * fall) / surplus
    seconds += part
    metres += part * speed
  }
  const scale = 4 * reach * motion.equivalentMass
  progress.seconds += scale * seconds
  progress.metres += scale * metres
}
