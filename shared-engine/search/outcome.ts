import type { Mistake } from '../mistakes/mistake.ts'
import type { CandidateChoice } from './candidate-build.ts'
import { GrowingFront } from './pareto.ts'
import type { SearchPart } from './search.ts'
import { SearchMap, type MapPart } from './map.ts'
import { RowMaker, type SearchRow } from './row.ts'
import { Shortlist } from './rows.ts'
import { spanOf } from './span.ts'
import { addTally, emptyTally, pairsNeverTogether, type TallyPart } from './tally.ts'
import type { Hold } from './space-hold.ts'
import { choicesOf, type SearchPlan } from './space.ts'

/** How a search's candidates fare with one thing that they have to hold. */
export interface HoldReport {
  readonly hold: Hold
  /** Candidates that break it, and those that break nothing else. */
  readonly breaking: number
  readonly breakingAlone: number
  /** The best that any candidate comes to: a margin or the figure; null where it never exists. */
  readonly best: number | null
  /** A candidate that does. */
  readonly bestChoices: readonly CandidateChoice[]
}

/** What a search found, whole or so far. */
export interface SearchOutcome {
  /** Candidates looked at; of these valid builds; of these holding everything. */
  readonly looked: number
  readonly sound: number
  readonly holding: number
  /** One aim: best first. Two: along the front, spread over it where it is longer than the rows kept; then runners-up. */
  readonly rows: readonly SearchRow[]
  /** Rows after those of the front: the next best in the first aim; 0 where the front is long enough, or one aim. */
  readonly runnersUp: number
  /** Points of the whole front with different aims; 0 where there is one aim. */
  readonly frontCount: number
  /** The front's candidates with the aims' values, for the map; empty where there is one aim. */
  readonly front: {
    readonly index: Float64Array
    readonly first: Float64Array
    readonly second: Float64Array
  }
  /** The candidates gathered in cells. */
  readonly map: MapPart
  /** Those that some candidate is asked to hold. */
  readonly holds: readonly HoldReport[]
  /** Where nothing holds: pairs of holds that candidates hold singly and never together. */
  readonly neverTogether: readonly (readonly [Hold, Hold])[]
  /** Where nothing holds: the candidate that falls short by the least. */
  readonly closest: SearchRow | null
  /** Candidates that are no valid build, by rule. */
  readonly unsound: readonly { readonly mistake: Mistake; readonly count: number }[]
}

/** Candidates with equal aims that are looked at for the same figures; a front rarely has more. */
const mostEqual = 200

/** A front of fewer points is followed by the next best: aims that do not conflict would leave a single row. */
const fewestRows = 8

/** Puts the parts of a search together. */
export class SearchGathering {
  readonly #plan: SearchPlan
  readonly #maker: RowMaker
  readonly #tally: TallyPart
  readonly #rows: Shortlist
  readonly #front = new GrowingFront()
  #map: SearchMap | null = null

  constructor(plan: SearchPlan) {
    this.#plan = plan
    this.#maker = new RowMaker(plan)
    this.#tally = emptyTally(plan.holds.length)
    this.#rows = new Shortlist(plan.keep)
  }

  add(part: SearchPart): void {
    addTally(this.#tally, part.tally)
    for (const row of part.rows) this.#rows.addRow(row)
    part.front?.index.forEach((index, at) =>
      this.#front.add(part.front?.first[at] ?? NaN, part.front?.second[at] ?? NaN, index),
    )
    this.#map ??= new SearchMap(part.span)
    this.#map.addPart(part.map)
  }

  /** All that is in as one part, which another gathering can add: the answer is the same to the bit. */
  gathered(): SearchPart {
    this.#front.settle()
    const map = this.#map ?? new SearchMap(spanOf(this.#plan))
    const { first, second, index } = this.#front
    return {
      tally: this.#tally,
      rows: this.#rows.rows,
      front: this.#plan.aims.length === 2 ? { first, second, index } : null,
      map: map.part(),
      span: map.span,
    }
  }

  outcome(): SearchOutcome {
    const [tally, plan] = [this.#tally, this.#plan]
    const points = this.#frontPoints()
    const unsound = tally.unsound.toSorted((one, other) => one.index - other.index)
    const nothing = tally.holding === 0
    const front = this.#frontRows(points)
    const runnersUp = this.#runnersUp(front.length)
    return {
      looked: tally.sound + unsound.reduce((sum, rule) => sum + rule.count, 0),
      sound: tally.sound,
      holding: tally.holding,
      rows:
        plan.aims.length === 2
          ? [...front, ...runnersUp]
          : this.#rows.rows.map((row) => this.#maker.rowOfFolded(row)),
      runnersUp: runnersUp.length,
      frontCount: points.length,
      front: this.#frontLists(),
      map: (this.#map ?? new SearchMap({ low: [0, 0], high: [1, 1] })).part(),
      holds: plan.holds.flatMap((hold, place) => this.#report(hold, place) ?? []),
      neverTogether: nothing ? this.#neverTogether() : [],
      closest: nothing && tally.closestIndex >= 0 ? this.#maker.rowOf(tally.closestIndex) : null,
      unsound: unsound.map(({ mistake, count }) => ({ mistake, count })),
    }
  }

  #report(hold: Hold, place: number): HoldReport | null {
    const tally = this.#tally
    const index = tally.bestIndex[place] ?? -1
    if (index < 0) return null
    const best = tally.best[place] ?? -Infinity
    const value = hold.type === 'atMost' ? -best : best
    return {
      hold,
      breaking: tally.breaking[place] ?? 0,
      breakingAlone: tally.breakingAlone[place] ?? 0,
      best: Number.isFinite(value) && hold.type !== 'exists' ? value : null,
      bestChoices: choicesOf(this.#plan, index),
    }
  }

  #neverTogether(): (readonly [Hold, Hold])[] {
    const { holds } = this.#plan
    return pairsNeverTogether(this.#tally).flatMap(([one, other]) => {
      const [first, second] = [holds[one], holds[other]]
      return first === undefined || second === undefined ? [] : [[first, second] as const]
    })
  }

  /** Places in the front at which a point with other aims begins. */
  #frontPoints(): number[] {
    if (this.#plan.aims.length < 2) return []
    this.#front.settle()
    const { first, second, count } = this.#front
    const starts: number[] = []
    for (let at = 0; at < count; at += 1) {
      if (at === 0 || first[at] !== first[at - 1] || second[at] !== second[at - 1]) starts.push(at)
    }
    return starts
  }

  #frontRows(starts: readonly number[]): SearchRow[] {
    const { keep } = this.#plan
    const last = starts.length - 1
    const shown =
      starts.length <= keep
        ? starts.map((_, rank) => rank)
        : Array.from({ length: keep }, (_, row) => Math.round((row * last) / Math.max(1, keep - 1)))
    return shown.flatMap((rank) => {
      const from = starts[rank] ?? 0
      const to = Math.min(starts[rank + 1] ?? this.#front.count, from + mostEqual)
      return this.#maker.folded([...this.#front.index.subarray(from, to)])
    })
  }

  /** The best by the first aim that are not on the front, as many as a short list of its own lacks. */
  #runnersUp(already: number): SearchRow[] {
    const lacking = Math.min(fewestRows, this.#plan.keep) - already
    if (this.#plan.aims.length < 2 || already === 0 || lacking <= 0) return []
    const { index, count } = this.#front
    const onFront = new Set(index.subarray(0, count))
    return this.#rows.rows
      .filter((row) => !row.members.some((member) => onFront.has(member)))
      .slice(0, lacking)
      .map((row) => this.#maker.rowOfFolded(row))
  }

  #frontLists(): SearchOutcome['front'] {
    const [first, second] = this.#plan.aims
    const { count } = this.#front
    const signed = (list: Float64Array, best: string | undefined) =>
      list.slice(0, count).map((value) => (best === 'most' ? -value : value))
    return {
      index: this.#front.index.slice(0, second === undefined ? 0 : count),
      first: second === undefined ? new Float64Array() : signed(this.#front.first, first?.best),
      second: second === undefined ? new Float64Array() : signed(this.#front.second, second.best),
    }
  }
}
