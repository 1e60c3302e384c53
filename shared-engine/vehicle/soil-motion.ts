import type { Footing } from '../ground/footing.ts'
import { setShear, Shear, shearShareInverse } from '../ground/soil-shear.ts'
import type { ThrustLine } from './thrust-line.ts'

/**
 * Motion on soil, told by the soil's x = i L/K: thrust, belt speed and ground speed all follow from it without a root.
 *
 * F = F_∞ φ(x);  v_b from F_m(v_b) = F;  i = x K/L;  v = v_b (1 − i).
 */
export class SoilPoint {
  /** i L/K. */
  x = 0
  /** N. */
  thrust = 0
  /** m/s. */
  beltSpeed = 0
  /** m/s. */
  groundSpeed = 0
  /** dF/dx, N. */
  thrustSlope = 0
  /** dv/dx, m/s: ground speed falls as more shear is asked for. */
  groundSpeedSlope = 0
}

const shear = new Shear()

/**
 * Fills a point from its x.
 *
 * dv/dx = −F′ (1 − i)/s − v_b K/L, s the slope of the thrust line there.
 *
 * *Source:* Janosi and Hanamoto; engine contract §5.
 */
export function setSoilPoint(point: SoilPoint, footing: Footing, line: ThrustLine, x: number): void {
  setShear(shear, x)
  const thrust = footing.shearStrength * shear.share
  const limited = line.cornerSpeed > 0 && thrust > line.cornerThrust
  const start = limited ? line.limitedStart : line.openStart
  const give = limited ? line.limitedGive : line.openGive
  const beltSpeed = (start - thrust) * give
  const gripping = 1 - x * footing.slipPerShear
  const thrustSlope = footing.shearStrength * shear.slope
  point.x = x
  point.thrust = thrust
  point.beltSpeed = beltSpeed
  point.groundSpeed = beltSpeed * gripping
  point.thrustSlope = thrustSlope
  point.groundSpeedSlope = -thrustSlope * gripping * give - beltSpeed * footing.slipPerShear
}

/** A relative miss in ground speed after which one more step of Newton's is the last: what it leaves is of the order of its
 * square. Told in speed, not in x: on a flat current limit x hardly moves while the speed runs through its whole range. */
const closeEnough = 1e-5
/** The same for the meeting point, whose slip is told to 1e-9 where a soft soil bends far within one step. */
const meetingCloseEnough = 1e-7

/** Newton's next x, or the bracket's middle (in ratio) where it leaves the bracket. */
function nextInside(next: number, left: number, right: number): number {
  if (next >= left && next <= right) return next
  return left > 0 ? Math.sqrt(left * right) : right / 2
}

/**
 * x at rest with full throttle: 1 slip where the track can spin, else the slip of a first creep.
 *
 * @param restThrust F_m(0), N, more than nothing
 */
export function startingShear(footing: Footing, restThrust: number): number {
  if (restThrust >= footing.gripThrust) return footing.fullShear
  return shearShareInverse(restThrust / footing.shearStrength)
}

/**
 * Moves a point to the x at which the ground speed has a wanted value; it falls with x, so there is one.
 *
 * @param low, high x with a ground speed of at least and of at most the wanted one
 * @param guess where to start, between them
 * @param wanted m/s
 * *Source:* Newton's method kept inside a bracket.
 */
export function moveToGroundSpeed(
  point: SoilPoint,
  footing: Footing,
  line: ThrustLine,
  low: number,
  high: number,
  guess: number,
  wanted: number,
): void {
  let left = low
  let right = high
  let x = guess > low && guess < high ? guess : low
  for (let step = 0; step < 100; step += 1) {
    setSoilPoint(point, footing, line, x)
    const excess = point.groundSpeed - wanted
    if (excess > 0) left = x
    else right = x
    const settled = Math.abs(excess) <= closeEnough * wanted
    x = nextInside(x - excess / point.groundSpeedSlope, left, right)
    if (settled) break
  }
  setSoilPoint(point, footing, line, x)
}

/**
 * Moves a point to the x at which thrust less resistance is nothing; it rises with x, so there is one.
 *
 * @param low, high x with a surplus of at most and of at least nothing
 * @param guess where to start, between them
 * @param resistance R(0), N
 * @param airDragFactor ½ ρ C_d A, N/(m/s)²
 * *Source:* Newton's method kept inside a bracket; engine contract §5.
 */
export function moveToEquilibrium(
  point: SoilPoint,
  footing: Footing,
  line: ThrustLine,
  low: number,
  high: number,
  guess: number,
  resistance: number,
  airDragFactor: number,
): void {
  let left = low
  let right = high
  let x = guess > low && guess < high ? guess : low
  for (let step = 0; step < 100; step += 1) {
    setSoilPoint(point, footing, line, x)
    const surplus = point.thrust - resistance - airDragFactor * point.groundSpeed * point.groundSpeed
    if (surplus < 0) left = x
    else right = x
    const slope = point.thrustSlope - 2 * airDragFactor * point.groundSpeed * point.groundSpeedSlope
    const miss = Math.abs((surplus / slope) * point.groundSpeedSlope)
    const settled = miss <= meetingCloseEnough * point.groundSpeed
    x = nextInside(x - surplus / slope, left, right)
    if (settled) break
  }
  setSoilPoint(point, footing, line, x)
}
