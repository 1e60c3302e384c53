import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import type { QuantityKind } from '../units/kinds.ts'

/** One number that `check` owes: its name in the output, its words, and how to read it alone. */
export interface Figure<Name extends string = string> {
  /** Key of the command line's JSON; a unit in it is the figure's own. */
  readonly name: Name
  /** In a builder's words: "Top speed". */
  readonly label: string
  readonly kind: QuantityKind
  /** Whether only jams decide it: an evaluation without mishaps does not have it. */
  readonly ofMishaps: boolean
  /** NaN where it does not exist. */
  value(e: Evaluation, machine: Machine): number
}

/** Fills the figures of one subject from an evaluation; NaN where one does not exist. */
type SetFigures<Values> = (values: Values, e: Evaluation, machine: Machine) => void

/**
 * The rows of one subject's figures.
 *
 * @param values a struct of the subject, kept to read single figures through
 * @param set fills it
 * @param rows for every figure of the struct its words and kind, in the order of the output
 * @param ofMishaps whether only jams decide them
 */
export function figureRows<Values extends { [Name in keyof Values]: number }>(
  values: Values,
  set: SetFigures<Values>,
  rows: { readonly [Name in keyof Values & string]: readonly [label: string, kind: QuantityKind] },
  ofMishaps = false,
): readonly Figure<keyof Values & string>[] {
  const names = Object.keys(rows) as (keyof Values & string)[]
  return names.map((name) => ({
    name,
    label: rows[name][0],
    kind: rows[name][1],
    ofMishaps,
    value: (e, machine) => {
      set(values, e, machine)
      return values[name]
    },
  }))
}
