import { isDecisive } from '../limits/group.ts'
import { limitOf } from '../limits/table.ts'
import type { UncertaintyFound, UncertaintyPlan } from './samples.ts'

/**
 * Columns of one run over the samples: one for each entry and each limit. A column is put together when it is asked for
 * and kept by nobody, so that the numbers of a long run stand in memory once.
 */
interface Columns {
  readonly valuesOf: (entry: number) => Float64Array
  readonly marginsOf: (limit: number) => Float64Array
}

/** All pieces put together. */
export interface Gathered {
  /** Every sample as drawn. */
  readonly base: Columns
  /** For each entry, the first samples again with its tolerance halved. */
  readonly halved: readonly Columns[]
  /** Samples that are in: fewer than asked for where the work was stopped. */
  readonly samples: number
  /** Samples that made a build, and those that did not. */
  readonly possible: number
  readonly impossible: number
  readonly held: readonly number[]
  readonly probabilityAnyOver: number
}

/** Puts pieces together by their sample numbers. */
export function gatherPieces(plan: UncertaintyPlan, pieces: readonly UncertaintyFound[]): Gathered {
  const samples = pieces.reduce((most, { piece }) => Math.max(most, piece.to), 0)
  const base = columnsOf(plan, pieces, 0, samples)
  const impossible = pieces.reduce(
    (sum, found) => sum + found.impossible.reduce((all, one) => all + one, 0),
    0,
  )
  const done = pieces.reduce((sum, { piece }) => sum + piece.to - piece.from, 0)
  const possible = done - impossible
  return {
    base,
    samples: done,
    halved: plan.entries.map((_, place) => columnsOf(plan, pieces, place + 1, plan.again)),
    possible,
    impossible,
    held: plan.entries.map((_, place) => pieces.reduce((sum, found) => sum + (found.held[place] ?? 0), 0)),
    probabilityAnyOver: anyOver(plan, base, samples) / Math.max(1, possible),
  }
}

/** Columns of one variant over the first samples. */
function columnsOf(
  plan: UncertaintyPlan,
  pieces: readonly UncertaintyFound[],
  variant: number,
  samples: number,
): Columns {
  const column = (pick: (found: UncertaintyFound) => Float64Array, place: number) => {
    const whole = new Float64Array(samples).fill(NaN)
    for (const found of pieces) {
      const { from, to } = found.piece
      const start = place * (to - from)
      if (from < samples) whole.set(pick(found).subarray(start, start + Math.min(to, samples) - from), from)
    }
    return whole
  }
  const firstLimit = variant * plan.limitIds.length
  return {
    valuesOf: (entry) => column((found) => found.values, entry),
    marginsOf: (limit) => column((found) => found.margins, firstLimit + limit),
  }
}

/** Samples in which any limit of ordinary use is over. */
function anyOver(plan: UncertaintyPlan, { marginsOf }: Columns, samples: number): number {
  const over = new Uint8Array(samples)
  plan.limitIds.forEach((id, place) => {
    if (!isDecisive(limitOf(id)?.group ?? 'mishap')) return
    const margins = marginsOf(place)
    for (let at = 0; at < samples; at += 1) if ((margins[at] ?? 0) < 0) over[at] = 1
  })
  return over.reduce((sum, one) => sum + one, 0)
}
