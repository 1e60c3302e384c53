import { medianOf } from './noise.ts'

/** Length of a piece, s: what drifts more slowly than this is taken out by its free offset. */
export const pieceSeconds = 10

/** A gap-free run of rows (or of whole seconds) of at most ten seconds. */
interface Piece {
  /** Segment and ten seconds of it: errors know their rows by this. */
  readonly cluster: string
  /** Places in what was cut. */
  readonly rows: readonly number[]
}

/** Something that lies in time: rows of a segment, or its whole seconds. */
interface Timed {
  readonly segment: number
  /** s, rising. */
  readonly times: ArrayLike<number>
  /** Whether a place takes part. */
  readonly takes: (place: number) => boolean
  /** Fewest places of a piece. */
  readonly fewest: number
}

/** Longest step that is no gap: a second, or three usual steps. */
function longestStep(times: ArrayLike<number>): number {
  const steps = Array.from(
    { length: Math.max(0, times.length - 1) },
    (_, at) => (times[at + 1] ?? 0) - (times[at] ?? 0),
  )
  return Math.max(1, 3 * medianOf(steps) || 0) + 1e-9
}

/** Cuts what takes part into pieces of ten seconds from the start of each gap-free stretch; short ones are left out. */
export function piecesOf({ segment, times, takes, fewest }: Timed): readonly Piece[] {
  const longest = longestStep(times)
  const first = times[0] ?? 0
  const pieces: { start: number; rows: number[] }[] = []
  let stretch = NaN
  for (let place = 0; place < times.length; place += 1) {
    const time = times[place] ?? 0
    const joined = place > 0 && takes(place - 1) && time - (times[place - 1] ?? 0) <= longest
    if (!takes(place)) continue
    if (!joined) stretch = time
    const part = Math.floor((time - stretch) / pieceSeconds)
    const start = stretch + part * pieceSeconds
    const last = pieces.at(-1)
    if (joined && last !== undefined && Math.abs(last.start - start) < 1e-6) last.rows.push(place)
    else pieces.push({ start, rows: [place] })
  }
  return pieces
    .filter(({ rows }) => rows.length >= fewest)
    .map(({ start, rows }) => ({
      cluster: `${segment}:${Math.floor((start - first) / pieceSeconds)}`,
      rows,
    }))
}
