import type { Timeline } from '../time/timeline.ts'
import type { Episode } from './episode.ts'

const leastZeroSeconds = 1

/**
 * Stretches without a signal: gaps in time, rows that repeat, and a second or more of zeros.
 *
 * @param frozen, zeros rows that were left out for it, in order
 */
export function signalEpisodes(
  timeline: Timeline,
  frozen: readonly number[],
  zeros: readonly number[],
): readonly Episode[] {
  const lasting = runsOf(timeline, zeros).filter(
    ([first, last]) => (timeline.t[last] ?? 0) - (timeline.t[first] ?? 0) >= leastZeroSeconds,
  )
  return [
    ...timeline.gaps.map((row) => lost(timeline, row - 1, row, 'gap')),
    ...runsOf(timeline, frozen).map(([first, last]) => lost(timeline, first - 1, last + 1, 'frozen')),
    ...lasting.map(([first, last]) => lost(timeline, first - 1, last + 1, 'zeros')),
  ]
}

/** Rows that follow each other in one segment, as first and last. */
function runsOf({ segmentOf }: Timeline, rows: readonly number[]): readonly (readonly [number, number])[] {
  const runs: [number, number][] = []
  for (const row of rows) {
    const run = runs.at(-1)
    if (run !== undefined && row === run[1] + 1 && segmentOf[row] === segmentOf[run[1]]) run[1] = row
    else runs.push([row, row])
  }
  return runs
}

/** From the row before to the row after; where the segment has none, from its own first or last. */
function lost(timeline: Timeline, before: number, after: number, how: NonNullable<Episode['how']>): Episode {
  const { t, lines, segmentOf } = timeline
  const segment = segmentOf[Math.min(before + 1, t.length - 1)] ?? 0
  const first = before >= 0 && segmentOf[before] === segment ? before : before + 1
  const last = after < t.length && segmentOf[after] === segment ? after : after - 1
  const start = t[first] ?? 0
  const end = t[last] ?? 0
  return {
    kind: 'signal-lost',
    segment: segment + 1,
    row: lines[first] ?? 0,
    start,
    end,
    startAfter: start,
    endBefore: end,
    peak: null,
    limit: null,
    over: false,
    how,
    sentence: '',
  }
}
