import type { LogUnit } from '../../reference/columns.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import { rankOf } from '../order-statistics.ts'
import { speedUnits } from './units.ts'

const numbersLookedAt = 1_000

/**
 * The unit of a speed without one: that whose fast part is nearest, in ratio, to the belt's by the rpm; m/s without rpm.
 *
 * @param rpmTimes what brings the logged rpm to the motor's
 * *Source:* common practice, no source.
 */
function speedUnitOf(data: LogData, model: LogModel, rpmTimes: number): LogUnit | null {
  const first = (id: 'speed' | 'rpm') => {
    const channel = data.channels.get(id)
    return Array.from(channel?.samples.subarray(0, numbersLookedAt) ?? [], (row) =>
      Math.abs(channel?.values[row] ?? NaN),
    )
  }
  const [metres] = speedUnits.filter(({ key }) => key === 'm/s')
  const belt = (rankOf(first('rpm'), 0.9) * rpmTimes * model.freeBeltSpeed) / model.freeRpm
  const fast = rankOf(first('speed'), 0.9)
  if (!(belt > 0) || !(fast > 0)) return metres ?? null
  const distance = ({ times }: LogUnit) => Math.abs(Math.log((fast * times) / belt))
  return [...speedUnits].sort((one, other) => distance(one) - distance(other))[0] ?? null
}

/** Brings a speed without a unit into m/s; gives the unit that it was found to be in. */
export function settleSpeed(data: LogData, model: LogModel, rpmTimes: number): LogUnit | null {
  const channel = data.channels.get('speed')
  const unit = channel === undefined ? null : speedUnitOf(data, model, rpmTimes)
  if (channel === undefined || unit === null) return null
  for (const row of channel.samples) channel.values[row] = (channel.values[row] ?? NaN) * unit.times
  return unit
}
