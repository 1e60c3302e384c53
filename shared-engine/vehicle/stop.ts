import { legendreRule } from '../numeric/legendre.ts'
import type { DriveLine } from '../motor/drive-line.ts'
import { brakeAmpsAt, type Braking, decelerationAt, leftToMotors, slidingAt } from './braking.ts'
import type { ThrustLine } from './thrust-line.ts'

/** A stop from a speed with all brakes. */
export class Stop {
  /** m, s and J that come back to the pack; NaN where it does not stop. */
  metres = NaN
  seconds = NaN
  energyBack = NaN
}

/** Speeds at which a brake reaches its limit, between 0 and the start: each piece has up to six, and one corner. */
const marks = new Float64Array(16)
let markCount = 0

/** Nodes by how far the logarithm of the speed spans a piece: each leaves less than 1e-8. */
const few = legendreRule(6)
const some = legendreRule(12)
/** Most of that logarithm that one rule spans. */
const widest = 4

/**
 * Fills a stop.
 *
 * s = ∫ v/a dv,  t = ∫ dv/a,  E = ∫ M I (ω K_t − I R_s)/a dv: δ V_b = ω K_t − I R_s while I is fed back.
 *
 * @param from m/s
 * *Source:* Newton's second law; Gauss-Legendre on pieces that end where a brake reaches its limit.
 */
export function setStop(
  stop: Stop,
  braking: Braking,
  drive: DriveLine,
  line: ThrustLine,
  from: number,
): void {
  stop.metres = stop.seconds = stop.energyBack = NaN
  if (!(decelerationAt(braking, 0) > 0) || !(from > 0)) return
  stop.metres = stop.seconds = stop.energyBack = 0
  const corner = Math.min(braking.most / braking.shorted, from)
  markCount = 0
  addMark(0)
  if (corner > 0) markPiece(braking, 0, corner)
  if (corner < from) markPiece(braking, corner, from)
  for (let index = 1; index < markCount; index += 1) {
    addPiece(stop, braking, drive, line, marks[index - 1] ?? 0, marks[index] ?? 0)
  }
}

/** Adds a mark behind those that are smaller. */
function addMark(speed: number): void {
  let at = markCount
  while (at > 0 && (marks[at - 1] ?? 0) > speed) {
    marks[at] = marks[at - 1] ?? 0
    at -= 1
  }
  marks[at] = speed
  markCount += 1
}

/** Marks a piece's end, and where on it the grip lets go or leaves all or nothing to the motors. */
function markPiece(braking: Braking, low: number, high: number): void {
  const middle = 0.5 * (low + high)
  const lowSlides = slidingAt(braking, low)
  const middleSlides = slidingAt(braking, middle)
  const highSlides = slidingAt(braking, high)
  const bend = Math.abs(0.5 * (lowSlides + highSlides) - middleSlides)
  if (Math.max(lowSlides, middleSlides, highSlides) + bend > 0) {
    markRoots(low, high, lowSlides, middleSlides, highSlides)
    if (braking.most > 0) markMotors(braking, low, middle, high)
  }
  addMark(high)
}

function markMotors(braking: Braking, low: number, middle: number, high: number): void {
  const left = leftToMotors(braking, low)
  const half = leftToMotors(braking, middle)
  const right = leftToMotors(braking, high)
  const most = (speed: number): number => Math.min(braking.shorted * speed, braking.most)
  markRoots(low, high, left, half, right)
  markRoots(low, high, left - most(low), half - most(middle), right - most(high))
}

/** Roots inside a piece of the parabola through three points; x from −1 to 1. */
function markRoots(low: number, high: number, left: number, middle: number, right: number): void {
  const bend = 0.5 * (left + right) - middle
  const slope = 0.5 * (right - left)
  const inside = slope * slope - 4 * bend * middle
  if (!(inside >= 0)) return
  const far = -0.5 * (slope + (slope < 0 ? -1 : 1) * Math.sqrt(inside))
  markRoot(low, high, far / bend)
  markRoot(low, high, middle / far)
}

function markRoot(low: number, high: number, x: number): void {
  if (x > -1 && x < 1) addMark(low + 0.5 * (1 + x) * (high - low))
}

/** Adds what a smooth piece takes: by the logarithm of the distance to where the deceleration would be nothing. */
function addPiece(
  stop: Stop,
  braking: Braking,
  drive: DriveLine,
  line: ThrustLine,
  low: number,
  high: number,
): void {
  if (!(high > low)) return
  const start = decelerationAt(braking, low)
  const rise = decelerationAt(braking, high) - start
  const distance = rise > 0 ? (start * (high - low)) / rise : Infinity
  const span = Math.log1p((high - low) / distance)
  if (!(span > 0.1)) {
    addRule(stop, braking, drive, line, low, high)
    return
  }
  const parts = Math.ceil(span / widest)
  for (let part = 0; part < parts; part += 1) {
    addLogRule(stop, braking, drive, line, low, distance, (span * part) / parts, (span * (part + 1)) / parts)
  }
}

function addRule(
  stop: Stop,
  braking: Braking,
  drive: DriveLine,
  line: ThrustLine,
  low: number,
  high: number,
): void {
  const half = 0.5 * (high - low)
  const { nodes, weights } = few
  for (let index = 0; index < nodes.length; index += 1) {
    const speed = low + half * (1 + (nodes[index] ?? 0))
    addNode(stop, braking, drive, line, speed, half * (weights[index] ?? 0))
  }
}

/** v = low + d (e^w − 1), dv = d e^w dw. */
function addLogRule(
  stop: Stop,
  braking: Braking,
  drive: DriveLine,
  line: ThrustLine,
  low: number,
  distance: number,
  from: number,
  to: number,
): void {
  const half = 0.5 * (to - from)
  const { nodes, weights } = half < 0.75 ? few : some
  for (let index = 0; index < nodes.length; index += 1) {
    const grown = Math.expm1(from + half * (1 + (nodes[index] ?? 0)))
    const weight = half * (weights[index] ?? 0) * distance * (1 + grown)
    addNode(stop, braking, drive, line, low + distance * grown, weight)
  }
}

function addNode(
  stop: Stop,
  braking: Braking,
  drive: DriveLine,
  line: ThrustLine,
  speed: number,
  weight: number,
): void {
  const share = weight / decelerationAt(braking, speed)
  stop.seconds += share
  stop.metres += share * speed
  if (!(braking.most > 0)) return
  const amps = brakeAmpsAt(braking, speed)
  const driven = speed * line.motorPerBelt * drive.torqueConstant - amps * drive.seriesResistance
  stop.energyBack += share * drive.count * amps * driven
}
