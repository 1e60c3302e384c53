import { machineOf } from '../machine/machine.ts'
import { MachineMaker } from '../machine/maker.ts'
import type { Build } from '../entries/schema.ts'
import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { Ledger } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import type { Limit } from '../limits/limit.ts'
import { limitsOf } from '../limits/table.ts'
import { latinHypercube } from '../numeric/hypercube.ts'
import { buildSetter, rulesKeeper } from './build.ts'
import {
  drawOf,
  drawsOf,
  tolerancedEntriesOf,
  type TolerancedEntries,
  type TolerancedEntry,
} from './entries.ts'
import type { LimitId } from '../limits/id.ts'

/** Fewest samples that give percentiles a meaning, and most: some hundred margins each are held in memory. */
export const fewestSamples = 20
export const mostSamples = 200_000

/** How many samples are drawn, and from which seed: both are part of the result. */
export interface UncertaintyOptions {
  /** {@link fewestSamples} to {@link mostSamples}. */
  readonly samples: number
  /** Whole number, 0 to 2^53 − 1. */
  readonly seed: number
}

/** A piece of the work that any thread can do: samples `from` up to but without `to`. */
interface UncertaintyPiece {
  readonly from: number
  readonly to: number
}

/** What a piece found; plain arrays of numbers, so that it can be sent from thread to thread. */
export interface UncertaintyFound {
  readonly piece: UncertaintyPiece
  /** Values put in, entry by entry: `values[entry * count + sample]`, bench units. */
  readonly values: Float64Array
  /**
   * Margins, NaN where the limit is left out, −Infinity where none can be formed. Variant by variant, in each limit by
   * limit: variant 0 as drawn, variant n + 1 with the tolerance of entry n halved (of the first samples alone).
   */
  readonly margins: Float64Array
  /** 1 where the drawn entries make no build. */
  readonly impossible: Uint8Array
  /** For each entry, how many draws were held to its range. */
  readonly held: Uint32Array
}

/** Draws of a build and what to do with them. */
export interface UncertaintyPlan extends TolerancedEntries, UncertaintyOptions {
  readonly build: Build
  /** Every limit that a machine of this shape can have. */
  readonly limitIds: readonly LimitId[]
  /** How many of the samples are done again with each tolerance halved. */
  readonly again: number
  readonly run: (piece: UncertaintyPiece) => UncertaintyFound
}

/**
 * Checks of samples that are done again, for all entries together: paired with the same draws, a few hundred for each entry
 * are enough to rank them.
 */
const checksAgain = 5_000
const [fewestAgain, mostAgain] = [200, 500]

/** How many samples are done again with each tolerance halved. */
function againOf(samples: number, entries: number): number {
  const share = Math.floor(checksAgain / Math.max(1, entries))
  return Math.min(samples, Math.max(fewestAgain, Math.min(mostAgain, share)))
}

/** Makes ready: the same build, samples and seed give the same plan in every thread. */
export function uncertaintyPlanOf(build: Build, { samples, seed }: UncertaintyOptions): UncertaintyPlan {
  const toleranced = tolerancedEntriesOf(build)
  const { entries } = toleranced
  const paths = entries.map((entry) => entry.path)
  const limits = limitsOf(machineOf(build))
  const limitIds = limits.map((limit) => limit.id)
  const places = placesByNumber(limits)
  const cube = latinHypercube(seed, samples, entries.length)
  const draws = drawsOf(entries)
  const put = buildSetter(build, paths)
  const keepsRules = rulesKeeper(build, paths)
  const maker = new MachineMaker()
  const e = new Evaluation()
  const ledger = new Ledger()

  const measure = (found: UncertaintyFound, values: Float64Array, variant: number, at: number): boolean => {
    const drawn = put(values)
    if (!keepsRules(drawn)) return false
    const count = found.piece.to - found.piece.from
    const machine = maker.of(drawn)
    evaluate(e, machine)
    measureLedger(ledger, e, machine)
    for (let row = 0; row < ledger.count; row += 1) {
      const place = places[ledger.limitNumbers[row] ?? 0]
      if (place === undefined) continue
      found.margins[(variant * limitIds.length + place) * count + at] = ledger.margin[row] ?? NaN
    }
    return true
  }
  const again = againOf(samples, entries.length)
  const plan = { ...toleranced, samples, seed, build, limitIds, again }
  const run = (piece: UncertaintyPiece): UncertaintyFound => {
    const found = nothingFound(plan, piece)
    const count = piece.to - piece.from
    const values = new Float64Array(entries.length)
    for (let at = 0; at < count; at += 1) {
      const point = cube.at(piece.from + at)
      entries.forEach((entry, place) => {
        const drawn = drawOf(entry, point[draws[place] ?? place] ?? 0.5, 1)
        const value = held(entry, drawn)
        if (value !== drawn) found.held[place] = (found.held[place] ?? 0) + 1
        values[place] = value
        found.values[place * count + at] = value
      })
      if (!measure(found, values, 0, at)) found.impossible[at] = 1
      if (piece.from + at >= again) continue
      entries.forEach((entry, place) => {
        const kept = values[place] ?? NaN
        values[place] = held(entry, drawOf(entry, point[draws[place] ?? place] ?? 0.5, 0.5))
        measure(found, values, place + 1, at)
        values[place] = kept
      })
    }
    return found
  }
  return { ...plan, run }
}

/** By a limit's number its place among some; not by its id, which the limits of a belt and of a chain share. */
function placesByNumber(limits: readonly Limit[]): (number | undefined)[] {
  const places: (number | undefined)[] = []
  limits.forEach((limit, place) => (places[limit.number] = place))
  return places
}

const held = (entry: TolerancedEntry, drawn: number) => Math.min(Math.max(drawn, entry.low), entry.high)

function nothingFound(
  { entries, limitIds, again }: Omit<UncertaintyPlan, 'run'>,
  piece: UncertaintyPiece,
): UncertaintyFound {
  const count = piece.to - piece.from
  const variants = piece.from < again ? 1 + entries.length : 1
  return {
    piece,
    values: new Float64Array(entries.length * count),
    margins: new Float64Array(variants * limitIds.length * count).fill(NaN),
    impossible: new Uint8Array(count),
    held: new Uint32Array(entries.length),
  }
}

/**
 * The whole work as pieces of about `size` checks each, in an order that matters to nobody: each sample depends on the
 * seed and its number alone.
 */
export function uncertaintyPieces(plan: UncertaintyPlan, size: number): UncertaintyPiece[] {
  if (plan.entries.length === 0) return [{ from: 0, to: 1 }]
  const pieces: UncertaintyPiece[] = []
  const cut = (from: number, to: number, length: number) => {
    for (let at = from; at < to; at += length) pieces.push({ from: at, to: Math.min(at + length, to) })
  }
  cut(0, plan.again, Math.max(1, Math.floor(size / (1 + plan.entries.length))))
  cut(plan.again, plan.samples, Math.max(1, size))
  return pieces
}
