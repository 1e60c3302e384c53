import { resistanceAt } from '../../ground/resistance.ts'
import { noLoadAmpsAt } from '../../motor/drive-line.ts'
import { internalDragAt } from '../../track/drag.ts'
import { angularSpeedOf, rpmOf } from '../../units/rpm.ts'
import { motorThrustAt } from '../../vehicle/thrust-line.ts'
import type { LogModel } from '../model.ts'
import { packAmpsOfMotor } from './current.ts'

/** m/s² that slopes, gusts and readings may add to what the motor can do. *Source:* common practice, no source. */
const spareAcceleration = 0.5

/** What the machine can do at an rpm, as a log shows it. */
export class Rates {
  readonly #model: LogModel
  /** rpm for 1 m/s of the belt. */
  readonly #rpmPerSpeed: number
  /** A of one motor for 1 N at the track. */
  readonly #ampsPerForce: number

  constructor(model: LogModel) {
    this.#model = model
    const { line } = model.checked.evaluation
    this.#rpmPerSpeed = rpmOf(line.motorPerBelt)
    this.#ampsPerForce = 1 / (line.thrustPerTorque * model.drive.torqueConstant)
  }

  beltSpeed(rpm: number): number {
    return rpm / this.#rpmPerSpeed
  }

  /**
   * The fastest that rpm can rise while the track grips and carries the machine.
   *
   * [max(0, min(F_m, F_max) − R)/m_e + 0.5 m/s²] at full throttle on the level, R at the belt's speed.
   *
   * @returns rpm/s
   * *Source:* Newton's law with the equivalent mass; the spare half metre: common practice, no source.
   */
  loaded(rpm: number): number {
    const { level, line, airDragFactor, equivalentMass } = this.#model.checked.evaluation
    const speed = this.beltSpeed(rpm)
    const push = Math.min(motorThrustAt(line, speed), level.gripThrust)
    const surplus = Math.max(0, push - resistanceAt(level, airDragFactor, speed))
    return (surplus / equivalentMass + spareAcceleration) * this.#rpmPerSpeed
  }

  /** How fast rpm falls as the machine rolls out on the level, rpm/s: (R(v_b) + D)/m_e. */
  rollingOut(rpm: number): number {
    const { level, airDragFactor, equivalentMass } = this.#model.checked.evaluation
    const speed = this.beltSpeed(rpm)
    const held = resistanceAt(level, airDragFactor, speed) + internalDragAt(this.#model.machine.track, speed)
    return (held / equivalentMass) * this.#rpmPerSpeed
  }

  /**
   * Motor currents that tell a loaded track from a free one, on the level, A of one motor: turning free; halfway to half of
   * what it takes to keep moving; cruising at this speed; spinning at half the grip.
   */
  levels(rpm: number): readonly [free: number, threshold: number, cruise: number, spin: number] {
    const { level, airDragFactor } = this.#model.checked.evaluation
    const speed = this.beltSpeed(rpm)
    const free = noLoadAmpsAt(this.#model.drive, angularSpeedOf(rpm))
    const drag = internalDragAt(this.#model.machine.track, speed)
    const u = this.#ampsPerForce
    return [
      free,
      free + 0.5 * (drag + 0.5 * level.standingResistance) * u,
      free + (drag + resistanceAt(level, airDragFactor, speed)) * u,
      free + (drag + 0.5 * level.gripThrust) * u,
    ]
  }

  /** The same as pack current of the drive at the pack's volts. */
  packLevels(rpm: number, volts: number): readonly [number, number, number, number] {
    const speed = angularSpeedOf(rpm)
    const [free, threshold, cruise, spin] = this.levels(rpm)
    const packed = (amps: number) => packAmpsOfMotor(this.#model.drive, amps, speed, volts)
    return [packed(free), packed(threshold), packed(cruise), packed(spin)]
  }
}
