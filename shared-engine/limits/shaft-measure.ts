import type { ShaftDuty } from '../cases/stage-duty.ts'
import { holdingCases, lastingCases, mishapCases } from '../cases/stage-duty.ts'
import { caseNumber } from '../cases/case.ts'
import type { JointPart } from '../machine/joint.ts'
import type { ShaftPart } from '../machine/shaft.ts'
import { lastingShare, notchOf } from '../reference/joints.ts'
import { bearingLifeHours, bearingSpeed, greasedSpeed } from '../stages/bearing.ts'
import { jointTorque } from '../stages/joint.ts'
import {
  bearingLoad,
  comparativeStress,
  enduranceStrength,
  fatigueUse,
  shaftBending,
} from '../stages/shaft-strength.ts'
import { rpmOf } from '../units/rpm.ts'
import { addMaximum, addMinimum, type Ledger } from './ledger.ts'
import type { Limit } from './limit.ts'
import { addWorstOf } from './worst-case.ts'

/** Limits of a wheel on its shaft. */
interface JointLimits {
  readonly joint: Limit
  readonly jointLasts: Limit
  readonly stopJoint: Limit
}

/** Limits of a shaft with its wheel and bearing. */
export interface ShaftLimits extends JointLimits {
  readonly shaft: Limit
  readonly shaftLasts: Limit
  readonly stopShaft: Limit
  readonly bearingLife: Limit
  readonly bearingSpeed: Limit
}

const stress = new Float64Array(5)
const use = new Float64Array(5)

/**
 * Adds what a shaft, the joint on it and the bearing beside it have to hold.
 *
 * *Source:* `docs/model.md` §4.
 */
export function measureShaft(
  ledger: Ledger,
  limits: ShaftLimits,
  part: ShaftPart,
  duty: ShaftDuty,
  isJammed: boolean,
): void {
  const { diameter, material, arm } = part
  for (let place = 0; place < stress.length; place += 1) {
    const bending = shaftBending(duty.pull[place] ?? NaN, arm)
    stress[place] = comparativeStress(bending, duty.torque[place] ?? NaN, diameter)
  }
  addWorstOf(ledger, limits.shaft, stress, holdingCases, material.yield)
  if (part.seat !== 'unknown') measureFatigue(ledger, limits.shaftLasts, part, duty)
  if (isJammed) addWorstOf(ledger, limits.stopShaft, stress, mishapCases, material.tensile)
  if (part.joint !== null) measureJoint(ledger, limits, part.joint, part, duty.torque, isJammed)
}

/** How much of its fatigue strength the shaft uses. */
function measureFatigue(ledger: Ledger, limit: Limit, part: ShaftPart, duty: ShaftDuty): void {
  const { diameter, material, arm } = part
  const notch = notchOf(part.joint?.kind ?? 'none')
  const endurance = shaftEndurance(part)
  for (let at = 0; at < lastingCases.length; at += 1) {
    const place = lastingCases[at] ?? 0
    const bending = shaftBending(duty.pull[place] ?? NaN, arm)
    use[place] = fatigueUse(bending, duty.torque[place] ?? NaN, diameter, endurance, material.tensile, notch)
  }
  addWorstOf(ledger, limit, use, lastingCases, 1)
}

/** S_e of a shaft, Pa. */
export function shaftEndurance({ diameter, material }: ShaftPart): number {
  const { family, tensile, endurance } = material
  return enduranceStrength({ metal: family === 'metal', tensile, endurance }, diameter)
}

/** What a joint sits on. */
interface Seat {
  readonly diameter: number
  readonly material: { readonly yield: number }
  readonly hubBearing: number
}

/** Adds what a joint has to hold. @param torques by `dutyCase` */
export function measureJoint(
  ledger: Ledger,
  limits: JointLimits,
  joint: JointPart,
  seat: Seat,
  torques: Float64Array,
  isJammed: boolean,
): void {
  const holds = jointTorque(joint, seat.diameter, seat.material.yield, seat.hubBearing)
  addWorstOf(ledger, limits.joint, torques, holdingCases, holds)
  addWorstOf(ledger, limits.jointLasts, torques, lastingCases, lastingShare(joint.kind) * holds)
  if (isJammed) addWorstOf(ledger, limits.stopJoint, torques, mishapCases, holds)
}

/** Adds life and speed of the bearing beside a wheel, at top speed. @param lifeHours wanted */
export function measureBearing(
  ledger: Ledger,
  limits: ShaftLimits,
  part: ShaftPart,
  duty: ShaftDuty,
  lifeHours: number,
): void {
  const { bearing, seat } = part
  if (bearing === null || Number.isNaN(duty.topSpeed)) return
  const rpm = rpmOf(duty.topSpeed)
  const life = bearingLifeHours(bearing.dynamic, bearingLoad(duty.topPull, seat), rpm, bearing.kind)
  if (!Number.isNaN(life)) addMinimum(ledger, limits.bearingLife, life, lifeHours, caseNumber.top)
  if (bearing.bore === null || bearing.outer === null) return
  const speed = bearingSpeed(bearing.bore, bearing.outer, rpm)
  addMaximum(ledger, limits.bearingSpeed, speed, greasedSpeed, caseNumber.top)
}
