import type { Machine } from '../machine/parts.ts'
import { referenceTemperature } from '../motor/constants.ts'
import { setDriveLine } from '../motor/drive-line.ts'
import { worstFreeSpeed } from '../motor/free-speed.ts'
import { stallAmpsOf } from '../motor/standstill.ts'
import { burstSpeedOf } from '../track/tension.ts'
import { setTopState } from '../vehicle/equilibrium.ts'
import { frontLiftDutyOf, frontLiftThrustOf } from '../vehicle/front-lift.ts'
import { mostGripOf, setLiftedFooting } from '../ground/footing.ts'
import { setRunning } from '../vehicle/motion.ts'
import { setSpinUpLift } from '../vehicle/spin-up-lift.ts'
import { tipBackAngle, tipSideAngle } from '../vehicle/tipping.ts'
import { pivotAmpsOf, pivotThrustOf } from '../vehicle/pivot.ts'
import { motorThrustAt } from '../vehicle/thrust-line.ts'
import type { Evaluation } from './evaluation.ts'
import { setBrakes, setDriving, setHeat } from './heat-step.ts'
import { setWiring } from './wiring-step.ts'
import { setTrainDuties } from './train-duty.ts'
import { setJam, setTrack } from './track-step.ts'

/**
 * Works out every number that figures and limits read.
 *
 * @param e filled; nothing is kept from the machine before
 * *Source:* `docs/model.md` §§2 to 7; each step names its own.
 */
export function evaluate(e: Evaluation, machine: Machine): void {
  for (const step of steps) step(e, machine)
}

/** The free speed that a full pack gives. */
function setFreeSpeed(e: Evaluation, machine: Machine): void {
  const { pack, motor, controller } = machine
  e.worstFreeSpeed = worstFreeSpeed(machine)
  e.ruleOfThumbSpeed = (pack.fullVolts * controller.throttleCap) / motor.torqueConstant
}

/** The jam: full pack, cold motor, most current of any throttle. */
function setLaunch(e: Evaluation, machine: Machine): void {
  const { pack, controller } = machine
  const drive = e.launchDrive
  setDriveLine(drive, machine, pack.fullVolts, referenceTemperature, controller.throttleCap)
  e.stallAmps = stallAmpsOf(drive)
  e.launchAmps = Math.min(e.stallAmps, drive.currentLimit)
  e.launchTorque = Math.max(0, drive.torqueConstant * (e.launchAmps - drive.noLoadBase))
}

/** The running state at the driver's full throttle. */
function setFullThrottle(e: Evaluation, machine: Machine): void {
  setRunning(e, machine, machine.controller.throttleCap)
}

function setTop(e: Evaluation, machine: Machine): void {
  e.startThrust = motorThrustAt(e.line, 0)
  setTopState(e.top, machine, e)
  e.travelled = false
}

/** What top speed draws. */
function setDraw(e: Evaluation, machine: Machine): void {
  const { top } = e
  const standing = Math.min(e.startThrust, e.footing.gripThrust) - e.footing.standingResistance
  e.peakAcceleration = top.exists ? standing / e.equivalentMass : NaN
  e.topPackAmps = top.packDriveAmps + e.accessoryAmps
  e.topPackVolts = machine.pack.openVolts - e.topPackAmps * machine.pack.resistance
  setTopEfficiency(e, machine)
}

/** Below this share of the stall current a pack draws nothing that digits can tell. *Source:* `docs/model.md` §12. */
const nothingDrawn = 1e-12

/**
 * Efficiency at top speed.
 *
 * η_m = T ω/(T ω + I² R_m + ω K_t I_0);  η = F v/(V_oc I_pack). 0/0 does not exist.
 */
function setTopEfficiency(e: Evaluation, machine: Machine): void {
  const { top, drive } = e
  const shaft = top.motorTorque * top.motorSpeed
  const copper = top.motorAmps * top.motorAmps * drive.motorResistance
  const iron = top.motorSpeed * drive.torqueConstant * top.noLoadAmps
  const drawn = top.packDriveAmps >= nothingDrawn * e.stallAmps
  e.topMotorEfficiency = drawn ? shaft / (shaft + copper + iron) : NaN
  e.topOverallEfficiency = drawn
    ? (top.thrust * top.groundSpeed) / (machine.pack.openVolts * e.topPackAmps)
    : NaN
}

/** The most grip, what lifts the front and where it falls over. */
function setBalance(e: Evaluation, machine: Machine): void {
  const { drive, line, lifted } = e
  const { sinSlope, cosSlope } = machine.ground
  if (e.liftedOn.isNew(machine)) {
    setLiftedFooting(lifted, machine, sinSlope, cosSlope)
    e.mostGrip = mostGripOf(machine, e.footing)
    e.frontLiftThrust = frontLiftThrustOf(machine, lifted)
    setTipping(e, machine)
  }
  e.frontLiftDuty = frontLiftDutyOf(machine, lifted, drive, line, e.frontLiftThrust)
  e.frontLiftPush = Math.min(lifted.gripThrust, e.strongestPush)
  setSpinUpLift(e.spinUpLift, machine, lifted, line, e.strongestPush, e.equivalentMass)
}

/** The slopes that it stands on, and on which it falls over: what ground, vehicle and tracks decide alone. */
function setTipping(e: Evaluation, machine: Machine): void {
  const { centreHeight, centreAhead, gauge, contactWidth } = machine.vehicle
  const { grade, sideSlope } = machine.ground
  const balanced = centreHeight !== null && centreAhead !== null
  e.slope = Math.atan(grade)
  e.sideSlope = Math.atan(sideSlope)
  e.rightingMoment = balanced ? e.lifted.weight * centreAhead : NaN
  e.tipBack = balanced ? tipBackAngle(centreAhead, centreHeight) : NaN
  const side = balanced && gauge !== null && machine.track.count > 1
  e.tipSide = side ? tipSideAngle(gauge, contactWidth ?? 0, centreHeight) : NaN
}

/** At rest: most current and pivot turn. */
function setRest(e: Evaluation, machine: Machine): void {
  const { drive, line, level } = e
  e.restAmps = Math.min(stallAmpsOf(drive), drive.currentLimit)
  e.strongestPush =
    line.thrustPerTorque * drive.torqueConstant * (e.restAmps - drive.noLoadBase) - machine.track.internalDrag
  e.pivotThrust = pivotThrustOf(machine, level)
  e.pivotAmps = pivotAmpsOf(machine, drive, line, e.pivotThrust)
  e.burstSpeed = burstSpeedOf(machine.track)
}

/**
 * Each step reads what those before it have worked out. A list, not calls in a row: so each is compiled for itself, with
 * its small functions put in line, and no number is boxed to be handed on.
 */
const steps: readonly ((e: Evaluation, machine: Machine) => void)[] = [
  setFreeSpeed,
  setLaunch,
  setFullThrottle,
  setTop,
  setDraw,
  setRest,
  setBalance,
  setTrack,
  setJam,
  setTrainDuties,
  setDriving,
  setHeat,
  setBrakes,
  setWires,
]

function setWires(e: Evaluation, machine: Machine): void {
  setWiring(e.wiring, machine, e)
}
