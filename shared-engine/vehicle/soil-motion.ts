import type { Footing } from '../ground/footing.ts'
import { setShear, Shear, shearBend, shearShareGuess, shearShareInverse } from '../ground/soil-shear.ts'
import { bentStep } from '../numeric/bent-step.ts'
import type { Motion } from './motion.ts'
import { beltSpeedForThrust, motorThrustAt, type ThrustLine } from './thrust-line.ts'

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
  /** dF/dx and d²F/dx², N. */
  thrustSlope = 0
  thrustBend = 0
  /** dv/dx and d²v/dx², m/s: ground speed falls as more shear is asked for. */
  groundSpeedSlope = 0
  groundSpeedBend = 0
}

const shear = new Shear()

/**
 * Fills a point from its x.
 *
 * dv/dx = −F′ (1 − i)/s − v_b K/L,  d²v/dx² = −F″ (1 − i)/s + 2 F′ (K/L)/s, s the slope of the thrust line there.
 *
 * *Source:* Janosi and Hanamoto; `docs/model.md` §5.
 */
export function setSoilPoint(point: SoilPoint, motion: Motion): void {
  const { footing, line } = motion
  const x = point.x
  setShear(shear, x)
  const thrust = footing.shearStrength * shear.share
  const limited = line.cornerSpeed > 0 && thrust > line.cornerThrust
  const start = limited ? line.limitedStart : line.openStart
  const give = limited ? line.limitedGive : line.openGive
  const beltSpeed = (start - thrust) * give
  const gripping = 1 - x * footing.slipPerShear
  const thrustSlope = footing.shearStrength * shear.slope
  const thrustBend = footing.shearStrength * shearBend(shear, x)
  point.thrust = thrust
  point.beltSpeed = beltSpeed
  point.groundSpeed = beltSpeed * gripping
  point.thrustSlope = thrustSlope
  point.thrustBend = thrustBend
  point.groundSpeedSlope = -thrustSlope * gripping * give - beltSpeed * footing.slipPerShear
  point.groundSpeedBend = give * (2 * thrustSlope * footing.slipPerShear - thrustBend * gripping)
}

/**
 * A relative miss in ground speed after which one more step is the last: what it leaves is of the order of its cube. Told
 * in speed, not in x: on a flat current limit x hardly moves while the speed runs through its whole range.
 */
const closeEnough = 2e-4
/** The same for the meeting point, whose slip is told to 1e-9 where a soft soil bends far within one step. */
const meetingCloseEnough = 1e-5
/** No root may go on for ever. */
const mostSteps = 100

/** A guess kept inside of its bracket: at the upper end itself rounding may tell a speed from beyond the corner. */
function startInside(guess: number, high: number): number {
  return Math.min(0.9 * high, Math.max(0, guess))
}

/** Middle of a bracket, in ratio. */
function middleOf(left: number, right: number): number {
  return left > 0 ? Math.sqrt(left * right) : right / 2
}

/**
 * x at rest with full throttle: 1 slip where the track can spin, else the slip of a first creep.
 *
 * @param restThrust F_m(0), N, more than nothing
 * @returns x = i L/K
 * *Source:* `docs/model.md` §5: slip at rest.
 */
export function startingShear(footing: Footing, restThrust: number): number {
  if (restThrust >= footing.gripThrust) return footing.fullShear
  return shearShareInverse(restThrust / footing.shearStrength)
}

/** About the x of a ground speed: spinning at the grip's thrust, or pushing with what the motors have at that speed. */
function guessAt(footing: Footing, line: ThrustLine, groundSpeed: number): number {
  const thrust = motorThrustAt(line, groundSpeed)
  if (thrust < footing.gripThrust) return shearShareGuess(thrust / footing.shearStrength)
  return footing.fullShear * (1 - groundSpeed / beltSpeedForThrust(line, footing.gripThrust))
}

/**
 * Moves a point to the x at which the ground speed has a wanted value; it falls with x, so there is one.
 *
 * @param point filled
 * @param high x with a ground speed of at most the wanted one
 * @param wanted m/s
 * *Source:* Halley's method kept inside a bracket.
 */
export function moveToGroundSpeed(point: SoilPoint, motion: Motion, high: number, wanted: number): void {
  let left = 0
  let right = high
  point.x = startInside(guessAt(motion.footing, motion.line, wanted), high)
  for (let step = 0; step < mostSteps; step += 1) {
    setSoilPoint(point, motion)
    const excess = point.groundSpeed - wanted
    if (excess > 0) left = point.x
    else right = point.x
    const next = point.x + bentStep(excess, point.groundSpeedSlope, point.groundSpeedBend)
    const inside = next >= left && next <= right
    point.x = inside ? next : middleOf(left, right)
    if (inside && Math.abs(excess) <= closeEnough * wanted) break
  }
  setSoilPoint(point, motion)
}

/** About the x of the meeting point: the resistance met without slip, or where the ground gives way, by what grip leaves. */
function meetingGuess({ footing, line, airDragFactor }: Motion): number {
  const { standingResistance, gripThrust } = footing
  const speed = beltSpeedForThrust(line, standingResistance)
  const thrust = standingResistance + airDragFactor * speed * speed
  if (thrust < gripThrust) return shearShareGuess(thrust / footing.shearStrength)
  const spinning = Math.sqrt((gripThrust - standingResistance) / airDragFactor)
  return footing.fullShear * (1 - spinning / beltSpeedForThrust(line, gripThrust))
}

/**
 * Moves a point to the x at which thrust less resistance is nothing; it rises with x, so there is one.
 *
 * F(x) − R(0) − k v(x)² = 0.
 *
 * @param point filled
 * @param high x with a surplus of at least nothing
 * *Source:* Halley's method kept inside a bracket; `docs/model.md` §5.
 */
export function moveToMeeting(point: SoilPoint, motion: Motion, high: number): void {
  const { footing, airDragFactor } = motion
  let left = 0
  let right = high
  point.x = startInside(meetingGuess(motion), high)
  for (let step = 0; step < mostSteps; step += 1) {
    setSoilPoint(point, motion)
    const { groundSpeed, groundSpeedSlope } = point
    const surplus = point.thrust - footing.standingResistance - airDragFactor * groundSpeed * groundSpeed
    if (surplus < 0) left = point.x
    else right = point.x
    const slope = point.thrustSlope - 2 * airDragFactor * groundSpeed * groundSpeedSlope
    const bent = groundSpeedSlope * groundSpeedSlope + groundSpeed * point.groundSpeedBend
    const change = bentStep(surplus, slope, point.thrustBend - 2 * airDragFactor * bent)
    const next = point.x + change
    const inside = next >= left && next <= right
    point.x = inside ? next : middleOf(left, right)
    if (inside && Math.abs(change * groundSpeedSlope) <= meetingCloseEnough * groundSpeed) break
  }
  setSoilPoint(point, motion)
}
