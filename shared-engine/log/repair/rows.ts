import type { Channel } from '../channel.ts'
import { counters } from '../data.ts'
import { lineOf, type RepairTask } from './repair.ts'

const fewestCells = 3

/**
 * Rows of nothing but zeros, the volts among them: the link was gone while the recorder wrote on.
 *
 * Counters and altitude may stand at zero by themselves, and are not asked. *Source:* common practice, no source.
 */
export function dropZeroRows(task: RepairTask): void {
  const all = [...task.data.channels.values()]
  const asked = all.filter(({ id }) => !counters.includes(id) && id !== 'altitude')
  const volts = asked.filter(({ id }) => id === 'volts' || id === 'cellVolts')
  if (volts.length === 0) return
  for (let row = 0; row < task.data.timeline.count; row += 1) {
    if (!volts.some(({ values }) => values[row] === 0)) continue
    const filled = asked.filter(({ values }) => !Number.isNaN(values[row] ?? NaN))
    if (filled.length < fewestCells || filled.some(({ values }) => values[row] !== 0)) continue
    for (const channel of all) channel.drop(row)
    task.zeroRows.push(row)
    task.repairs.add('zero-row', null, lineOf(task, row))
  }
}

const fewestRows = 5
const leastSeconds = 2

/**
 * Rows that say the same as the one before while the motor turns: the link was gone and the recorder wrote the last it
 * had.
 *
 * *Source:* common practice, no source.
 */
export function dropFrozen(task: RepairTask): void {
  const { channels, timeline } = task.data
  const all = [...channels.values()]
  const rpm = channels.get('rpm')
  if (rpm === undefined) return
  const { t, segmentOf, count } = timeline
  const turns = turning(rpm)
  const repeats = (row: number) =>
    segmentOf[row] === segmentOf[row - 1] && turns[row] === 1 && isSame(all, row, fewestCells)
  const found: [number, number][] = []
  for (let row = 1; row < count; row += 1) {
    if (!repeats(row)) continue
    let end = row + 1
    while (end < count && repeats(end)) end += 1
    if (end - row >= fewestRows && (t[end - 1] ?? 0) - (t[row] ?? 0) >= leastSeconds) found.push([row, end])
    row = end
  }
  for (const [from, end] of found) {
    for (let row = from; row < end; row += 1) {
      for (const channel of all) channel.drop(row)
      task.frozenRows.push(row)
      task.repairs.add('frozen', null, lineOf(task, row))
    }
  }
}

/**
 * 1 for each row at which the motor is known to turn: by its own rpm, else by the last one of its segment. Where rpm comes
 * seldom, or only when it changes, a machine that stands has many rows alike without one.
 */
function turning({ values, timeline: { segmentOf, count } }: Channel): Uint8Array {
  const turns = new Uint8Array(count)
  let last = 0
  for (let row = 0; row < count; row += 1) {
    if (segmentOf[row] !== segmentOf[row - 1]) last = 0
    const value = values[row] ?? NaN
    if (!Number.isNaN(value)) last = value
    turns[row] = last === 0 ? 0 : 1
  }
  return turns
}

/** Whether a row has the same cells with the same numbers as the one before, and enough of them. */
function isSame(channels: readonly Channel[], row: number, fewest: number): boolean {
  let filled = 0
  for (const { values } of channels) {
    const value = values[row] ?? NaN
    const before = values[row - 1] ?? NaN
    if (Number.isNaN(value) && Number.isNaN(before)) continue
    if (value !== before) return false
    filled += 1
  }
  return filled >= fewest
}
