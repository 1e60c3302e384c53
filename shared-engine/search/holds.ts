import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { isDecisive } from '../limits/group.ts'
import { limitAt, type Ledger } from '../limits/ledger.ts'
import type { Limit } from '../limits/limit.ts'
import type { Hold } from './space-hold.ts'
import { wordsFor } from './tally.ts'

/** How one candidate fares with what it has to hold; filled again and again. */
export class HoldMeter {
  /** Worst margin of ordinary use, which mishaps are no part of, and of it without the reductions' own limits. */
  worst = Infinity
  worstCommon = Infinity
  /** How many holds are broken, and the one where it is a single one. */
  broken = 0
  brokenHold = -1
  /** Least surplus over all holds: a margin's, or a figure's as a share of its bound; below 0 where one is broken. */
  surplus = Infinity
  /** For each hold, how close the candidate comes: margin, or figure with the sign that makes more better; NaN: not asked. */
  readonly closeness: Float64Array
  /** For each hold a bit, set where it is held. */
  readonly held: Uint32Array
  readonly #holds: readonly Hold[]
  readonly #places: ReadonlyMap<Limit, number>
  readonly #least: Float64Array
  /** Holds on figures, by place. */
  readonly #measured: readonly number[]
  /** Of each row of the ledger before: its limit, its hold (−1: none), whether it decides and is no reduction's. */
  readonly #limits: Limit[] = []
  readonly #holdAt: number[] = []
  readonly #decides: boolean[] = []
  readonly #common: boolean[] = []

  constructor(holds: readonly Hold[]) {
    this.#holds = holds
    this.#places = new Map(
      holds.flatMap((hold, place) => (hold.type === 'margin' ? [[hold.limit, place] as const] : [])),
    )
    this.#least = Float64Array.from(holds, (hold) => (hold.type === 'margin' ? hold.least : NaN))
    this.#measured = holds.flatMap((hold, place) => (hold.type === 'margin' ? [] : [place]))
    this.closeness = new Float64Array(holds.length)
    this.held = new Uint32Array(wordsFor(holds.length))
  }

  /** Measures a candidate that was evaluated. */
  measure(ledger: Ledger, e: Evaluation, machine: Machine): void {
    this.worst = this.worstCommon = this.surplus = Infinity
    this.broken = 0
    this.closeness.fill(NaN)
    this.held.fill(0xffffffff)
    this.#measureMargins(ledger)
    for (const place of this.#measured) this.#measureFigure(place, e, machine)
  }

  #measureMargins(ledger: Ledger): void {
    for (let row = 0; row < ledger.count; row += 1) {
      const margin = ledger.margin[row] ?? NaN
      const limit = limitAt(ledger, row)
      if (limit === undefined) continue
      if (this.#limits[row] !== limit) this.#learn(row, limit)
      if (this.#decides[row] === true && margin < this.worst) this.worst = margin
      if (this.#common[row] === true && margin < this.worstCommon) this.worstCommon = margin
      const place = this.#holdAt[row] ?? -1
      if (place < 0) continue
      const least = this.#least[place] ?? 0
      this.#note(place, margin, margin - least, margin >= least)
    }
  }

  /** The ledger's rows are the same for most candidates: what belongs to a row is looked up when it changes. */
  #learn(row: number, limit: Limit): void {
    this.#limits[row] = limit
    this.#holdAt[row] = this.#places.get(limit) ?? -1
    this.#decides[row] = isDecisive(limit.group)
    this.#common[row] = isDecisive(limit.group) && !limit.part.startsWith('stage.')
  }

  #measureFigure(place: number, e: Evaluation, machine: Machine): void {
    const hold = this.#holds[place]
    if (hold === undefined || hold.type === 'margin') return
    const value = hold.measure.value(e, machine, this.worst)
    if (!Number.isFinite(value)) return this.#note(place, -Infinity, -Infinity, false)
    if (hold.type === 'exists') return this.#note(place, 0, Infinity, true)
    const more = hold.type === 'atLeast' ? value - hold.bound : hold.bound - value
    const share = more / Math.max(Math.abs(hold.bound), 1e-9) // a bound of 0 has no share; any small number will do
    this.#note(place, hold.type === 'atLeast' ? value : -value, share, more >= 0)
  }

  #note(place: number, closeness: number, surplus: number, isHeld: boolean): void {
    this.closeness[place] = closeness
    if (surplus < this.surplus) this.surplus = surplus
    if (isHeld) return
    this.broken += 1
    this.brokenHold = place
    const word = place >> 5
    this.held[word] = (this.held[word] ?? 0) & ~(1 << (place & 31))
  }
}
