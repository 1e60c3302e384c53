import type { Evaluation } from '../cases/evaluation.ts'
import type { Build } from '../entries/schema.ts'
import type { Machine } from '../machine/parts.ts'
import type { Figures } from './table.ts'

/** A build with the numbers that follow from it, before any limit is looked at: all that workings are written from. */
export interface Evaluated {
  readonly build: Build
  readonly machine: Machine
  readonly evaluation: Evaluation
  readonly figures: Figures
}
