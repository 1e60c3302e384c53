import type { Channel } from '../channel.ts'
import type { Currents } from '../derive/current.ts'
import { restCellVoltsOf, stateOfChargeBy, type ChargeSource } from '../facts/charge.ts'
import { quantumOf } from '../order-statistics.ts'
import type { ReadLog } from '../read.ts'

/** State of charge through a run. */
export interface ChargeCourse {
  /** Where it is known from; null: it is not. */
  readonly from: ChargeSource | null
  /** Whether the pack's charge at the start is the build's own entry, for want of volts at rest. */
  readonly startAssumed: boolean
  /** Standard uncertainty of all of it together, 0 to 1. */
  readonly uncertainty: number
  /** State of charge at a row, 0 to 1; NaN where it is not known. */
  at(row: number): number
}

/** Standard uncertainty of a charge that nobody measured. *Source:* assumption. */
const unmeasured = 0.05
/** Half of a step to a standard uncertainty, spread evenly. *Source:* ISO/IEC Guide 98-3, 4.3.7. */
const evenly = Math.sqrt(3)

/**
 * State of charge through a run: that of the first rest less what a counter counted, or the amps add up to; else by what
 * the volts are at rest.
 *
 * *Source:* the chemistry's resting curve, common practice, no source; amps by the trapezoid.
 */
export function chargeCourseOf(log: ReadLog, currents: Currents): ChargeCourse {
  const { data, model } = log
  const [first] = restCellVoltsOf(data, model)
  const { pack } = model.machine
  const stateOf = stateOfChargeBy(model)
  const begun = first === null ? pack.stateOfCharge : stateOf(first)
  const counter = data.channels.get('charge')
  const amps = data.channels.get('amps')
  const startAssumed = first === null
  const uncertainty = first === null ? unmeasured : readingOf(log, first)
  if (counter !== undefined && counter.samples.length > 1) {
    const zero = counter.values[counter.samples[0] ?? 0] ?? NaN
    const at = (row: number) => begun - (counter.at(row) - zero) / pack.capacity
    return { from: 'counter', startAssumed, uncertainty, at }
  }
  if (amps !== undefined && amps.samples.length > 1) {
    const used = usedUpTo(amps)
    const at = (row: number) => begun - (used[row] ?? NaN) / pack.capacity
    return { from: 'amps', startAssumed, uncertainty, at }
  }
  const { rest } = currents
  const { segmentOf, t } = data.timeline
  if (rest === null) return { from: null, startAssumed: false, uncertainty: 0, at: () => NaN }
  const at = (row: number) => stateOf(rest.at(segmentOf[row] ?? 0, t[row] ?? NaN) / pack.series)
  return { from: 'rest-volts', startAssumed: false, uncertainty, at }
}

/** What a step of the recorder's volts leaves open of the charge at rest. */
function readingOf({ data, model }: ReadLog, cellVolts: number): number {
  const pack = data.channels.get('volts')
  const volts = pack ?? data.channels.get('cellVolts')
  if (volts === undefined) return unmeasured
  const step = quantumOf(volts.first()) / (pack === undefined ? 1 : model.machine.pack.series)
  if (!(step > 0)) return unmeasured
  const stateOf = stateOfChargeBy(model)
  return (stateOf(cellVolts + step / 2) - stateOf(cellVolts - step / 2)) / 2 / evenly
}

/** A·s drawn up to each row, by the trapezoid between samples near each other. */
function usedUpTo({ samples, values, timeline, reach }: Channel): Float64Array {
  const { t, segmentOf, count } = timeline
  const used = new Float64Array(count)
  let sum = 0
  let row = 0
  for (let place = 0; place < samples.length; place += 1) {
    const [here, before] = [samples[place] ?? 0, samples[place - 1] ?? -1]
    used.fill(sum, row, here)
    row = here
    const step = before < 0 ? NaN : (t[here] ?? NaN) - (t[before] ?? NaN)
    if (segmentOf[here] === segmentOf[before] && step <= reach)
      sum += (step * ((values[here] ?? 0) + (values[before] ?? 0))) / 2
  }
  used.fill(sum, row)
  return used
}
