import { setTrackLoad, TrackLoad } from '../../cases/track-loads.ts'
import type { Machine } from '../../machine/parts.ts'
import { noLoadAmpsAt } from '../../motor/drive-line.ts'
import { slackTension } from '../../track/tensioner.ts'
import { centrifugalTension } from '../../track/tension.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import type { LogModel } from '../model.ts'

/** What the track bore at one moment of a log; N, N·m. Filled again for each moment. */
export class LoggedLoad {
  /** T of one motor. */
  torque = NaN
  /** At the drive sprocket, of one loop; negative where the ground drives the motor. */
  forcePerLoop = NaN
  tension = NaN
  /** On the most loaded tooth. */
  tooth = NaN
}

const load = new TrackLoad()
const one = new LoggedLoad()

/**
 * Loads of a log on one machine: as measured, so without the shock factor of the service.
 *
 * The slack side counts with its whole pretension, whatever holds the loop. On a fixed tensioner a pull takes it away, so
 * that the tension told is at most the pretension too high: what a log cannot show is told on the safe side.
 */
export class Loads {
  readonly #plain: Machine
  readonly #model: LogModel

  constructor(model: LogModel) {
    this.#model = model
    const { track, service } = model.machine
    const hold = { ...track.hold, tensioner: 'sprung' as const }
    this.#plain = { ...model.machine, track: { ...track, hold }, service: { ...service, factor: 1 } }
  }

  /**
   * Fills torque and track loads of a motor's current.
   *
   * T = K_t (I − I_0(ω));  F = M T G η/(r · count), with G/(η r) where T < 0;  N = max(0, F) + N_0 + m′ v_b².
   *
   * @param amps I of one motor, A
   * @param rpm of the motor
   * *Source:* Drela, First-Order DC Electric Motor Model; power conserved but for the stages. The rotor's own inertia is
   * left out: assumption.
   */
  set(found: LoggedLoad, amps: number, rpm: number): void {
    const { drive, machine } = this.#model
    const { track, train } = machine
    const speed = angularSpeedOf(rpm)
    const torque = drive.torqueConstant * (amps - noLoadAmpsAt(drive, speed))
    const share = torque < 0 ? 1 / train.efficiency : train.efficiency
    found.torque = torque
    found.forcePerLoop = (drive.count * torque * train.ratio * share) / (track.radius * track.count)
    found.tension = this.tensionOf(found.forcePerLoop, rpm)
    found.tooth = this.toothOf(found.forcePerLoop)
  }

  /** Force of one loop at a motor's current, N. */
  forceOf(amps: number, rpm: number): number {
    this.set(one, amps, rpm)
    return one.forcePerLoop
  }

  /** Tension of one loop, N: pull, pretension and the loop's own mass. */
  tensionOf(forcePerLoop: number, rpm: number): number {
    const { track, train } = this.#plain
    const beltSpeed = (angularSpeedOf(rpm) * track.radius) / train.ratio
    const pull = Math.max(0, forcePerLoop)
    return pull + slackTension(track.hold, pull, centrifugalTension(track, beltSpeed))
  }

  /** Force on the most loaded tooth, N, shared as the engine shares it, with the pretension on the slack side. */
  toothOf(forcePerLoop: number): number {
    setTrackLoad(load, this.#plain, Math.max(0, forcePerLoop), 0)
    return load.toothForce
  }
}
