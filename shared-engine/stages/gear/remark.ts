import { lewisPressureAngleDegrees } from '../../reference/gears.ts'
import { radiansPerDegree } from '../../units/factors.ts'
import { shiftNeeded, undercutBelow } from '../../geometry/gear-mesh.ts'
import type { GearStage } from './machine.ts'

/**
 * What there is to say about a pair: the angle of its form factors, shifts inwards, speed, and undercut with its cure.
 *
 * *Source:* ISO 21771 for undercut; the speed range of the dynamic factor: common practice, no source.
 */
export function gearRemarks(stage: GearStage, topSpeed: number, number: number): readonly string[] {
  const { pressureAngle, driverShift, drivenShift, driverTeeth, drivenTeeth, finish, speedRange } = stage
  const angle =
    'Lewis form factors are for a pressure angle of 20°; at other angles tooth bending is a rougher estimate.'
  const inwards =
    'A profile shifted inwards has a thinner root than the form factor says: tooth bending is worse than shown.'
  const speed = topSpeed * stage.driverRadius
  const fast = `The teeth of stage ${number} run at ${speed.toFixed(1)} m/s at top speed: the dynamic factor of ${finish} teeth is used up to ${speedRange} m/s.`
  return [
    ...(pressureAngle === lewisPressureAngleDegrees * radiansPerDegree ? [] : [angle]),
    ...(driverShift < 0 || drivenShift < 0 ? [inwards] : []),
    ...(speed > speedRange ? [fast] : []),
    ...undercut(`The driver of stage ${number}`, driverTeeth, driverShift, stage),
    ...undercut(`The driven wheel of stage ${number}`, drivenTeeth, drivenShift, stage),
  ]
}

/** A rack-cut wheel of too few teeth: what it costs, and the shift that clears it. */
function undercut(wheel: string, teeth: number, shift: number, stage: GearStage): readonly string[] {
  const least = undercutBelow(shift, stage.pressureAngle)
  if (teeth >= least) return []
  const needed = shiftNeeded(teeth, stage.pressureAngle)
  const price = `part of its flank is cut away, so that fewer teeth share the load than the contact ratio of ${stage.mesh.contactRatio.toFixed(2)} says, and its root is thinner than its form factor says`
  return [
    `${wheel} has ${teeth} teeth, fewer than the ${least.toFixed(1)} that a rack can cut whole: ${price}. A profile shift of ${needed.toFixed(2)} clears it.`,
  ]
}
