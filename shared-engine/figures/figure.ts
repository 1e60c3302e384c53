import type { Machine } from '../build/machine-parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { QuantityKind } from '../units/kinds.ts'

/** One number that `check` owes: its name in the output, its words, and where it is read. */
export interface Figure {
  /** Key of the command line's JSON; a unit in it is the figure's own. */
  readonly name: string
  /** In a builder's words: "Top speed". */
  readonly label: string
  readonly kind: QuantityKind
  /** NaN where it does not exist. */
  value(e: Evaluation, machine: Machine): number
}
