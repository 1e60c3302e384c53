import { shearShareInverse } from '../ground/soil-shear.ts'
import { isFlat } from './flat-limit.ts'
import type { Motion } from './motion.ts'
import { moveToMeeting, setSoilPoint, SoilPoint, startingShear } from './soil-motion.ts'
import { motorThrustAt } from './thrust-line.ts'
import type { TopState } from './top-state.ts'

const point = new SoilPoint()

/**
 * Meeting point of thrust and resistance on soil.
 *
 * The x between φ(x) = R(0)/F_∞ and the start's at which F(x) − R(0) − k v(x)² = 0: it rises with x, so there is one.
 *
 * *Source:* `docs/model.md` §5.
 */
export function setSoilTop(top: TopState, motion: Motion): void {
  const { footing, line, airDragFactor } = motion
  const resistance = footing.standingResistance
  if (isFlat(line) && setFlatTop(top, motion)) return
  if (airDragFactor === 0) {
    point.x = shearShareInverse(resistance / footing.shearStrength)
    setSoilPoint(point, motion)
  } else {
    const restThrust = motorThrustAt(line, 0)
    const most = isFlat(line) ? Math.min(restThrust, line.cornerThrust) : restThrust
    moveToMeeting(point, motion, startingShear(footing, most))
  }
  top.spinning = false
  top.slip = point.x / footing.fullShear
  top.beltSpeed = point.beltSpeed
  top.groundSpeed = point.groundSpeed
  top.thrust = resistance + airDragFactor * point.groundSpeed * point.groundSpeed
}

/**
 * Meeting point on a current limit that holds the thrust the same at every speed up to the corner.
 *
 * v = √((F − R(0))/k), v_b = v/(1 − i) with i from F; tried again with the thrust there, which hardly differs.
 *
 * @returns false where it lies past the corner, or the ground gives way first
 */
function setFlatTop(top: TopState, motion: Motion): boolean {
  const { footing, line, airDragFactor } = motion
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
