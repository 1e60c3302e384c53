import { atOnce, samplesBetween, type InPieces } from '../pieces.ts'
import { motorAmpsFromPack } from '../../motor/amps-from-pack.ts'
import type { DriveLine } from '../../motor/drive-line.ts'
import { angularSpeedOf } from '../../units/rpm.ts'
import type { Channel } from '../channel.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import { RestVolts, sagStepOf } from './sag.ts'

/** Where a log's motor current comes from, best first. */
export type AmpsSource = 'motorAmps' | 'amps+duty' | 'amps' | 'sag'

/** Duty below which the pack's current says nothing of the motor's. *Source:* common practice, no source. */
const leastDuty = 0.05

/**
 * Pack current of a motor current: I_b = M I (I R_s + ω K_t)/V.
 *
 * @returns A of the drive
 * *Source:* the same power balance.
 */
export function packAmpsOfMotor(line: DriveLine, amps: number, speed: number, volts: number): number {
  return (line.count * amps * (amps * line.seriesResistance + speed * line.torqueConstant)) / volts
}

/** Currents at the rpm samples of a log. */
export class Currents {
  readonly #rpm: Channel | undefined
  readonly #amps: Channel | undefined
  readonly #motorAmps: Channel | undefined
  readonly #duty: Channel | undefined

  readonly source: AmpsSource | null
  /** I, A of one motor, by place among the rpm samples; NaN where it is not known. */
  readonly motor: Float64Array
  /** I_b, A of the drive at the pack; NaN where the log has motor amps alone. */
  readonly pack: Float64Array
  /** V of the pack there. */
  readonly volts: Float64Array
  #rest: RestVolts | null = null
  /** A that one step of the volts stands for, where sag is the source; else NaN. */
  readonly sagStep: number

  readonly data: LogData
  readonly model: LogModel

  constructor(data: LogData, model: LogModel) {
    this.data = data
    this.model = model
    const { channels } = data
    this.#rpm = channels.get('rpm')
    this.#amps = channels.get('amps')
    this.#motorAmps = channels.get('motorAmps')
    this.#duty = channels.get('duty')
    const samples = this.#rpm?.samples ?? new Int32Array()
    const volts = channels.get('volts')
    this.source = sourceOf(data)
    this.motor = new Float64Array(samples.length)
    this.pack = new Float64Array(samples.length)
    this.volts = volts?.along(samples) ?? new Float64Array(samples.length).fill(NaN)
    this.sagStep =
      this.source === 'sag' && volts !== undefined ? sagStepOf(volts, model.machine.pack.resistance) : NaN
  }

  /** Works them out; they stand nowhere before. */
  *work(): InPieces<void> {
    const samples = this.#rpm?.samples ?? new Int32Array()
    for (let place = 0; place < samples.length; place += 1) {
      this.#set(place, samples[place] ?? 0)
      if (place % samplesBetween === samplesBetween - 1) yield
    }
  }

  /** What the pack would show at rest; null without volts. */
  get rest(): RestVolts | null {
    const volts = this.data.channels.get('volts')
    if (volts !== undefined) this.#rest ??= new RestVolts(volts)
    return this.#rest
  }

  /**
   * I of one motor at a sample, A, were the drive's current another by so much at the pack: for the range that one step of
   * the volts leaves open.
   *
   * @param aside A at the pack; 0: as it is
   */
  motorAt(place: number, aside: number): number {
    if (aside === 0) return this.motor[place] ?? NaN
    const row = this.#rpm?.samples[place] ?? -1
    const { drive: line } = this.model
    const speed = angularSpeedOf(this.#rpm?.values[row] ?? NaN)
    const drive = Math.max(0, (this.pack[place] ?? NaN) + aside)
    const power = ((this.volts[place] ?? NaN) * drive) / line.count
    return motorAmpsFromPack(power, speed * line.torqueConstant, line.seriesResistance)
  }

  #set(place: number, row: number): void {
    this.motor[place] = this.pack[place] = NaN
    if (this.source === null) return
    const drive = this.#driveAmps(place, row)
    this.pack[place] = drive
    if (this.source === 'motorAmps') {
      this.motor[place] = this.#motorAmps?.at(row) ?? NaN
      return
    }
    const duty = this.source === 'amps+duty' ? (this.#duty?.at(row) ?? NaN) : NaN
    const { drive: line } = this.model
    if (duty >= leastDuty) this.motor[place] = drive / (line.count * duty)
    else {
      const speed = angularSpeedOf(this.#rpm?.values[row] ?? NaN)
      const power = ((this.volts[place] ?? NaN) * drive) / line.count
      this.motor[place] = motorAmpsFromPack(power, speed * line.torqueConstant, line.seriesResistance)
    }
  }

  /** I_b at a sample: logged, or from how far the volts are below rest. */
  #driveAmps(place: number, row: number): number {
    const { timeline } = this.data
    const { pack } = this.model.machine
    if (this.#amps !== undefined) return this.#amps.at(row) - this.model.accessoryAmps
    if (this.source !== 'sag') return NaN
    const rest = this.rest?.at(timeline.segmentOf[row] ?? 0, timeline.t[row] ?? NaN) ?? NaN
    return Math.max(0, (rest - (this.volts[place] ?? NaN)) / pack.resistance)
  }
}

const known = new WeakMap<LogData, Currents>()

/** The currents of a log, worked out once: several parts of what follows need them. */
export function currentsOf(data: LogData, model: LogModel): Currents {
  return atOnce(currentsIn(data, model))
}

/** The same in pieces. */
export function* currentsIn(data: LogData, model: LogModel): InPieces<Currents> {
  const found = known.get(data)
  if (found !== undefined) return found
  const currents = new Currents(data, model)
  yield* currents.work()
  known.set(data, currents)
  return currents
}

function sourceOf({ channels }: LogData): AmpsSource | null {
  if (!channels.has('rpm')) return null
  if (channels.has('motorAmps')) return 'motorAmps'
  if (channels.has('amps')) return channels.has('duty') ? 'amps+duty' : 'amps'
  return channels.has('volts') ? 'sag' : null
}
