import { Matrix, QrDecomposition } from 'ml-matrix'
import { sumOfSquares } from '../numeric/linear-fit.ts'
import type { Block } from './blocks/block.ts'
import type { MachineOfValues } from './model.ts'
import { medianOf } from './noise.ts'

/** What a block's residuals are like. */
export interface BlockState {
  readonly block: Block
  /** ρ. */
  readonly residuals: Float64Array
  /** s = 1.4826 MAD of ρ. */
  readonly scale: number
  /** w of Huber, by residual. */
  readonly weights: Float64Array
}

/** A fit that has come to rest. */
export interface Solved {
  /** In the entries' bench units. */
  readonly values: readonly number[]
  readonly blocks: readonly BlockState[]
  /** ∂ρ/∂value of all blocks, one behind the other, √w/s times; columns by entry. */
  readonly columns: readonly (readonly number[])[]
  /** √w ρ/s of all blocks. */
  readonly weighted: readonly number[]
  /** Whether nothing moved at the end. */
  readonly settled: boolean
}

/** Residuals farther out than this many scales count less. */
const bend = 3

/** Scale and weights of residuals: w = min(1, 3 s/|ρ|), s = 1.4826 MAD. *Source:* P. J. Huber, Robust Statistics (1981). */
function stateOf(block: Block, residuals: Float64Array): BlockState {
  const middle = medianOf(residuals)
  const scale = 1.4826 * medianOf(residuals.map((value) => Math.abs(value - middle)))
  const weights = residuals.map((value) => Math.min(1, (bend * scale) / Math.abs(value)))
  return { block, residuals, scale, weights }
}

const statesAt = (blocks: readonly Block[], machineOf: MachineOfValues, values: readonly number[]) => {
  const machine = machineOf(values)
  return blocks.map((block) => stateOf(block, block.residualsOf(machine)))
}

/** √w/s of every residual. */
export function weightFactors(states: readonly BlockState[]): readonly number[] {
  return states.flatMap(({ weights, scale }) => Array.from(weights, (w) => Math.sqrt(w) / scale))
}

/** Raw ρ of all blocks at values. */
export function allResiduals(
  blocks: readonly Block[],
  machineOf: MachineOfValues,
  values: readonly number[],
): readonly number[] {
  const machine = machineOf(values)
  return blocks.flatMap((block) => Array.from(block.residualsOf(machine)))
}

/** Of its usual size, by which an entry near 0 is still moved. */
const leastPart = 1e-3

/** ∂ρ/∂value by central differences, all blocks one behind the other; a block that an entry does not move is not asked. */
function slopesOf(
  blocks: readonly Block[],
  machineOf: MachineOfValues,
  values: readonly number[],
  sizes: readonly number[],
): readonly (readonly number[])[] {
  return values.map((value, at) => {
    const h = 1e-6 * Math.max(Math.abs(value), leastPart * Math.abs(sizes[at] ?? 1))
    const [above, below] = [machineOf(values.with(at, value + h)), machineOf(values.with(at, value - h))]
    return blocks.flatMap((block) => {
      if (!block.reads.has(machineOf.paths[at] ?? '')) return new Array<number>(block.clusters.length).fill(0)
      const low = block.residualsOf(below)
      return Array.from(block.residualsOf(above), (one, row) => (one - (low[row] ?? 0)) / (2 * h))
    })
  })
}

/** The step of Gauss and Newton for weighted columns and residuals; null where the columns depend on each other. */
function stepOf(
  columns: readonly (readonly number[])[],
  weighted: readonly number[],
): readonly number[] | null {
  const lengths = columns.map((column) => Math.sqrt(sumOfSquares(column)))
  if (!lengths.every((length) => length > 0 && length < Infinity)) return null
  const design = Matrix.zeros(weighted.length, columns.length)
  columns.forEach((column, at) =>
    column.forEach((value, row) => design.set(row, at, value / (lengths[at] ?? 1))),
  )
  const qr = new QrDecomposition(design)
  if (!qr.isFullRank()) return null
  return qr
    .solve(Matrix.columnVector([...weighted]))
    .to1DArray()
    .map((value, at) => value / (lengths[at] ?? 1))
}

const mostRounds = 100
const still = 1e-9

/** Columns at the start, residuals not yet weighted against each other. */
export function columnsAtStart(
  blocks: readonly Block[],
  machineOf: MachineOfValues,
  start: readonly number[],
): Solved['columns'] {
  return slopesOf(blocks, machineOf, start, start)
}

/** Everything about a fit at values. */
function workAt(
  blocks: readonly Block[],
  machineOf: MachineOfValues,
  values: readonly number[],
  sizes: readonly number[],
) {
  const states = statesAt(blocks, machineOf, values)
  const factors = weightFactors(states)
  const scaled = (list: readonly number[]) => list.map((value, row) => value * (factors[row] ?? 0))
  return {
    states,
    factors,
    columns: slopesOf(blocks, machineOf, values, sizes).map(scaled),
    weighted: scaled(states.flatMap(({ residuals }) => Array.from(residuals))),
  }
}

/**
 * Values that make Σ w ρ²/s² least, s and w being renewed until nothing moves: steps of Gauss and Newton, halved while
 * they make the sum larger.
 *
 * @param start in the entries' bench units; not 0
 */
export function solved(
  blocks: readonly Block[],
  machineOf: MachineOfValues,
  start: readonly number[],
): Solved {
  let values: readonly number[] = start
  let settled = false
  for (let round = 0; round < mostRounds && !settled; round += 1) {
    const { factors, columns, weighted } = workAt(blocks, machineOf, values, start)
    const step = stepOf(columns, weighted)
    if (step === null) break
    const now = sumOfSquares(weighted)
    const sumAt = (tried: readonly number[]) =>
      sumOfSquares(allResiduals(blocks, machineOf, tried).map((value, row) => value * (factors[row] ?? 0)))
    let share = 1
    const tried = () => values.map((value, at) => value - share * (step[at] ?? 0))
    while (share > 1e-3 && !(sumAt(tried()) <= now * (1 + 1e-9))) share /= 2
    values = tried()
    settled = step.every((part, at) => Math.abs(part) <= still * Math.abs(start[at] ?? 1))
  }
  const { states, columns, weighted } = workAt(blocks, machineOf, values, start)
  return { values, blocks: states, columns, weighted, settled }
}
