import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { figureTable } from '../figures/table.ts'
import { Ledger } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import { Candidates } from './candidates.ts'
import { GrowingFront } from './pareto.ts'
import { HoldMeter } from './holds.ts'
import { SearchMap, type MapPart, type MapSpan } from './map.ts'
import { coarse } from './order.ts'
import { Shortlist, type FoldedRow } from './rows.ts'
import { emptyTally, type TallyPart, wordsFor } from './tally.ts'
import { spanOf } from './span.ts'
import type { Measure } from './space-measure.ts'
import type { Aim, SearchPlan } from './space.ts'

/** Points of a front, as typed lists: less is better in both. */
interface FrontPart {
  readonly first: Float64Array
  readonly second: Float64Array
  readonly index: Float64Array
}

/** What some of a search's candidates gave; plain data that crosses threads. */
export interface SearchPart {
  readonly tally: TallyPart
  /** Best first; empty where there are two aims. */
  readonly rows: readonly FoldedRow[]
  /** Where there are two aims. */
  readonly front: FrontPart | null
  readonly map: MapPart
  readonly span: MapSpan
}

/** Numbers in a row's key: two of the order, then every figure. */
export const keyLength = 2 + figureTable.length

/** A figure as an aim orders it: less is better; what does not exist comes last. */
export function orderOf(aim: Aim, value: number): number {
  if (!Number.isFinite(value)) return Infinity
  return coarse(aim.best === 'least' ? value : -value)
}

/**
 * Looks at the candidates that it is given, and keeps what matters of them: the best, the front, the map, and how
 * they fare with what they have to hold. What all of a search's parts say together does not depend on how its
 * candidates were dealt out.
 *
 * *Source:* `docs/model.md` §10; each candidate's numbers are those of `check`.
 */
export class Searcher {
  readonly #plan: SearchPlan
  readonly #candidates: Candidates
  readonly #e: Evaluation
  /** For the figures of a row that is kept: all of them, whatever the search asks for. */
  readonly #whole: Evaluation
  readonly #ledger = new Ledger()
  readonly #meter: HoldMeter
  readonly #span: MapSpan
  // Taken apart once: a candidate costs a few microseconds, and lists are slow to take apart.
  readonly #first: Aim | undefined
  readonly #second: Aim | undefined
  readonly #across: Measure
  readonly #up: Measure
  readonly #map: SearchMap
  readonly #key = new Float64Array(keyLength)
  #tally: TallyPart
  #rows: Shortlist
  #front: GrowingFront | null
  /** Whether any candidate of this searcher holds everything: pairs that never hold together are then no matter. */
  #anyHolding = false
  /** For each hold a bit, set where the candidate holds it. */
  readonly #held: Uint32Array
  /** What the candidate held whose pairs were noted last; nothing before the first one of a part. */
  readonly #noted: Uint32Array

  constructor(plan: SearchPlan) {
    this.#plan = plan
    this.#e = new Evaluation(plan.mishaps)
    this.#whole = plan.mishaps ? this.#e : new Evaluation()
    ;[this.#first, this.#second] = plan.aims
    ;[this.#across, this.#up] = plan.map
    this.#candidates = new Candidates(plan)
    this.#meter = new HoldMeter(plan.holds)
    this.#span = spanOf(plan)
    this.#map = new SearchMap(this.#span)
    this.#tally = emptyTally(plan.holds.length)
    this.#held = new Uint32Array(wordsFor(plan.holds.length))
    this.#noted = new Uint32Array(wordsFor(plan.holds.length))
    this.#rows = new Shortlist(plan.keep)
    this.#front = plan.aims.length === 2 ? new GrowingFront() : null
  }

  /** Looks at the candidates `from` to `to − 1`. */
  look(from: number, to: number): void {
    for (let index = from; index < to; index += 1) {
      const reason = this.#candidates.set(index)
      if (reason < 0) this.#weigh(index)
      else this.#countUnsound(reason, index)
    }
  }

  /** What was found since the last time. */
  take(): SearchPart {
    this.#front?.settle()
    const part: SearchPart = {
      tally: this.#tally,
      rows: this.#rows.rows,
      front: this.#front && {
        first: this.#front.first,
        second: this.#front.second,
        index: this.#front.index,
      },
      map: this.#map.part(),
      span: this.#span,
    }
    this.#tally = emptyTally(this.#plan.holds.length)
    this.#noted.fill(0)
    this.#rows = new Shortlist(this.#plan.keep)
    this.#front = this.#front && new GrowingFront()
    this.#map.clear()
    return part
  }

  #weigh(index: number): void {
    const { machine } = this.#candidates
    const e = this.#e
    const meter = this.#meter
    evaluate(e, machine)
    measureLedger(this.#ledger, e, machine)
    meter.measure(this.#ledger, e, machine, this.#tally, index)
    const holds = meter.broken === 0
    this.#count(index)
    const worst = meter.worst
    this.#map.add(
      this.#across.value(e, machine, worst),
      this.#up.value(e, machine, worst),
      index,
      worst,
      holds,
    )
    if (holds) this.#rank(index)
  }

  /** Counts a candidate with what it holds and breaks. */
  #count(index: number): void {
    const tally = this.#tally
    const meter = this.#meter
    tally.sound += 1
    if (meter.broken === 0) {
      tally.holding += 1
      this.#anyHolding = true
    } else {
      this.#countBroken()
    }
    const { surplus } = meter
    if (tally.closestIndex < 0 || (surplus > tally.closest && coarse(surplus) > coarse(tally.closest))) {
      tally.closest = surplus
      tally.closestIndex = index
    }
  }

  #countBroken(): void {
    const { breaking, breakingAlone } = this.#tally
    const { brokenHolds, broken } = this.#meter
    for (let at = 0; at < broken; at += 1) {
      const hold = brokenHolds[at] ?? NaN
      breaking[hold] = (breaking[hold] ?? 0) + 1
    }
    if (broken === 1) {
      const hold = brokenHolds[0] ?? NaN
      breakingAlone[hold] = (breakingAlone[hold] ?? 0) + 1
    }
    if (!this.#anyHolding) this.#noteHeld()
  }

  /** Notes which holds are held together: asked for only as long as no candidate holds all. */
  #noteHeld(): void {
    const held = this.#held
    const { brokenHolds, broken } = this.#meter
    held.fill(0xffffffff)
    for (let at = 0; at < broken; at += 1) {
      const hold = brokenHolds[at] ?? 0
      held[hold >> 5] = (held[hold >> 5] ?? 0) & ~(1 << (hold & 31))
    }
    if (this.#isPatternNew(held)) this.#notePairs(held, this.#plan.holds.length)
  }

  /** Whether other holds are held than by the candidate counted before: neighbours mostly hold the same. */
  #isPatternNew(held: Uint32Array): boolean {
    const noted = this.#noted
    let isNew = false
    for (let word = 0; word < held.length; word += 1) {
      isNew ||= noted[word] !== held[word]
      noted[word] = held[word] ?? 0
    }
    return isNew
  }

  #notePairs(held: Uint32Array, holds: number): void {
    const { together } = this.#tally
    const words = held.length
    for (let hold = 0; hold < holds; hold += 1) {
      if ((((held[hold >> 5] ?? 0) >>> (hold & 31)) & 1) === 0) continue
      for (let word = 0; word < words; word += 1) {
        const at = hold * words + word
        together[at] = (together[at] ?? 0) | (held[word] ?? 0)
      }
    }
  }

  #countUnsound(reason: number, index: number): void {
    const mistake = this.#candidates.broken[reason]?.mistake
    if (mistake === undefined) throw new Error(`no rule ${reason}`)
    const known = this.#tally.unsound.find((rule) => rule.mistake === mistake)
    if (known === undefined) this.#tally.unsound.push({ mistake, count: 1, index })
    else known.count += 1
  }

  /** Offers a candidate that holds everything to the best rows by the first aim, and to the front where there are two. */
  #rank(index: number): void {
    const { machine } = this.#candidates
    const first = this.#first
    const second = this.#second
    const e = this.#e
    const worst = this.#meter.worst
    if (first === undefined) return
    const order = orderOf(first, first.measure.value(e, machine, worst))
    if (second !== undefined) {
      this.#front?.add(order, orderOf(second, second.measure.value(e, machine, worst)), index)
    }
    const inHand = -coarse(this.#meter.worstCommon)
    if (!this.#rows.mayTake(order, inHand)) return
    const whole = this.#whole
    if (whole !== e) evaluate(whole, machine)
    setKey(this.#key, order, inHand, whole, machine)
    this.#rows.add(this.#key, index, worst)
  }
}

/**
 * Fills the key of a row: the aim, of equal ones the most in hand over limits that do not depend on which reduction has
 * which wheel, then every figure, the overall ratio first.
 */
export function setKey(
  key: Float64Array,
  order: number,
  inHand: number,
  e: Evaluation,
  machine: Candidates['machine'],
): void {
  key[0] = order
  key[1] = inHand
  figureTable.forEach((figure, at) => (key[2 + at] = coarse(figure.value(e, machine))))
}
