import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { figuresOf, type Figures } from '../figures/table.ts'
import { Ledger, ledgerRows, worstMargin, type LimitRow } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import { finiteOrNull } from '../numeric/finite.ts'
import type { CandidateChoice } from './candidate-build.ts'
import { Candidates } from './candidates.ts'
import { keyLength, orderOf, setKey } from './search.ts'
import { coarse } from './order.ts'
import { HoldMeter } from './holds.ts'
import { mostAlternatives, Shortlist, type FoldedRow } from './rows.ts'
import { emptyTally } from './tally.ts'
import { choicesOf, type SearchPlan } from './space.ts'

/** A row of a search as shown: a candidate with everything that `check` says of it. */
export interface SearchRow {
  /** Number of the candidate; `candidateBuild` makes its build. */
  readonly index: number
  readonly choices: readonly CandidateChoice[]
  /** The aims' values, in their order. */
  readonly aims: readonly (number | null)[]
  /** Worst margin; null where one can't be formed. */
  readonly margin: number | null
  readonly figures: Figures
  /** Worst first. */
  readonly limits: readonly LimitRow[]
  readonly alternatives: Alternatives
}

/** Other candidates with the same overall ratio and the same figures. */
interface Alternatives {
  readonly count: number
  /** The first of them, by number. */
  readonly choices: readonly (readonly CandidateChoice[])[]
}

const none: Alternatives = { count: 0, choices: [] }

/** Makes rows of candidates: works them out again, since a search keeps no figures. */
export class RowMaker {
  readonly #plan: SearchPlan
  readonly #candidates: Candidates
  readonly #e = new Evaluation()
  readonly #ledger = new Ledger()
  readonly #made = new Map<number, SearchRow>()

  constructor(plan: SearchPlan) {
    this.#plan = plan
    this.#candidates = new Candidates(plan)
  }

  /** The row of a candidate whose build breaks no rule. */
  rowOf(index: number, alternatives: Alternatives = none): SearchRow {
    const known = this.#made.get(index)
    if (known !== undefined) return { ...known, alternatives }
    const worst = this.#work(index)
    const { machine } = this.#candidates
    const row: SearchRow = {
      index,
      choices: choicesOf(this.#plan, index),
      aims: this.#plan.aims.map(({ measure }) => finiteOrNull(measure.value(this.#e, machine, worst))),
      margin: finiteOrNull(worst),
      figures: figuresOf(this.#e, machine),
      limits: ledgerRows(this.#ledger),
      alternatives,
    }
    this.#made.set(index, row)
    return row
  }

  /** The row of folded candidates. */
  rowOfFolded(row: FoldedRow): SearchRow {
    const others = row.members.filter((member) => member !== row.index).slice(0, mostAlternatives)
    const choices = others.map((member) => choicesOf(this.#plan, member))
    return this.rowOf(row.index, { count: row.count - 1, choices })
  }

  /** Folds candidates with equal aims: those whose figures are the same too are one row, most in hand first. */
  folded(indices: readonly number[]): SearchRow[] {
    const list = new Shortlist(indices.length)
    const key = new Float64Array(keyLength)
    const meter = new HoldMeter(this.#plan.holds)
    const tally = emptyTally(this.#plan.holds.length)
    const [first] = this.#plan.aims
    for (const index of indices) {
      const worst = this.#work(index)
      const { machine } = this.#candidates
      meter.measure(this.#ledger, this.#e, machine, tally, index)
      const order = first === undefined ? 0 : orderOf(first, first.measure.value(this.#e, machine, worst))
      setKey(key, order, -coarse(meter.worstCommon), this.#e, machine)
      list.add(key, index, worst)
    }
    return list.rows.map((row) => this.rowOfFolded(row))
  }

  #work(index: number): number {
    if (this.#candidates.set(index) >= 0) throw new Error(`candidate ${index} is no valid build`)
    evaluate(this.#e, this.#candidates.machine)
    measureLedger(this.#ledger, this.#e, this.#candidates.machine)
    return worstMargin(this.#ledger)
  }
}
