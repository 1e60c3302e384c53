import type { Machine } from '../machine/parts.ts'
import { torqueConstantAt, windingResistanceAt } from '../motor/constants.ts'
import { openCircuitVolts, type ChemistryId } from '../reference/chemistry.ts'
import { pieceSeconds } from './pieces.ts'
import type { Prepared } from './prepare.ts'
import type { RegressionRow } from './regressed.ts'
import { shiftedBy } from './shift.ts'
import { meanOver, wholeSpans } from './whole-seconds.ts'

const leastDuty = 0.05
const leastShareOfAmps = 0.05
/** Rate of change of a column's mean over rows, one row's step to both sides. */
function rateOver(column: Float64Array, seconds: Float64Array, rows: readonly number[]): number {
  const [first = 0, last = 0] = [rows[0], rows.at(-1)]
  const ends = [first - 1, first, last, last + 1].map(
    (row) => [column[row] ?? NaN, seconds[row] ?? NaN] as const,
  )
  const [before, start, end, after] = ends
  if (!before || !start || !end || !after) return NaN
  return (
    ((end[0] + after[0]) / 2 - (before[0] + start[0]) / 2) /
    ((end[1] + after[1]) / 2 - (before[1] + start[1]) / 2)
  )
}

/** δV of each second against motor amps, speed and the amps' rate of change, as the `volts` block has them. */
export function motorRows(prepared: Prepared, machine: Machine, late: number): readonly RegressionRow[] {
  const { motor } = machine
  return prepared.tracks.flatMap((track) => {
    const amps = shiftedBy(late, track.amps, track.seconds)
    const heated = amps.map((value, row) => value * windingResistanceAt(1, track.winding[row] ?? NaN))
    const emf = track.speed.map((value, row) => value * torqueConstantAt(motor, track.winding[row] ?? NaN))
    const driven = track.duty.map((duty, row) => duty * (track.volts[row] ?? NaN))
    const takes = (row: number) =>
      (track.duty[row] ?? NaN) >= leastDuty &&
      [amps, emf, driven].every((column) => !Number.isNaN(column[row]))
    return wholeSpans(track.seconds, 1, takes).flatMap(({ second, rows }): readonly RegressionRow[] => {
      if (meanOver(amps, rows) < leastShareOfAmps * prepared.mostAmps) return []
      const rate = rateOver(heated, track.seconds, rows)
      const cluster = `${track.segment}:${Math.floor(second / pieceSeconds)}`
      return Number.isNaN(rate)
        ? []
        : [
            {
              cluster,
              said: meanOver(driven, rows),
              moves: [meanOver(heated, rows), meanOver(emf, rows), rate],
            },
          ]
    })
  })
}

/** V less the resting volts of each second against pack amps and their rate of change, pieces by their own mean. */
export function packRows(
  prepared: Prepared,
  machine: Machine,
  chemistry: ChemistryId,
  late: number,
): readonly RegressionRow[] {
  const { series, capacity, stateOfCharge } = machine.pack
  let drawn = 0
  const all = prepared.tracks.flatMap((track) => {
    const amps = shiftedBy(late, track.packAmps, track.seconds)
    const resting = track.volts.map((volts, row) => {
      const step = (track.seconds[row] ?? NaN) - (track.seconds[row - 1] ?? NaN)
      const used = ((track.packAmps[row] ?? NaN) + (track.packAmps[row - 1] ?? NaN)) / 2
      if (!Number.isNaN(step * used)) drawn += step * used
      return (
        volts -
        series * openCircuitVolts(chemistry, Math.min(1, Math.max(0, stateOfCharge - drawn / capacity)))
      )
    })
    const takes = (row: number) => !Number.isNaN(resting[row]) && !Number.isNaN(amps[row])
    return wholeSpans(track.seconds, 1, takes).flatMap(({ second, rows }): readonly RegressionRow[] => {
      const rate = rateOver(amps, track.seconds, rows)
      const cluster = `${track.segment}:${Math.floor(second / pieceSeconds)}`
      return Number.isNaN(rate)
        ? []
        : [{ cluster, said: meanOver(resting, rows), moves: [meanOver(amps, rows), rate] }]
    })
  })
  return withoutPieceMeans(all)
}

function withoutPieceMeans(rows: readonly RegressionRow[]): readonly RegressionRow[] {
  const groups = new Map<string, RegressionRow[]>()
  for (const row of rows) groups.set(row.cluster, [...(groups.get(row.cluster) ?? []), row])
  return [...groups.values()].flatMap((group) => {
    const mean = (value: (row: RegressionRow) => number) =>
      group.reduce((sum, row) => sum + value(row), 0) / group.length
    const said = mean((row) => row.said)
    const moves = group[0]?.moves.map((_, at) => mean((row) => row.moves[at] ?? NaN)) ?? []
    return group.map((row) => ({
      cluster: row.cluster,
      said: row.said - said,
      moves: row.moves.map((value, at) => value - (moves[at] ?? NaN)),
    }))
  })
}
