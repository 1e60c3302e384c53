import { keysOf, valueAt } from '../entries/path.ts'
import { caseWords, type CaseName } from '../cases/case.ts'
import type { Evaluated } from '../figures/evaluated.ts'
import type { Working, WorkingStep } from './working.ts'
import { Draft, labelOf } from './draft.ts'

/** Why a number does not exist, and the steps that show it where some can. */
export interface Missing {
  readonly why: string
  readonly show?: (draft: Draft) => void
}

/** One number's working as a description: words, and how its steps are written. */
export interface Subject {
  /** One sentence: what the number is. */
  readonly title: string
  /** A load case, or a state in words. */
  readonly state: string | ((checked: Evaluated) => string)
  /** Standard or book with equation; `common practice, no source`; `assumption`. */
  readonly source: string
  readonly assumptions?: readonly string[]
  /** Null where the number exists. */
  readonly missing?: (checked: Evaluated) => Missing | null
  /** Writes the steps; the last one is the number. */
  readonly write: (draft: Draft) => void
}

/** A load case with its words. */
export function inCase(name: CaseName): string {
  return `${name}: ${caseWords[name]}`
}

/** The state that running figures are worked out in. */
export const running = 'running: at the given charge and temperatures, throttle at its cap'

/**
 * The working of a subject on one build.
 *
 * @param result the engine's own number, in which the last step ends; null where it does not exist
 */
export function written(id: string, subject: Subject, checked: Evaluated, result: number | null): Working {
  const draft = new Draft(checked)
  const missing = subject.missing?.(checked) ?? null
  draft.source(subject.source)
  for (const assumption of subject.assumptions ?? []) draft.assume(assumption)
  if (missing === null) subject.write(draft)
  else missing.show?.(draft)
  return {
    subject: id,
    title: subject.title,
    symbols: draft.symbols,
    steps: missing === null ? endingIn(result, draft.steps) : draft.steps,
    state: typeof subject.state === 'string' ? subject.state : subject.state(checked),
    source: draft.sources.join('; '),
    assumptions: draft.assumptions,
    ...(missing === null ? {} : { missing: missing.why }),
  }
}

/** Algebra and engine may part in the last digit: the result stands as it does everywhere else. */
function endingIn(result: number | null, steps: readonly WorkingStep[]): readonly WorkingStep[] {
  return steps.map((step, at) => (at === steps.length - 1 ? { ...step, value: result } : step))
}

/** The first reason that holds. */
export function firstOf(
  ...reasons: readonly ((checked: Evaluated) => Missing | null)[]
): (checked: Evaluated) => Missing | null {
  return (checked) => {
    for (const reason of reasons) {
      const missing = reason(checked)
      if (missing !== null) return missing
    }
    return null
  }
}

/** Entries without which a number does not exist, told by name; an entry of an absent group is told as the group. */
export function needing(...paths: readonly string[]): (checked: Evaluated) => Missing | null {
  return ({ build }) => {
    const absent = paths.filter((path) => valueAt(build, keysOf(path)) === undefined)
    const told = absent.filter((path) => !absent.some((group) => path.startsWith(`${group}.`)))
    if (told.length === 0) return null
    const names = told.map((path) => `“${labelOf(path)}” (${path})`)
    return { why: `it needs what is not entered: ${names.join(', ')}.` }
  }
}

/** A machine that does not get going has no top speed, nor anything that follows from it. */
export function needingTop({ evaluation }: Evaluated): Missing | null {
  if (evaluation.top.exists) return null
  return {
    why: 'it does not get going: thrust at rest is no more than what holds it back, so there is no top speed.',
    show: (draft) => {
      draft.figure('F_m0', 'startThrustN')
      draft.figure('F_max', 'gripThrustN')
      draft.figure('R_0', 'groundResistanceN')
      draft.step('F_r', ['force', 'thrust at rest'], 'min(F_m0, F_max)')
      const words = 'not above 0: it stays where it is'
      draft.step('F_a', ['force', 'what is left to accelerate'], 'F_r - R_0', words)
    },
  }
}
