import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { isDecisive } from '../limits/group.ts'
import { mostRows, type Ledger } from '../limits/ledger.ts'
import { limitOfNumber, type Limit } from '../limits/limit.ts'
import type { Hold } from './space-hold.ts'
import { wordsFor } from './tally.ts'

/** Of a row by its limit: it decides; it decides and is no reduction's. */
const deciding = 1
const common = 2

/** What a meter knows of the rows of the ledger before, in lists of numbers: they are read for every candidate. */
class KnownRows {
  /** `Limit.number`; one that no limit has where nothing is known. */
  readonly limit = new Uint16Array(mostRows).fill(0xffff)
  /** {@link deciding} and {@link common}. */
  readonly sort = new Uint8Array(mostRows)
  /** Place of its hold, −1 where there is none, and the least margin that it asks for. */
  readonly hold = new Int16Array(mostRows)
  readonly least = new Float64Array(mostRows)
}

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
  readonly #known = new KnownRows()

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

  /** Written out where it counts: a method that is handed numbers has them boxed first. */
  #measureMargins(ledger: Ledger): void {
    const { margin: margins, limitNumbers, count } = ledger
    const { limit, sort, hold, least } = this.#known
    const { closeness } = this
    let worst = Infinity
    let worstCommon = Infinity
    let surplus = Infinity
    for (let row = 0; row < count; row += 1) {
      const margin = margins[row] ?? NaN
      if (limit[row] !== limitNumbers[row]) this.#learn(row, limitNumbers[row] ?? NaN)
      const kind = sort[row] ?? 0
      if (margin < worst && (kind & deciding) !== 0) worst = margin
      if (margin < worstCommon && (kind & common) !== 0) worstCommon = margin
      const place = hold[row] ?? -1
      if (place < 0) continue
      closeness[place] = margin
      const more = margin - (least[row] ?? 0)
      if (more < surplus) surplus = more
      if (!(margin >= (least[row] ?? 0))) this.#break(place)
    }
    this.worst = worst
    this.worstCommon = worstCommon
    this.surplus = surplus
  }

  /** The ledger's rows are the same for most candidates: what belongs to a row is looked up when it changes. */
  #learn(row: number, number: number): void {
    const limit = limitOfNumber(number)
    if (limit === undefined) throw new Error(`no limit ${number}`)
    const place = this.#places.get(limit) ?? -1
    const decides = isDecisive(limit.group)
    const known = this.#known
    known.limit[row] = number
    known.sort[row] = decides ? (limit.part.startsWith('stage.') ? deciding : deciding | common) : 0
    known.hold[row] = place
    known.least[row] = this.#least[place] ?? 0
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
    if (!isHeld) this.#break(place)
  }

  #break(place: number): void {
    this.broken += 1
    this.brokenHold = place
    const word = place >> 5
    this.held[word] = (this.held[word] ?? 0) & ~(1 << (place & 31))
  }
}
