import type { ChannelId } from '../../reference/columns.ts'
import type { Channel } from '../channel.ts'
import { quantumOf } from '../order-statistics.ts'
import { lineOf, type RepairTask } from './repair.ts'

const fewestSamples = 8
const leastSeconds = 5
/** Readings near zero stand still by themselves. */
const leastQuanta = 10

/** What has to have moved meanwhile for a channel to count as stuck, and how far. */
interface Witness {
  readonly channel: ChannelId
  readonly move: number
}

/**
 * Samples that stay at one value while what drives them moves: all but the first are left out.
 *
 * Rpm against volts or throttle, currents and speed against rpm, volts against amps. *Source:* common practice, no source.
 */
export function dropStuck(task: RepairTask): void {
  const { machine, freeRpm } = task.model
  const full = machine.pack.fullVolts
  const byRpm: readonly Witness[] = [{ channel: 'rpm', move: 0.2 * freeRpm }]
  const witnesses: readonly (readonly [ChannelId, readonly Witness[]])[] = [
    [
      'rpm',
      [
        { channel: 'volts', move: 0.06 * full },
        { channel: 'throttle', move: 0.3 },
      ],
    ],
    ['amps', byRpm],
    ['motorAmps', byRpm],
    ['speed', byRpm],
    ['volts', [{ channel: 'amps', move: (0.04 * full) / machine.pack.resistance }]],
  ]
  for (const [id, list] of witnesses) {
    const channel = task.data.channels.get(id)
    const others = list.flatMap(({ channel: name, move }) => {
      const other = task.data.channels.get(name)
      return other === undefined ? [] : [{ other, move }]
    })
    if (channel !== undefined && others.length > 0) dropStuckOf(task, channel, others)
  }
}

function dropStuckOf(
  task: RepairTask,
  channel: Channel,
  witnesses: readonly { readonly other: Channel; readonly move: number }[],
): void {
  const { samples, values, timeline } = channel
  // One value from beginning to end has no least difference: nothing is more stuck than that.
  const found = quantumOf(channel.first())
  const quantum = Number.isNaN(found) ? 0 : found
  const { t, segmentOf } = timeline
  for (let place = 0; place < samples.length;) {
    const first = samples[place] ?? 0
    const value = values[first] ?? NaN
    let end = place + 1
    while (
      end < samples.length &&
      values[samples[end] ?? 0] === value &&
      segmentOf[samples[end] ?? 0] === segmentOf[first]
    )
      end += 1
    const last = samples[end - 1] ?? first
    const long = end - place >= fewestSamples && (t[last] ?? 0) - (t[first] ?? 0) >= leastSeconds
    if (long && value !== 0 && Math.abs(value) >= leastQuanta * quantum) {
      if (witnesses.some(({ other, move }) => moveOf(other, first, last) >= move)) {
        for (let stuck = place + 1; stuck < end; stuck += 1) {
          const row = samples[stuck] ?? 0
          channel.drop(row)
          task.repairs.add('stuck', channel.id, lineOf(task, row))
        }
      }
    }
    place = end
  }
  channel.index()
}

/** How far a channel's samples moved between two rows. */
function moveOf(channel: Channel, from: number, to: number): number {
  let least = Infinity
  let most = -Infinity
  for (let row = from; row <= to; row += 1) {
    const value = channel.values[row] ?? NaN
    if (Number.isNaN(value)) continue
    least = Math.min(least, value)
    most = Math.max(most, value)
  }
  return most >= least ? most - least : 0
}
