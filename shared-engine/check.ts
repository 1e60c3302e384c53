import { machineOf } from './machine/machine.ts'
import type { Build } from './entries/schema.ts'
import { evaluate } from './cases/evaluate.ts'
import { Evaluation } from './cases/evaluation.ts'
import type { Evaluated } from './figures/evaluated.ts'
import { figuresOf } from './figures/table.ts'
import { Ledger, ledgerRows, type LimitRow } from './limits/ledger.ts'
import { measureLedger } from './limits/measure.ts'
import { notJudgedOf, type NotJudged } from './limits/not-judged.ts'
import { stageShapes } from './limits/stage.ts'
import { notesOf } from './notes.ts'

/** A build worked out: figures, limits and what there is to say about them. */
export interface Checked extends Evaluated {
  readonly name: string
  /** By group, worst margin first. */
  readonly limits: readonly LimitRow[]
  /** Limits that could apply and lack an entry, by id. */
  readonly notJudged: readonly NotJudged[]
  /** What the shape of each reduction decides, in the unit that a name ends with. */
  readonly stages: readonly Readonly<Record<string, number | null>>[]
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
    notJudged: notJudgedOf({ build, machine, evaluation }, limits),
    stages: stageShapes(machine, evaluation),
    notes: notesOf(build, machine, evaluation),
    build,
    machine,
    evaluation,
  }
}
