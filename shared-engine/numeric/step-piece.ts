import { bracketedRoot } from './root.ts'
import { denseWeights } from './step-tableau.ts'

/** Something that happens where a function of time and state passes through 0. */
export interface StepEvent {
  readonly name: string
  readonly value: (time: number, state: Float64Array) => number
  /** Ends the run there. */
  readonly stops: boolean
}

/** One event that happened. */
export interface Happened {
  readonly name: string
  readonly time: number
  readonly state: Float64Array
}

/** One accepted step with its continuous extension. */
export interface Piece {
  readonly time: number
  readonly step: number
  readonly terms: readonly Float64Array[]
}

/** The continuous extension of one step. */
function within({ time, step, terms }: Piece, wanted: number): Float64Array {
  const [start, r2, r3, r4, r5] = terms as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const part = (wanted - time) / step
  const rest = 1 - part
  return start.map((value, i) => {
    const inner = (r4[i] as number) + rest * (r5[i] as number)
    return value + part * ((r2[i] as number) + rest * ((r3[i] as number) + part * inner))
  })
}

/** The continuous extension of a step from its slopes. */
export function pieceOf(
  time: number,
  step: number,
  start: Float64Array,
  end: Float64Array,
  k: readonly Float64Array[],
): Piece {
  const first = k[0] as Float64Array
  const last = k[6] as Float64Array
  const r2 = end.map((value, i) => value - (start[i] as number))
  const r3 = r2.map((change, i) => step * (first[i] as number) - change)
  const r4 = r2.map((change, i) => change - step * (last[i] as number) - (r3[i] as number))
  const r5 = weighted(k, denseWeights).map((sum) => step * sum)
  return { time, step, terms: [start, r2, r3, r4, r5] }
}

/** Sum of slopes by their weights. */
export function weighted(k: readonly Float64Array[], weights: readonly number[]): Float64Array {
  const sum = new Float64Array((k[0] as Float64Array).length)
  weights.forEach((weight, stage) =>
    k[stage]?.forEach((slope, i) => (sum[i] = (sum[i] as number) + weight * slope)),
  )
  return sum
}

/** Where events pass through 0 inside a step, in order of time; looked for between five points of it. */
export function eventsIn(
  piece: Piece,
  events: readonly StepEvent[],
): readonly (Happened & { stops: boolean })[] {
  const end = piece.time + piece.step
  const marks = [0, 0.25, 0.5, 0.75, 1].map((part) => (part === 1 ? end : piece.time + part * piece.step))
  const found = events.flatMap(({ name, value, stops }) => {
    const at = (time: number) => value(time, within(piece, time))
    const values = marks.map(at)
    return marks.slice(1).flatMap((mark, index) => {
      const before = values[index] as number
      const after = values[index + 1] as number
      if (before === 0 || before > 0 === after > 0) return []
      const time = bracketedRoot(at, marks[index] as number, mark) ?? mark
      return [{ name, time, state: within(piece, time), stops }]
    })
  })
  return found.sort((a, b) => a.time - b.time)
}

/** State at any time of a run; held at its ends. */
export function stateAt(
  times: readonly number[],
  states: readonly Float64Array[],
  pieces: readonly Piece[],
  wanted: number,
): Float64Array {
  const last = times.length - 1
  if (wanted <= (times[0] as number) || last === 0) return states[0] as Float64Array
  if (wanted >= (times[last] as number)) return states[last] as Float64Array
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((times[middle] as number) <= wanted) low = middle
    else high = middle
  }
  return within(pieces[low] as Piece, wanted)
}
