import { machineOf } from '../machine/machine.ts'
import type { Machine } from '../machine/parts.ts'
import type { Build } from '../entries/schema.ts'
import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { Ledger, limitAt, worstMargin } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import type { Measure } from '../search/space-measure.ts'
import type { LimitId } from '../limits/id.ts'

/** One machine after the other, worked out as `check` does, in the same memory. */
export class SweptMachine {
  readonly #e = new Evaluation()
  readonly #ledger = new Ledger()
  #machine: Machine | null = null
  /** Worst margin; −Infinity where one can't be formed. */
  worst = NaN

  /** Works out a build that keeps its rules. */
  set(build: Build): void {
    this.#machine = machineOf(build)
    evaluate(this.#e, this.#machine)
    measureLedger(this.#ledger, this.#e, this.#machine)
    this.worst = worstMargin(this.#ledger)
  }

  valueOf(measure: Measure): number {
    return this.#machine === null ? NaN : measure.value(this.#e, this.#machine, this.worst)
  }

  /** The limit with the worst margin, by id where several have it. */
  get worstLimit(): LimitId | null {
    const ids = this.#limitsWhere((margin) => margin === this.worst)
    return ids.toSorted()[0] ?? null
  }

  /** Ids of the limits that a build is over. */
  overAt(build: Build): ReadonlySet<LimitId> {
    this.set(build)
    return new Set(this.#limitsWhere((margin) => !(margin >= 0)))
  }

  #limitsWhere(fits: (margin: number) => boolean): LimitId[] {
    const ledger = this.#ledger
    return Array.from({ length: ledger.count }, (_, row) => row).flatMap((row) =>
      fits(ledger.margin[row] ?? NaN) ? (limitAt(ledger, row)?.id ?? []) : [],
    )
  }
}
