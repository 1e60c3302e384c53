import { chemistryOf } from '../../reference/chemistry.ts'
import { piecewiseLinear } from '../../numeric/table.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import type { InPieces } from '../pieces.ts'
import { medianOf } from '../order-statistics.ts'
import { integralOf, type Integral } from './integral.ts'
import { secondsPerMinute } from '../../units/factors.ts'

/** Charge and energy that a log tells of, A·s and J. */
export interface LoggedCharge {
  readonly chargeCCounted: number | null
  readonly energyJCounted: number | null
  readonly chargeCIntegrated: number | null
  readonly chargeSeconds: number
  readonly energyJIntegrated: number | null
}

/** Charge and energy: what counters counted, and what the pack's amps and volts add up to. */
export function* chargeOf(data: LogData): InPieces<LoggedCharge> {
  const charge = ampsIntegral(data, false)
  yield
  const energy = ampsIntegral(data, true)
  return {
    chargeCCounted: countedOf(data, 'charge'),
    energyJCounted: countedOf(data, 'energy'),
    chargeCIntegrated: charge === null ? null : charge.value,
    chargeSeconds: charge?.seconds ?? 0,
    energyJIntegrated: energy === null ? null : energy.value,
  }
}

function countedOf({ channels }: LogData, id: 'charge' | 'energy'): number | null {
  const channel = channels.get(id)
  const first = channel?.samples[0]
  const last = channel?.samples.at(-1)
  if (channel === undefined || first === undefined || last === undefined) return null
  return (channel.values[last] ?? NaN) - (channel.values[first] ?? NaN)
}

function ampsIntegral({ channels }: LogData, withVolts: boolean): Integral | null {
  const amps = channels.get('amps')
  const volts = channels.get('volts')
  if (amps === undefined || (withVolts && volts === undefined)) return null
  const integral = integralOf(amps, (place) => {
    const row = amps.samples[place] ?? 0
    return (amps.values[row] ?? NaN) * (withVolts ? (volts?.at(row) ?? NaN) : 1)
  })
  return integral.seconds > 0 ? integral : null
}

const restSamples = 3
const stillShare = 0.005

/** Volts of a cell at rest at the log's start and end; null where the motor turned. */
export function restCellVoltsOf(data: LogData, model: LogModel): readonly [number | null, number | null] {
  const pack = data.channels.get('volts')
  const volts = pack ?? data.channels.get('cellVolts')
  if (volts === undefined) return [null, null]
  const cells = pack === undefined ? 1 : model.machine.pack.series
  const rpm = data.channels.get('rpm')
  const restOf = (rows: Int32Array): number | null => {
    if (rows.length < restSamples) return null
    const still = [...rows].every((row) => Math.abs(rpm?.at(row) ?? NaN) <= stillShare * model.freeRpm)
    return still ? medianOf(Array.from(rows, (row) => volts.values[row] ?? NaN)) / cells : null
  }
  return [restOf(volts.samples.slice(0, restSamples)), restOf(volts.samples.slice(-restSamples))]
}

/** Where the charge used is known from. */
export type ChargeSource = 'counter' | 'amps' | 'rest-volts'

/**
 * Minutes that the charge left would last at the mean current of the log, down to the reserve.
 *
 * [Ah (soc − reserve) − used] over used · seconds/60; charge at the start by the resting volts, else the build's.
 *
 * *Source:* the chemistry's resting curve, common practice; assumption: what follows draws like what was.
 */
export function minutesLeftOf(
  model: LogModel,
  charge: LoggedCharge,
  [first, last]: readonly [number | null, number | null],
  seconds: number,
): { readonly minutesLeft: number | null; readonly minutesFrom: ChargeSource | null } {
  const { pack } = model.machine
  const chargeAt = stateOfChargeBy(model)
  const full = first === null ? pack.stateOfCharge : chargeAt(first)
  const byRest = first === null || last === null ? null : (full - chargeAt(last)) * pack.capacity
  const sources: readonly (readonly [ChargeSource, number | null])[] = [
    ['counter', charge.chargeCCounted],
    ['amps', charge.chargeCIntegrated],
    ['rest-volts', byRest],
  ]
  const found = sources.find(([, used]) => used !== null && used > 0)
  if (found === undefined) return { minutesLeft: null, minutesFrom: null }
  const [minutesFrom, amount] = found
  const used = amount ?? NaN
  const left = Math.max(0, pack.capacity * (full - pack.reserve) - used)
  return { minutesLeft: (left / used) * (seconds / secondsPerMinute), minutesFrom }
}

/**
 * State of charge of a cell's resting voltage, V to 0…1: the curve read the other way, held past its ends.
 *
 * *Source:* common practice, no source, as the curves of `chemistry.json`.
 */
export function stateOfChargeBy(model: LogModel): (cellVolts: number) => number {
  const { volts, charge } = chemistryOf(model.build.pack.chemistry)
  return piecewiseLinear(volts, charge, 'hold')
}
