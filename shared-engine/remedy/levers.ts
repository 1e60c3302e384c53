import { placesOf } from '../entries/condition.ts'
import { entryTable } from '../entries/fields.ts'
import type { LeverFacts } from '../entries/rows/row.ts'
import type { Build } from '../entries/schema.ts'

/** An entry that a builder can change in the workshop or buy otherwise. */
export interface Lever extends LeverFacts {
  readonly path: string
}

/**
 * The entries that a builder can change on this machine, as their rows say. The factor for shock (`service.factor`) is
 * none of them: taking it lower changes no part.
 */
export function leversOf(build: Build): readonly Lever[] {
  return [...entryTable.fields].flatMap(([pattern, field]) =>
    field.lever === undefined
      ? []
      : placesOf(pattern, field, build).map((path) => ({ path, ...field.lever })),
  )
}
