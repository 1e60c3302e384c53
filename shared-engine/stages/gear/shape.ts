import { shiftNeeded, undercutBelow } from '../../geometry/gear-mesh.ts'
import { finiteOrNull } from '../../numeric/finite.ts'
import { radiansPerDegree } from '../../units/factors.ts'
import type { GearStage } from './machine.ts'

/**
 * What a pair's shape decides, and how fast its pitch line runs: lengths in m, the angle in degrees.
 *
 * *Source:* ISO 21771; the speed range: common practice, from memory.
 */
export function gearShape(stage: GearStage, topSpeed: number): Readonly<Record<string, number | null>> {
  const { mesh, pressureAngle, driverShift, drivenShift, driverTeeth, drivenTeeth } = stage
  return {
    contactRatio: mesh.contactRatio,
    workingPressureAngleDegrees: mesh.workingAngle / radiansPerDegree,
    centreM: mesh.centre * stage.module,
    driverUndercutBelow: undercutBelow(driverShift, pressureAngle),
    drivenUndercutBelow: undercutBelow(drivenShift, pressureAngle),
    driverShiftNeeded: shiftNeeded(driverTeeth, pressureAngle),
    drivenShiftNeeded: shiftNeeded(drivenTeeth, pressureAngle),
    topPitchLineMps: finiteOrNull(topSpeed * stage.driverRadius),
    pitchLineRangeMps: stage.speedRange,
  }
}
