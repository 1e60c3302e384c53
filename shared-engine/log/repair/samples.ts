import { temperatures, type Channel } from '../channel.ts'
import { inChannelUnit } from '../../reference/columns.ts'
import { isWithin, rangeOf } from '../columns/ranges.ts'
import { counters } from '../data.ts'
import { lineOf, type RepairTask } from './repair.ts'

/** Samples that this machine cannot have. */
export function dropImpossible(task: RepairTask): void {
  for (const [id, channel] of task.data.channels) {
    const range = rangeOf(id, task.model)
    if (range === null) continue
    const unit = counters.includes(id) ? task.data.rawUnits.get(id) : undefined
    for (let row = 0; row < channel.values.length; row += 1) {
      const value = channel.values[row] ?? NaN
      if (Number.isNaN(value) || isWithin(range, inChannelUnit(value, unit))) continue
      channel.drop(row)
      task.repairs.add('impossible', id, lineOf(task, row))
    }
    channel.index()
  }
}

/** Time from one sample to another of a segment; NaN across segments. */
function secondsBetween(channel: Channel, one: number, other: number): number {
  const { t, segmentOf } = channel.timeline
  return segmentOf[one] === segmentOf[other] ? (t[other] ?? NaN) - (t[one] ?? NaN) : NaN
}

/**
 * Rpm that is exactly zero for a moment between two running samples: a turning shaft does not stop and start so fast.
 *
 * *Source:* common practice, no source.
 */
export function dropDropouts(task: RepairTask): void {
  const channel = task.data.channels.get('rpm')
  if (channel === undefined) return
  const { samples, values } = channel
  const longest = Math.max(1, Number.isNaN(channel.step) ? 0 : 2.5 * channel.step)
  for (let place = 1; place < samples.length; place += 1) {
    if (values[samples[place] ?? 0] !== 0) continue
    let end = place
    while (end < samples.length && values[samples[end] ?? 0] === 0) end += 1
    const before = samples[place - 1] ?? 0
    const after = samples[end]
    const first = values[before] ?? NaN
    const second = values[after ?? -1] ?? NaN
    const share = second / first
    if (
      after !== undefined &&
      secondsBetween(channel, before, after) <= longest &&
      first >= 0.1 * task.model.freeRpm &&
      share >= 0.7 &&
      share <= 1.4
    ) {
      for (let zero = place; zero < end; zero += 1) dropSample(task, channel, samples[zero] ?? 0, 'dropout')
    }
    place = end
  }
  channel.index()
}

function dropSample(
  task: RepairTask,
  channel: Channel,
  row: number,
  code: 'dropout' | 'spike' | 'stuck',
): void {
  channel.drop(row)
  task.repairs.add(code, channel.id, lineOf(task, row))
}

/** How far a spike stands off, K and m/s. *Source:* common practice, no source. */
const spikeSizes = { temperature: 15, speed: 4 } as const

/** Temperatures and speeds that jump and come back: what cannot change so fast was not measured. */
export function dropSpikes(task: RepairTask): void {
  for (const channel of task.data.channels.values()) {
    if (channel.id === 'speed') dropSpikesOf(task, channel, spikeSizes.speed)
    else if (temperatures.includes(channel.id)) dropSpikesOf(task, channel, spikeSizes.temperature)
  }
}

function dropSpikesOf(task: RepairTask, channel: Channel, size: number): void {
  const { samples, values } = channel
  const longest = Math.max(3, Number.isNaN(channel.step) ? 0 : 4 * channel.step)
  let kept = samples[0] ?? -1
  for (let place = 1; place < samples.length; place += 1) {
    const row = samples[place] ?? 0
    const value = values[row] ?? NaN
    let end = place
    while (end < samples.length && values[samples[end] ?? 0] === value) end += 1
    const after = samples[end]
    if (after !== undefined && secondsBetween(channel, kept, after) <= longest) {
      const earlier = values[kept] ?? NaN
      const later = values[after] ?? NaN
      const off =
        value > earlier ? Math.min(value - earlier, value - later) : Math.min(earlier - value, later - value)
      if (off > size && Math.abs(later - earlier) <= size / 2) {
        for (let spike = place; spike < end; spike += 1)
          dropSample(task, channel, samples[spike] ?? 0, 'spike')
        place = end - 1
        continue
      }
    }
    kept = samples[end - 1] ?? row
    place = end - 1
  }
  channel.index()
}
