import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { isDecisive } from '../limits/group.ts'
import type { Ledger } from '../limits/ledger.ts'
import { limitOfNumber, limitsListed } from '../limits/limit.ts'
import type { Hold } from './space-hold.ts'
import { comesCloser, type TallyPart } from './tally.ts'

/** Of a limit: it decides; it decides and is no reduction's. */
const deciding = 1
const common = 2

/**
 * What a meter knows of every limit by its number, which a ledger's rows name: a row is looked up in typed arrays, since
 * some fifty are read for every candidate.
 */
class KnownLimits {
  /** {@link deciding} and {@link common}. */
  readonly sort: Uint8Array
  /** Place of its hold; −1 where there is none. */
  readonly hold: Int16Array

  constructor(holds: readonly Hold[]) {
    this.sort = new Uint8Array(limitsListed())
    this.hold = new Int16Array(limitsListed()).fill(-1)
    for (let number = 0; number < this.sort.length; number += 1) {
      const limit = limitOfNumber(number)
      if (limit === undefined || !isDecisive(limit.group)) continue
      this.sort[number] = limit.part.startsWith('stage.') ? deciding : deciding | common
    }
    holds.forEach((hold, place) => {
      if (hold.type === 'margin') this.hold[hold.limit.number] = place
    })
  }
}

/** How one candidate fares with what it has to hold; filled again and again. */
export class HoldMeter {
  /** Worst margin of ordinary use, which mishaps are no part of, and of it without the reductions' own limits. */
  worst = Infinity
  worstCommon = Infinity
  /** How many holds are broken, and which: the first so many places. */
  broken = 0
  readonly brokenHolds: Uint16Array
  /** Least surplus over all holds: a margin's, or a figure's as a share of its bound; below 0 where one is broken. */
  surplus = Infinity
  readonly #holds: readonly Hold[]
  readonly #least: Float64Array
  /** Holds on figures, by place. */
  readonly #measured: readonly number[]
  readonly #known: KnownLimits

  constructor(holds: readonly Hold[]) {
    this.#holds = holds
    this.#known = new KnownLimits(holds)
    this.#least = Float64Array.from(holds, (hold) => (hold.type === 'margin' ? hold.least : NaN))
    this.#measured = holds.flatMap((hold, place) => (hold.type === 'margin' ? [] : [place]))
    this.brokenHolds = new Uint16Array(holds.length)
  }

  /**
   * Measures a candidate that was evaluated, and notes of each hold whether it comes closer to it than those before.
   *
   * @param tally its `best` and `bestIndex` are kept up: by the margin, or the figure with the sign that makes more better
   * @param index number of the candidate
   */
  measure(ledger: Ledger, e: Evaluation, machine: Machine, tally: TallyPart, index: number): void {
    this.#measureMargins(ledger, tally, index)
    const measured = this.#measured
    for (let at = 0; at < measured.length; at += 1) {
      this.#measureFigure(measured[at] ?? NaN, e, machine, tally, index)
    }
  }

  /** One pass over the rows, written out: a method that is handed numbers for each of them has them boxed first. */
  #measureMargins(ledger: Ledger, tally: TallyPart, index: number): void {
    const { margin: margins, limitNumbers, count } = ledger
    const { sort, hold } = this.#known
    const { best, bestIndex } = tally
    const least = this.#least
    const brokenHolds = this.brokenHolds
    let worst = Infinity
    let worstCommon = Infinity
    let surplus = Infinity
    let broken = 0
    for (let row = 0; row < count; row += 1) {
      const margin = margins[row] ?? NaN
      const number = limitNumbers[row] ?? 0
      const kind = sort[number] ?? 0
      if (margin < worst && (kind & deciding) !== 0) worst = margin
      if (margin < worstCommon && (kind & common) !== 0) worstCommon = margin
      const place = hold[number] ?? -1
      if (place < 0) continue
      const more = margin - (least[place] ?? 0)
      if (more < surplus) surplus = more
      if (!(margin >= (least[place] ?? 0))) {
        brokenHolds[broken] = place
        broken += 1
      }
      if (comesCloser(margin, best[place] ?? 0, bestIndex[place] ?? -1)) {
        best[place] = margin
        bestIndex[place] = index
      }
    }
    this.worst = worst
    this.worstCommon = worstCommon
    this.surplus = surplus
    this.broken = broken
  }

  #measureFigure(place: number, e: Evaluation, machine: Machine, tally: TallyPart, index: number): void {
    const hold = this.#holds[place]
    if (hold === undefined || hold.type === 'margin') return
    const value = hold.measure.value(e, machine, this.worst)
    let closeness = -Infinity
    let share = -Infinity
    if (Number.isFinite(value)) {
      closeness = hold.type === 'exists' ? 0 : hold.type === 'atLeast' ? value : -value
      share = hold.type === 'exists' ? Infinity : shareOver(hold, value)
    }
    if (share < this.surplus) this.surplus = share
    if (!(share >= 0)) {
      this.brokenHolds[this.broken] = place
      this.broken += 1
    }
    const { best, bestIndex } = tally
    if (!comesCloser(closeness, best[place] ?? 0, bestIndex[place] ?? -1)) return
    best[place] = closeness
    bestIndex[place] = index
  }
}

/** By how much a figure is past its bound on the right side, as a share of the bound. */
function shareOver({ type, bound }: Extract<Hold, { type: 'atLeast' | 'atMost' }>, value: number): number {
  const more = type === 'atLeast' ? value - bound : bound - value
  return more / Math.max(Math.abs(bound), 1e-9) // a bound of 0 has no share; any small number will do
}
