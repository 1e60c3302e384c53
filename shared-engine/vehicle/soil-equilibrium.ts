import type { Footing } from '../ground/footing.ts'
import { shearShareGuess, shearShareInverse } from '../ground/soil-shear.ts'
import { isFlat } from './flat-limit.ts'
import { moveToEquilibrium, setSoilPoint, SoilPoint, startingShear } from './soil-motion.ts'
import { beltSpeedForThrust, type ThrustLine } from './thrust-line.ts'
import type { TopState } from './top-state.ts'

const point = new SoilPoint()

/**
 * Meeting point of thrust and resistance on soil.
 *
 * The x between φ(x) = R(0)/F_∞ and the start's at which F(x) − R(0) − k v(x)² = 0: it rises with x, so there is one.
 *
 * *Source:* engine contract §5.
 */
export function setSoilTop(
  top: TopState,
  footing: Footing,
  airDragFactor: number,
  line: ThrustLine,
  restThrust: number,
): void {
  const resistance = footing.standingResistance
  if (isFlat(line) && setFlatTop(top, footing, airDragFactor, line)) return
  if (airDragFactor === 0)
    setSoilPoint(point, footing, line, shearShareInverse(resistance / footing.shearStrength))
  else {
    const most = line.cornerSpeed > 0 && isFlat(line) ? Math.min(restThrust, line.cornerThrust) : restThrust
    const high = startingShear(footing, most)
    const guess = equilibriumGuess(footing, airDragFactor, line)
    moveToEquilibrium(point, footing, line, 0, high, guess, resistance, airDragFactor)
  }
  top.spinning = false
  top.slip = point.x / footing.fullShear
  top.beltSpeed = point.beltSpeed
  top.groundSpeed = point.groundSpeed
  top.thrust = resistance + airDragFactor * point.groundSpeed * point.groundSpeed
}

/** About the x of the meeting point: the resistance met at the belt's speed for the resistance at rest. */
function equilibriumGuess(footing: Footing, airDragFactor: number, line: ThrustLine): number {
  const speed = beltSpeedForThrust(line, footing.standingResistance)
  const thrust = footing.standingResistance + airDragFactor * speed * speed
  return shearShareGuess(Math.min(thrust, footing.gripThrust) / footing.shearStrength)
}

/**
 * Meeting point on a current limit that holds the thrust the same at every speed up to the corner.
 *
 * v = √((F − R(0))/k), v_b = v/(1 − i) with i from F; tried again with the thrust there, which hardly differs.
 *
 * @returns false where it lies past the corner, or the ground gives way first
 */
function setFlatTop(top: TopState, footing: Footing, airDragFactor: number, line: ThrustLine): boolean {
  if (line.cornerThrust >= footing.gripThrust || airDragFactor === 0) return false
  let beltSpeed = 0
  for (let step = 0; step < 4; step += 1) {
    const thrust = line.limitedStart - line.limitedSlope * beltSpeed
    top.slip = shearShareInverse(thrust / footing.shearStrength) / footing.fullShear
    top.groundSpeed = Math.sqrt((thrust - footing.standingResistance) / airDragFactor)
    beltSpeed = top.groundSpeed / (1 - top.slip)
    if (!(beltSpeed < line.cornerSpeed)) return false
  }
  top.spinning = false
  top.beltSpeed = beltSpeed
  top.thrust = footing.standingResistance + airDragFactor * top.groundSpeed * top.groundSpeed
  return true
}
