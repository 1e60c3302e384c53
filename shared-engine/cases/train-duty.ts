import type { Machine } from '../machine/parts.ts'
import { pressingTension } from '../track/tensioner.ts'
import { centrifugalTension } from '../track/tension.ts'
import type { Evaluation } from './evaluation.ts'
import { dutyCase, type ShaftDuty } from './stage-duty.ts'

/**
 * Fills what every reduction, its shaft, the motor's and the sprocket's shaft bear.
 *
 * Into stage k: A_k r n G_{k−1}/(M G), its driven shaft A_{k+1} r n G_k/(M G); at top speed the motor's torque times the
 * ratios and efficiencies of the stages before. The service factor multiplies all but a stop.
 *
 * *Source:* `docs/model.md` §4.
 */
export function setTrainDuties(e: Evaluation, machine: Machine): void {
  const { track, motor, train, stages } = machine
  const shaftTorque = (track.radius * track.count) / (motor.count * train.ratio)
  let ratio = 1
  let efficiency = 1
  for (let at = 0; at < stages.length; at += 1) {
    const [stage, duty] = [stages[at], e.stageDuties[at]]
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
  setTorques(e.motorShaft.torque, e, machine, 0, shaftTorque, 1)
  setShaftDuties(e, machine)
  setSprocketShaft(e, machine)
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
  const { pulls } = e
  const factor = machine.service.factor
  torques[dutyCase.launch] = factor * perPull * (pulls.launch[place] ?? NaN)
  torques[dutyCase.grip] = factor * perPull * (pulls.grip[place] ?? NaN)
  torques[dutyCase.top] = factor * perTorque * e.top.motorTorque
  torques[dutyCase.stop] = perPull * (pulls.stop[place] ?? NaN)
  torques[dutyCase.stopFree] = perPull * (pulls.stopFree[place] ?? NaN)
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
    const [stage, duty, shaft] = [stages[at], e.stageDuties[at], e.stageShafts[at]]
    if (stage === undefined || duty === undefined || shaft === undefined) break
    shaft.torque.set(duty.out)
    const [next, nextDuty] = [stages[at + 1], e.stageDuties[at + 1]]
    for (let place = 0; place < shaft.pull.length; place += 1) {
      const own = stage.pullPerTorque * (duty.into[place] ?? NaN)
      const other = next === undefined ? 0 : next.pullPerTorque * (nextDuty?.into[place] ?? NaN)
      shaft.pull[place] = Math.sqrt(own * own + other * other)
    }
    shaft.topPull = (shaft.pull[dutyCase.top] ?? NaN) / service.factor
    shaft.topSpeed = duty.topDrivenSpeed
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
  setLoopPull(shaft, e, machine, dutyCase.launch, e.launchLoad.pull, e.launchLoad.pressing)
  setLoopPull(shaft, e, machine, dutyCase.grip, e.gripLoad.pull, e.gripLoad.pressing)
  setLoopPull(shaft, e, machine, dutyCase.top, e.topLoad.pull, e.topLoad.pressing)
  setLoopPull(shaft, e, machine, dutyCase.stop, e.stopLoad.pull, e.stopLoad.pressing)
  setLoopPull(shaft, e, machine, dutyCase.stopFree, e.stopFreeLoad.pull, e.stopFreeLoad.pressing)
  const { force, beltSpeed } = e.topLoad
  const pressing = pressingTension(track.hold, force, centrifugalTension(track, beltSpeed))
  const meshed = lastMeshPull(e, machine, dutyCase.top) / service.factor
  const loop = force + 2 * pressing
  shaft.topPull = Math.sqrt(loop * loop + meshed * meshed)
  shaft.topSpeed = beltSpeed / track.radius
  for (let place = 0; place < shaft.torque.length; place += 1) {
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
  pull: number,
  pressing: number,
): void {
  const loop = pull + 2 * pressing
  const meshed = lastMeshPull(e, machine, place)
  shaft.torque[place] = pull
  shaft.pull[place] = Math.sqrt(loop * loop + meshed * meshed)
}
