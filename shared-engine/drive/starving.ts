import { formatText } from '../units/display.ts'
import type { UnitSystem } from '../units/kinds.ts'
import { place } from './drive.ts'
import { resistanceOf, setFullThrottle } from './driving.ts'
import { setElectrics } from './electrics.ts'
import type { DriveModel, SettledRow } from './model.ts'
import type { Moment } from './moment.ts'
import { Workplace } from './phase.ts'

/** From when on a drive's pack gave less than was asked of it. */
export interface Starved {
  /** s from the start. */
  readonly seconds: number
  /** What went short: the accessories, or a speed that the pack held when the drive began. */
  readonly of: 'accessories' | 'speed'
  /** Of the pattern, from 0. */
  readonly row: number
  /** m/s asked and had at that moment; null where it is the accessories. */
  readonly wanted: number | null
  readonly had: number | null
  /** 0 to 1, and °C of the cells. */
  readonly charge: number
  readonly packC: number
}

/** A speed counts as missed below this share of it. *Source:* common practice, no source. */
const missed = 0.98
/** m/s² that count as no gain. *Source:* common practice, no source. */
const gaining = 0.01

/**
 * Watches a drive for a pack that starves: it cannot feed the accessories at all, or full throttle no longer keeps a speed
 * that it would at the charge and the cell temperature that the drive began with. Only the first moment counts.
 *
 * A slope that was too steep from the start, or a ground that lets the track spin, is no starving pack.
 */
export class StarvingWatch {
  readonly #model: DriveModel
  readonly #start: Float64Array
  readonly #other = new Workplace()
  #found: Starved | null = null

  /** @param start state of the drive's first moment */
  constructor(model: DriveModel, start: Float64Array) {
    this.#model = model
    this.#start = Float64Array.from(start)
  }

  get found(): Starved | null {
    return this.#found
  }

  look(seconds: number, state: Float64Array, moment: Moment, row: SettledRow): void {
    if (this.#found !== null) return
    const of = moment.starving ? 'accessories' : this.#fallsShort(state, moment, row) ? 'speed' : null
    if (of === null) return
    this.#found = {
      seconds,
      of,
      row: this.#model.rows.indexOf(row),
      wanted: of === 'speed' && 'speed' in row.ask ? row.ask.speed : null,
      had: of === 'speed' ? moment.speed : null,
      charge: moment.charge,
      packC: state[place.packTemperature] as number,
    }
  }

  /** Whether the speed asked for is missed and not gained on, and the pack of the start would keep it. */
  #fallsShort(state: Float64Array, { speed, acceleration }: Moment, row: SettledRow): boolean {
    const { ask, ground } = row
    if (!('speed' in ask) || !(speed < missed * ask.speed) || acceleration >= gaining) return false
    const model = this.#model
    const { moment, propulsion } = this.#other
    const fresh = Float64Array.from(state)
    for (const name of ['chargeDrawn', 'packTemperature'] as const)
      fresh[place[name]] = this.#start[place[name]] as number
    setElectrics(moment, propulsion, model, fresh, model.machine.controller.throttleCap)
    moment.speed = missed * ask.speed
    moment.resistance = resistanceOf(model, row, moment.speed)
    const held = (ground.footing.gripThrust - moment.resistance) / ground.mass
    setFullThrottle(moment, model, row, propulsion)
    return Math.min(moment.acceleration, held) >= 0
  }
}

/** "From 312 s on the pack cannot give the power asked: …". */
export function starvedWords(starved: Starved, system: UnitSystem): string {
  const { seconds, of, row, wanted, had, charge, packC } = starved
  const from = seconds === 0 ? 'At once' : `From ${formatText(seconds, 'time', system)} on`
  const state = `${formatText(charge, 'fraction', system)} charge and cells of ${formatText(packC, 'temperature', system)}`
  const short =
    of === 'accessories'
      ? 'it no longer feeds the accessories, which go dim or start anew, and leaves the motors half of its volts'
      : `full throttle gives ${formatText(had, 'speed', system)} of the ${formatText(wanted, 'speed', system)} of row ${row + 1}, which the pack held when the drive began`
  return `${from} the pack cannot give the power asked: ${short} (${state}). The figures after it are of a machine that limps.`
}

/** The notes of a drive without that sentence, for a place that says it by itself. */
export function notesBeside({
  starved,
  notes,
}: {
  readonly starved: Starved | null
  readonly notes: readonly string[]
}): readonly string[] {
  const said = starved === null ? null : starvedWords(starved, 'metric')
  return notes.filter((note) => note !== said)
}
