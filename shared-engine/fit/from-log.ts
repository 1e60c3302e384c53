import type { ReadLog } from '../log/read.ts'
import type { ChannelId } from '../reference/columns.ts'
import { cutInAir, type InAir } from './in-air.ts'
import type { ChannelName, Column, FitLog } from './log.ts'

/** Which channel of a log a fit reads under which name. */
const sources: Readonly<Record<ChannelName, ChannelId>> = {
  motorRpm: 'rpm',
  packVolts: 'volts',
  packAmps: 'amps',
  motorAmps: 'motorAmps',
  duty: 'duty',
  groundMps: 'speed',
  motorCelsius: 'motorC',
  controllerCelsius: 'controllerC',
}

/**
 * The channels of a log that was read and repaired, as a fit takes them.
 *
 * @param inAir stretches that the person has marked as driven with the loops in the air
 */
export function fitLogOf({ data }: Pick<ReadLog, 'data'>, inAir: readonly InAir[] = []): FitLog {
  const { timeline, channels } = data
  const segments = timeline.segments.map(({ first, end }) => {
    const columnOf = (id: ChannelId): Column | undefined => {
      const values = channels.get(id)?.values.subarray(first, end)
      return values === undefined
        ? undefined
        : Array.from(values, (value) => (Number.isFinite(value) ? value : null))
    }
    const named = Object.entries(sources).flatMap(([name, id]) => {
      const column = columnOf(id)
      return column === undefined ? [] : [[name, column] as const]
    })
    return {
      offGround: false,
      seconds: Array.from(timeline.t.subarray(first, end)),
      channels: Object.fromEntries(named),
    }
  })
  return cutInAir({ segments, noise: {} }, inAir)
}
