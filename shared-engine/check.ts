import { machineOf } from './machine/machine.ts'
import type { Build } from './entries/schema.ts'
import { evaluate } from './cases/evaluate.ts'
import { Evaluation } from './cases/evaluation.ts'
import type { Evaluated } from './figures/evaluated.ts'
import { figuresOf } from './figures/table.ts'
import { Ledger, ledgerRows, type LimitRow } from './limits/ledger.ts'
import { measureLedger } from './limits/measure.ts'
import { notesOf } from './notes.ts'

/** A build worked out: figures, limits and what there is to say about them. */
export interface Checked extends Evaluated {
  readonly name: string
  /** Worst margin first. */
  readonly limits: readonly LimitRow[]
  /** Sentences about what the numbers leave out or lean on. */
  readonly notes: readonly string[]
}

/**
 * Works out a build: every figure and every limit of `docs/model.md`.
 *
 * @param build read and complete
 * @returns SI numbers; a figure that does not exist is null
 * *Source:* `docs/model.md` §§2 to 8 and 12.
 */
export function check(build: Build): Checked {
  const machine = machineOf(build)
  const evaluation = new Evaluation()
  evaluate(evaluation, machine)
  const ledger = new Ledger()
  measureLedger(ledger, evaluation, machine)
  const limits = ledgerRows(ledger)
  return {
    name: build.name,
    figures: figuresOf(evaluation, machine),
    limits,
    notes: notesOf(build, machine, evaluation),
    build,
    machine,
    evaluation,
  }
}
