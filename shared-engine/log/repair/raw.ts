import { inChannelUnit } from '../../reference/columns.ts'
import { counters } from '../data.ts'
import { lineOf, type RepairTask } from './repair.ts'

/** Cells of a channel that hold something else than a number. */
export function dropUnreadable(task: RepairTask): void {
  for (const [id, { values }] of task.data.channels) {
    for (let row = 0; row < values.length; row += 1) {
      const value = values[row] ?? NaN
      if (Number.isNaN(value) || Number.isFinite(value)) continue
      values[row] = NaN
      task.repairs.add('unreadable', id, lineOf(task, row))
    }
  }
}

/** The range of a signed 16-bit number, and from where on the sample before has to be for its sign to be an overflow. */
const sixteenBits = 65_536
const nearOverflow = 24_576
const wrapSeconds = 2

/**
 * An rpm that a recorder kept in 16 bits with a sign: a negative one right after a large one is that much above it.
 *
 * *Source:* two's complement arithmetic; the bounds: common practice, no source.
 */
export function unwrapSigned(task: RepairTask): void {
  const { channels, timeline } = task.data
  const values = channels.get('rpm')?.values ?? new Float64Array()
  let before = -1
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] ?? NaN
    if (Number.isNaN(value)) continue
    const near =
      before >= 0 &&
      timeline.segmentOf[before] === timeline.segmentOf[row] &&
      (timeline.t[row] ?? 0) - (timeline.t[before] ?? 0) <= wrapSeconds
    if (near && value < 0 && value >= -32_768 && (values[before] ?? 0) >= nearOverflow) {
      values[row] = value + sixteenBits
      task.repairs.add('signed-wrap', 'rpm', lineOf(task, row))
    }
    before = row
  }
}

/** Brings the rpm to the motor's. */
export function scaleRpm(task: RepairTask): void {
  const values = task.data.channels.get('rpm')?.values
  if (values === undefined) return
  for (let row = 0; row < values.length; row += 1) {
    const value = values[row] ?? NaN
    if (Number.isNaN(value)) continue
    values[row] = value * task.rpmFactor
    if (task.rpmRescaled) task.repairs.add('rpm-scale', 'rpm', lineOf(task, row))
  }
}

const nearFull = 60_000
const nearEmpty = 5_536

/**
 * Counters that began anew: past 16 bits, or from the start. They are counted on from the last; smaller falls are noise
 * and stand.
 *
 * *Source:* arithmetic of 16-bit counters; the 1 % that counts as noise: common practice, no source.
 */
export function continueCounters(task: RepairTask): void {
  for (const id of counters) {
    const channel = task.data.channels.get(id)
    if (channel === undefined) continue
    const unit = task.data.rawUnits.get(id)
    const { segmentOf } = task.data.timeline
    let added = 0
    let before = -1
    let last = NaN
    for (const row of channel.samples) {
      const raw = channel.values[row] ?? NaN
      if (last >= nearFull && raw <= nearEmpty) {
        added += sixteenBits
        task.repairs.add('counter-wrap', id, lineOf(task, row))
      } else if (raw < 0.99 * last) {
        added += last
        if (segmentOf[before] === segmentOf[row]) task.repairs.add('counter-reset', id, lineOf(task, row))
      }
      last = raw
      before = row
      channel.values[row] = inChannelUnit(raw + added, unit)
    }
  }
}
