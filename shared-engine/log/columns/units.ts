import { logUnits, type ChannelId, type LogUnit } from '../../reference/columns.ts'

/** Units of numbers without one, by channel. *Source:* common practice, no source. */
const standard: Readonly<Partial<Record<ChannelId, string>>> = {
  rpm: 'rpm',
  erpm: 'rpm',
  wheelRpm: 'rpm',
  volts: 'v',
  cellVolts: 'v',
  amps: 'a',
  motorAmps: 'a',
  motorC: '°c',
  controllerC: '°c',
  coolantC: '°c',
  charge: 'mah',
  energy: 'wh',
  altitude: 'm',
  accel: 'g',
}

/** µs of a servo pulse with the throttle closed; open it is twice as wide. */
const closedPulse = 1000

/** A part written from 0 to 1, and as the width of a servo pulse in µs, 1,000 closed and 2,000 open. */
const fraction: LogUnit = { key: 'fraction', kind: 'part', times: 1, zero: 0 }
const pulse: LogUnit = { key: 'pulse', kind: 'part', times: 1 / closedPulse, zero: closedPulse }

/**
 * The unit of a channel's numbers where neither heading nor cells name one; null where another step decides.
 *
 * @param numbers the first of the column
 * *Source:* servo pulses of 1 to 2 ms: common practice, no source.
 */
export function defaultUnitOf(channel: ChannelId, numbers: () => readonly number[]): LogUnit | null {
  if (channel === 'throttle' || channel === 'duty') {
    const largest = Math.max(...numbers())
    if (largest <= 1.05) return fraction
    return largest >= 800 ? pulse : (logUnits.get('%') ?? null)
  }
  const key = standard[channel]
  return key === undefined ? null : (logUnits.get(key) ?? null)
}

/** Units that a speed without one may be in. */
export const speedUnits: readonly LogUnit[] = ['km/h', 'm/s', 'mph', 'kn'].flatMap(
  (key) => logUnits.get(key) ?? [],
)
