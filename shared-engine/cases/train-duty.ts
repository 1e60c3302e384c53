import type { Machine } from '../machine/parts.ts'
import { pressingTension } from '../track/tensioner.ts'
import { centrifugalTension } from '../track/tension.ts'
import type { Evaluation } from './evaluation.ts'
import type { TrackLoad } from './track-loads.ts'
import { dutyCase, dutyCases, type ShaftDuty, type StageDuty } from './stage-duty.ts'

/**
 * Fills what every reduction, its shaft, the motor's and the sprocket's shaft bear.
 *
 * Into stage k: A_k r n G_{k−1}/(M G), its driven shaft A_{k+1} r n G_k/(M G); at top speed the motor's torque times the
 * ratios and efficiencies of the stages before. The service factor multiplies all but a stop. Of a shaft that the machine
 * does not know nothing is filled.
 *
 * *Source:* `docs/model.md` §4.
 */
export function setTrainDuties(e: Evaluation, machine: Machine): void {
  const { track, motor, train, stages } = machine
  const shaftTorque = (track.radius * track.count) / (motor.count * train.ratio)
  let ratio = 1
  let efficiency = 1
  for (let at = 0; at < stages.length; at += 1) {
    const stage = stages[at]
    const duty = e.stageDuties[at]
    if (stage === undefined || duty === undefined) break
    setTorques(duty.into, e, machine, at, shaftTorque * ratio, ratio * efficiency)
    duty.topSpeed = e.top.motorSpeed / ratio
    ratio *= stage.ratio
    efficiency *= stage.efficiency
    setTorques(duty.out, e, machine, at + 1, shaftTorque * ratio, ratio * efficiency)
    duty.topDrivenSpeed = e.top.motorSpeed / ratio
    duty.gripUncapped = shaftTorque * ratio * (e.pulls.gripUncapped[at + 1] ?? NaN)
    duty.topUnfactored = e.top.motorTorque * ratio * efficiency
  }
  if (motor.joint !== null) setTorques(e.motorShaft.torque, e, machine, 0, shaftTorque, 1)
  setShaftDuties(e, machine)
  if (track.shaft !== null) setSprocketShaft(e, machine)
}

/** @param perPull N·m for each newton of pull; @param perTorque for each newton metre of the motor at top speed */
function setTorques(
  torques: Float64Array,
  e: Evaluation,
  machine: Machine,
  place: number,
  perPull: number,
  perTorque: number,
): void {
  const { launch, grip, stop, stopFree } = e.pulls
  const factor = machine.service.factor
  torques[dutyCase.launch] = factor * perPull * (launch[place] ?? NaN)
  torques[dutyCase.grip] = factor * perPull * (grip[place] ?? NaN)
  torques[dutyCase.top] = factor * perTorque * e.top.motorTorque
  torques[dutyCase.stop] = perPull * (stop[place] ?? NaN)
  torques[dutyCase.stopFree] = perPull * (stopFree[place] ?? NaN)
}

/**
 * Driven shafts: the pulls of their own mesh and of the next one, at right angles.
 *
 * Q = √(Q_k² + Q_{k+1}²), the last one Q_k.
 *
 * *Source:* at right angles: assumption, `docs/model.md` §4.
 */
function setShaftDuties(e: Evaluation, machine: Machine): void {
  const { stages, service } = machine
  for (let at = 0; at < stages.length; at += 1) {
    const stage = stages[at]
    const duty = e.stageDuties[at]
    const shaft = e.stageShafts[at]
    if (stage === undefined || duty === undefined || shaft === undefined) break
    if (stage.shaft === null) continue
    const next = e.stageDuties[at + 1]
    setPulls(shaft, duty, stage.pullPerTorque, next, stages[at + 1]?.pullPerTorque ?? 0)
    shaft.topPull = (shaft.pull[dutyCase.top] ?? NaN) / service.factor
    shaft.topSpeed = duty.topDrivenSpeed
  }
}

/** @param next, nextPerTorque the reduction that its shaft drives, and 0 where there is none */
function setPulls(
  shaft: ShaftDuty,
  duty: StageDuty,
  perTorque: number,
  next: StageDuty | undefined,
  nextPerTorque: number,
): void {
  const { torque, pull } = shaft
  const { into, out } = duty
  for (let place = 0; place < dutyCases; place += 1) {
    const own = perTorque * (into[place] ?? NaN)
    const other = nextPerTorque === 0 ? 0 : nextPerTorque * (next?.into[place] ?? NaN)
    torque[place] = out[place] ?? NaN
    pull[place] = Math.sqrt(own * own + other * other)
  }
}

/**
 * The sprocket's shaft: the loop's two sides, and the last reduction's pull at right angles.
 *
 * Q_t = F + 2 P;  Q = √(Q_t² + Q_last²);  T = F r n/M.
 *
 * *Source:* `docs/model.md` §4.
 */
function setSprocketShaft(e: Evaluation, machine: Machine): void {
  const { track, motor, service } = machine
  const shaft = e.sprocketShaft
  setLoopPull(shaft, e, machine, dutyCase.launch, e.launchLoad)
  setLoopPull(shaft, e, machine, dutyCase.grip, e.gripLoad)
  setLoopPull(shaft, e, machine, dutyCase.top, e.topLoad)
  setLoopPull(shaft, e, machine, dutyCase.stop, e.stopLoad)
  setLoopPull(shaft, e, machine, dutyCase.stopFree, e.stopFreeLoad)
  const { force, beltSpeed } = e.topLoad
  const pressing = pressingTension(track.hold, force, centrifugalTension(track, beltSpeed))
  const meshed = lastMeshPull(e, machine, dutyCase.top) / service.factor
  const loop = force + 2 * pressing
  shaft.topPull = Math.sqrt(loop * loop + meshed * meshed)
  shaft.topSpeed = beltSpeed / track.radius
  for (let place = 0; place < dutyCases; place += 1) {
    shaft.torque[place] = ((shaft.torque[place] ?? NaN) * track.radius * track.count) / motor.count
  }
}

/** Pull of the last reduction's mesh; 0 without one. */
function lastMeshPull(e: Evaluation, machine: Machine, place: number): number {
  const last = machine.stages.length - 1
  const stage = machine.stages[last]
  return stage === undefined ? 0 : stage.pullPerTorque * (e.stageDuties[last]?.into[place] ?? NaN)
}

function setLoopPull(
  shaft: ShaftDuty,
  e: Evaluation,
  machine: Machine,
  place: number,
  { pull, pressing }: TrackLoad,
): void {
  const loop = pull + 2 * pressing
  const meshed = lastMeshPull(e, machine, place)
  shaft.torque[place] = pull
  shaft.pull[place] = Math.sqrt(loop * loop + meshed * meshed)
}
