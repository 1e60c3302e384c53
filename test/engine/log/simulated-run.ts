import type { Build } from '../../../shared-engine/entries/schema.ts'
import { logModelOf, type LogModel } from '../../../shared-engine/log/model.ts'
import { ampsAt, DriveLine, noLoadAmpsAt, setDriveLine } from '../../../shared-engine/motor/drive-line.ts'
import { randomStream, type Random } from '../../../shared-engine/numeric/random.ts'
import { internalDragAt } from '../../../shared-engine/track/drag.ts'
import { rpmOf } from '../../../shared-engine/units/rpm.ts'

// A drive through time by small steps: an integrator of its own, so that what the reader of logs says is held against
// something that knows what happened. Invented runs, on coefficient ground.

/** What the ground and the driver do over a stretch. */
export interface Stretch {
  readonly seconds: number
  /** Duty asked for, 0 to 1. */
  readonly throttle: number
  /** Share of the build's grip: 1 firm, 0.3 ice, 0 in the air. */
  readonly grip?: number
  /** rise over run. */
  readonly grade?: number
}

/** One sample of a run, as it was. */
export interface Sample {
  readonly t: number
  readonly rpm: number
  readonly volts: number
  readonly packAmps: number
  readonly throttle: number
  readonly speed: number
  /** Motor's case (its one node where the build has no two), °C; NaN without the entries of its heat. */
  readonly motorC: number
  readonly lost: boolean
}

/** A run, and when its load went (Infinity: never). */
export interface Run {
  readonly samples: readonly Sample[]
  readonly lostAt: number
}

const step = 0.002

/**
 * Drives a build over stretches; from `lostAt` on nothing but the motors and what is geared to them turns.
 *
 * @param startC motor at the start, °C; as warm as the air where left out
 */
export function simulatedRun(
  build: Build,
  stretches: readonly Stretch[],
  rate: number,
  lostAt = Infinity,
  startC = build.ground.airTemperatureC,
): Run {
  const model = logModelOf(build)
  const wheel = new Wheel(model, startC)
  const samples: Sample[] = []
  let t = 0
  let next = 0
  for (const stretch of stretches) {
    const end = t + stretch.seconds
    for (; t < end; t += step) {
      wheel.advance(stretch, t >= lostAt)
      if (t + 1e-9 < next) continue
      samples.push({ t, ...wheel.shown(stretch), lost: t >= lostAt })
      next += 1 / rate
    }
  }
  return { samples, lostAt }
}

/** Belt, machine and motors at one moment. */
class Wheel {
  /** m/s of belt and ground. */
  #belt = 0
  #ground = 0
  #packAmps = 0
  readonly #line = new DriveLine()
  readonly #model: LogModel
  readonly #heat: MotorHeat

  constructor(model: LogModel, startC: number) {
    this.#model = model
    this.#heat = new MotorHeat(model, startC)
  }

  advance({ throttle, grip = 1, grade = 0 }: Stretch, lost: boolean): void {
    const { machine, checked } = this.#model
    const { evaluation } = checked
    const { motorPerBelt, thrustPerTorque } = evaluation.line
    const omega = this.#belt * motorPerBelt
    let amps = 0
    if (throttle > 0) {
      setDriveLine(this.#line, machine, evaluation.driveVolts, machine.service.windingTemperature, throttle)
      amps = Math.max(0, ampsAt(this.#line, omega))
    }
    this.#packAmps = machine.motor.count * throttle * amps
    const spentAmps = omega > 0 ? noLoadAmpsAt(this.#model.drive, omega) : 0
    this.#heat.advance(amps, this.#model.drive.torqueConstant * spentAmps * omega)
    const torque = this.#model.drive.torqueConstant * (amps - spentAmps)
    // mass that the belt alone stands for: loops and what turns with them
    const turning = evaluation.equivalentMass - machine.vehicle.mass
    const loops = machine.track.count * machine.track.loopMass
    if (lost) {
      this.#belt = Math.max(
        0,
        this.#belt + (step * torque * thrustPerTorque) / Math.max(1e-3, turning - loops),
      )
      return
    }
    const drag = this.#belt > 0 ? internalDragAt(machine.track, this.#belt) : 0
    const push = torque * thrustPerTorque - drag
    const { level, airDragFactor } = evaluation
    const weight = machine.vehicle.mass * 9.80665
    const rolling = grip === 0 ? 0 : level.standingResistance
    const held = (this.#ground > 0 ? rolling : 0) + weight * grade + airDragFactor * this.#ground ** 2
    const most = grip * level.gripThrust
    const sliding = this.#belt - this.#ground > 0.02 || push > most
    if (!sliding) {
      this.#ground = Math.max(0, this.#ground + (step * (push - held)) / evaluation.equivalentMass)
      this.#belt = this.#ground
      return
    }
    this.#ground = Math.max(0, this.#ground + (step * (most - held)) / machine.vehicle.mass)
    this.#belt = Math.max(this.#ground, this.#belt + (step * (push - most)) / turning)
  }

  shown({ throttle }: Stretch): Omit<Sample, 't' | 'lost'> {
    const { machine, checked, accessoryAmps } = this.#model
    const amps = this.#packAmps + accessoryAmps
    return {
      rpm: rpmOf(this.#belt * checked.evaluation.line.motorPerBelt),
      volts: machine.pack.openVolts - amps * machine.pack.resistance,
      packAmps: amps,
      throttle,
      speed: this.#ground,
      motorC: this.#heat.shown,
    }
  }
}

/**
 * Winding and case of one motor by small steps of their heat balances, apart from the engine's closed form:
 * C_w dT_w = [I² R_20 (1 + α (T_w − 20)) − (T_w − T_c)/R_wc] dt,  C_c dT_c = [P_fe + (T_w − T_c)/R_wc − (T_c − T_s)/R] dt.
 * One node: both losses into one capacity.
 */
class MotorHeat {
  #winding: number
  #case: number
  readonly #model: LogModel

  constructor(model: LogModel, startC: number) {
    this.#model = model
    this.#winding = this.#case = startC
  }

  get shown(): number {
    return this.#case
  }

  advance(amps: number, iron: number): void {
    const { machine, checked } = this.#model
    const { nodes } = checked.evaluation.heat
    const copper = amps ** 2 * machine.motor.resistance * (1 + 0.00393 * (this.#winding - 20))
    const away = (this.#case - machine.ground.airTemperature) * nodes.toSink
    if (!nodes.two) {
      this.#winding = this.#case += (step * (copper + iron - away)) / nodes.windingCapacity
      return
    }
    const across = (this.#winding - this.#case) * nodes.windingToCase
    this.#winding += (step * (copper - across)) / nodes.windingCapacity
    this.#case += (step * (iron + across - away)) / nodes.caseCapacity
  }
}

/** Which sensors a recorder has beside time, rpm and volts. */
export interface Sensors {
  readonly amps: boolean
  readonly throttle: boolean
}

const gauss = (random: Random) => random() + random() + random() + random() - 2

/** A run as a recorder writes it: noise, steps of the readings. */
export function loggedCsv({ samples }: Run, seed: number, sensors: Sensors): string {
  const random = randomStream(seed, 1)
  const steps = (value: number, size: number, digits: number) =>
    (Math.round(value / size) * size).toFixed(digits)
  const heading = ['Time [s]', 'Motor rpm', 'Pack volts [V]']
  if (sensors.amps) heading.push('Pack current [A]')
  if (sensors.throttle) heading.push('Throttle [%]')
  const lines = [heading.join(',')]
  for (const { t, rpm, volts, packAmps, throttle } of samples) {
    const cells = [
      t.toFixed(3),
      steps(Math.max(0, rpm * (1 + 0.003 * gauss(random))), 10, 0),
      steps(volts + 0.02 * gauss(random), 0.1, 1),
    ]
    if (sensors.amps) cells.push(steps(packAmps + 0.1 * gauss(random), 0.1, 1))
    if (sensors.throttle) cells.push(String(Math.round(100 * throttle)))
    lines.push(cells.join(','))
  }
  return `${lines.join('\n')}\n`
}

/** Stretches of an invented drive: firm ground, ice, jumps, slopes and stops, as the seed has it. */
export function inventedStretches(seed: number): readonly Stretch[] {
  const random = randomStream(seed, 2)
  const between = (least: number, most: number) => least + (most - least) * random()
  const stretches: Stretch[] = [{ seconds: 4, throttle: 0 }]
  for (let part = 0; part < 6; part += 1) {
    const throttle = between(0.45, 0.95)
    const kind = random()
    stretches.push({ seconds: between(5, 9), throttle })
    if (kind < 0.2) stretches.push({ seconds: between(0.5, 3), throttle, grip: between(0.15, 0.4) })
    else if (kind < 0.4) stretches.push({ seconds: between(0.2, 0.6), throttle, grip: 0 })
    else if (kind < 0.6) stretches.push({ seconds: between(3, 6), throttle, grade: between(-0.06, 0.06) })
    else if (kind < 0.8) stretches.push({ seconds: between(2, 5), throttle: 0 })
  }
  return stretches
}
