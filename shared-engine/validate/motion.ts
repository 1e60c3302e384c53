import { Footing, setFooting } from '../ground/footing.ts'
import { airDragFactorOf, resistanceAt } from '../ground/resistance.ts'
import type { Machine } from '../machine/parts.ts'
import { ampsAt, DriveLine, noLoadAmpsAt, setDriveLine } from '../motor/drive-line.ts'
import { setThrustLine, ThrustLine } from '../vehicle/thrust-line.ts'
import { equivalentMassOf } from '../vehicle/inertia.ts'
import { internalDragAt } from '../track/drag.ts'
import { slipOf } from '../fit/blocks/belt.ts'

/** What drives a machine at an instant. */
export interface Drive {
  /** A of one motor, where they are known; NaN: they follow from volts and duty. */
  readonly amps: number
  /** V at the pack's terminals, as logged. */
  readonly volts: number
  readonly duty: number
  /** °C of winding and magnets. */
  readonly winding: number
}

/** A machine in motion under what was logged: its belt's acceleration, and the current of its motors. */
export class Motion {
  readonly machine: Machine
  /** Whether motors that are driven faster than the duty turns them feed back. */
  readonly feedsBack: boolean
  readonly #line = new DriveLine()
  readonly #thrust = new ThrustLine()
  readonly #footing = new Footing()
  readonly #airDrag: number
  readonly #mass: number
  readonly #massInAir: number
  readonly grip: number

  constructor(machine: Machine, feedsBack: boolean) {
    const { ground, vehicle } = machine
    this.machine = machine
    this.feedsBack = feedsBack
    setFooting(this.#footing, machine, ground.sinSlope, ground.cosSlope)
    setDriveLine(this.#line, machine, 0, machine.service.windingTemperature, 0, 0)
    setThrustLine(this.#thrust, machine, this.#line)
    this.#airDrag = airDragFactorOf(machine)
    this.#mass = equivalentMassOf(machine)
    this.#massInAir = this.#mass - vehicle.mass
    this.grip = 1 - slipOf(machine)
  }

  /** rad/s of the motor for 1 m/s of belt. */
  get motorPerBelt(): number {
    return this.#thrust.motorPerBelt
  }

  /** N of the track for an ampere of one motor, at the service temperature. */
  get thrustPerAmp(): number {
    return this.#thrust.thrustPerTorque * this.#line.torqueConstant
  }

  /** kg that a pull of the track accelerates, slip included. */
  massOf(offGround: boolean): number {
    return offGround ? this.#massInAir : this.#mass * this.grip
  }

  #set({ volts, duty, winding }: Drive): void {
    // The volts are those at the terminals: the pack's resistance is in them already.
    setDriveLine(this.#line, this.machine, Number.isNaN(volts) ? 0 : volts, winding, duty, 0)
  }

  /** A of one motor at a belt speed. */
  ampsOf(drive: Drive, belt: number): number {
    if (!Number.isNaN(drive.amps)) return drive.amps
    this.#set(drive)
    const amps = ampsAt(this.#line, belt * this.motorPerBelt)
    return this.feedsBack ? amps : Math.max(0, amps)
  }

  /** N of the tracks, drag included, at a current; the stages' losses fall on the driven side. */
  forceOf(amps: number, winding: number, belt: number): number {
    this.#set({ amps, volts: NaN, duty: 0, winding })
    const noLoad =
      belt > 0 ? noLoadAmpsAt(this.#line, belt * this.motorPerBelt) : Math.min(amps, this.#line.noLoadBase)
    const force = this.#line.torqueConstant * (amps - noLoad) * this.#thrust.thrustPerTorque
    const driven = force < 0 ? force / this.machine.train.efficiency ** 2 : force
    return driven - (belt > 0 ? internalDragAt(this.machine.track, belt) : 0)
  }

  /** N that hold the machine back at a belt speed; none with the loops in the air. */
  resistanceOf(belt: number, offGround: boolean): number {
    return offGround ? 0 : resistanceAt(this.#footing, this.#airDrag, belt * this.grip)
  }

  /** N that the ground takes at most. */
  get mostThrust(): number {
    return this.#footing.gripThrust
  }

  /**
   * Acceleration of the belt.
   *
   * dv_b/dt = [min(F_m, F_max) − R]/[m_e (1 − i)]; a standing machine is held by R.
   *
   * *Source:* Newton's law; `docs/model.md` §5.
   */
  accelerationOf(drive: Drive, belt: number, offGround: boolean): number {
    const force = this.forceOf(this.ampsOf(drive, belt), drive.winding, belt)
    const pull = offGround ? force : Math.min(force, this.mostThrust)
    const gain = (pull - this.resistanceOf(belt, offGround)) / this.massOf(offGround)
    return belt > 0 ? gain : Math.max(0, gain)
  }
}
