import type { Machine } from '../../machine/parts.ts'
import type { BlockName } from '../entries.ts'

/** A kind of residual with its rows: what is logged less what the machine would do, over its standard deviation. */
export interface Block {
  readonly name: BlockName
  /** Cluster of each residual: segment and ten seconds of it; one for each segment where the block is told by segments. */
  readonly clusters: readonly string[]
  /** Entries that move its residuals. */
  readonly reads: ReadonlySet<string>
  /** Free offsets taken out: each costs a degree of freedom. */
  readonly offsets: number
  /** ρ of a machine, each over its standard deviation there, offsets taken out. */
  readonly residualsOf: (machine: Machine) => Float64Array
  /**
   * Standard deviation of what sensor noise puts into the difference between the residuals of two machines: noisy amps
   * times another resistance. Absent where nothing noisy stands beside an entry.
   */
  readonly noiseBetween?: (machine: Machine, changed: Machine) => Float64Array
  /** Pieces left out because the tracks spin there. */
  readonly spun: number
  /** Seconds and segment of each residual, for a plot. */
  readonly places: readonly { readonly segment: number; readonly seconds: number }[]
}

/** Takes the part along a direction out of residuals: a free offset, by least squares. */
export function withoutOffset(residuals: Float64Array, direction: Float64Array): Float64Array {
  let along = 0
  let length = 0
  residuals.forEach((value, at) => {
    along += value * (direction[at] ?? 0)
    length += (direction[at] ?? 0) ** 2
  })
  const share = length > 0 ? along / length : 0
  return residuals.map((value, at) => value - share * (direction[at] ?? 0))
}

/** Puts the pieces' residuals one behind the other. */
export function joined(parts: readonly Float64Array[]): Float64Array {
  const whole = new Float64Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
