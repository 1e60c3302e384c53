import type { Checked } from '../../check.ts'
import { noLoadAmpsAt } from '../../motor/drive-line.ts'
import { internalDragAt } from '../../track/drag.ts'
import { angularSpeedOf } from '../../units/rpm.ts'

/** What a log says of one moment; NaN of what it does not. */
interface LoggedMoment {
  readonly rpm: number
  readonly volts: number
  /** A of the pack and of one motor. */
  readonly packAmps: number
  readonly motorAmps: number
  readonly duty: number
  /** m/s over ground. */
  readonly groundSpeed: number
  /** Whether the load is there. */
  readonly carries: boolean
}

/** The machine at one moment of a log, as the drawing tells it; SI, NaN of what cannot be known. */
interface MomentState extends Omit<LoggedMoment, 'rpm' | 'volts' | 'carries'> {
  readonly motorSpeed: number
  readonly motorTorque: number
  readonly packVolts: number
  readonly beltSpeed: number
  readonly motorThrust: number
  readonly thrust: number
  readonly slip: number
}

/**
 * The machine at one moment of a log.
 *
 * T = K_t (I − I_0(ω));  F_m = M T G η/r, with G/(η r) where T < 0;  thrust F_m − D(v_b).
 *
 * *Source:* as `loads.ts`; what rotors and loops take up while they speed up is left out: assumption.
 */
export function momentState({ machine, evaluation }: Checked, moment: LoggedMoment): MomentState {
  const { track, train } = machine
  const { drive } = evaluation
  const motorSpeed = angularSpeedOf(moment.rpm)
  const beltSpeed = (motorSpeed * track.radius) / train.ratio
  const motorTorque = drive.torqueConstant * (moment.motorAmps - noLoadAmpsAt(drive, motorSpeed))
  const share = motorTorque < 0 ? 1 / train.efficiency : train.efficiency
  const motorThrust = moment.carries ? (drive.count * motorTorque * train.ratio * share) / track.radius : NaN
  const drag = beltSpeed > 0 ? internalDragAt(track, beltSpeed) : 0
  return {
    duty: moment.duty,
    motorSpeed,
    motorAmps: moment.motorAmps,
    motorTorque,
    packAmps: moment.packAmps,
    packVolts: moment.volts,
    beltSpeed: moment.carries ? beltSpeed : NaN,
    groundSpeed: moment.groundSpeed,
    motorThrust,
    thrust: motorThrust - drag,
    slip: 1 - moment.groundSpeed / beltSpeed,
  }
}
