import { withEntry } from '../entries/edit.ts'
import type { StoredBuild } from '../entries/schema.ts'

/**
 * A build with another motor: the whole group. Tolerances and origins of the old one's entries go with it, since they
 * speak of numbers that are no longer there.
 */
export function withMotor(stored: StoredBuild, motor: unknown): StoredBuild {
  return withEntry(withEntry(stored, 'motor', undefined), 'motor', motor)
}

/** A build with the entries of a candidate. */
export function withChoices(stored: StoredBuild, choices: readonly CandidateChoice[]): StoredBuild {
  return choices.reduce(
    (build, { path, value, motor }) =>
      motor === null ? withEntry(build, path, value) : withMotor(build, motor.motor),
    stored,
  )
}

/** One varied entry of a candidate: its value, or the motor chosen. */
export interface CandidateChoice {
  readonly path: string
  readonly label: string
  /** In the entry's bench unit; the place in the list of motors where that is varied. */
  readonly value: number
  readonly motor: { readonly name: string; readonly motor: unknown } | null
}
