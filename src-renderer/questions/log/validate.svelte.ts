import { completeBuild } from '../../../shared-engine/index.ts'
import type { TracedValidation } from '../../../shared-engine/validate/validate.ts'
import { Following, type Held } from '../../state/following.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'
import { threads } from '../../workers/client.ts'
import { heldLater } from './held-later.ts'
import { FitWork } from './fit.svelte.ts'
import { LogWork } from './log.svelte.ts'

const nothingHeld: Held = { stop: () => {}, drop: () => {} }

/** *The build against this run*: predicted and measured, with bands. */
export class ValidateWork implements QuestionState {
  readonly work: Following<TracedValidation>
  /** Whether a person wants it: it takes seconds. */
  wanted = $state.raw(false)

  constructor(workspace: Workspace) {
    // Asked for each time: the states of a question are made one after the other.
    const log = () => workspace.of(LogWork)
    const fit = () => workspace.of(FitWork)
    this.work = new Following<TracedValidation>(
      () => [workspace.session.stored, log().log, fit().inAir],
      ({ progress, ended }) => {
        const opened = log().log
        if (opened === null) {
          ended('finished', null)
          return nothingHeld
        }
        const { bytes, choice } = opened
        const input = {
          build: completeBuild(workspace.session.stored),
          bytes,
          choice,
          inAir: fit().inAir,
        }
        return heldLater(
          import('../../../shared-engine/jobs/validate.ts'),
          ({ validateJob }) =>
            threads.start('validate', validateJob, input, {
              progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
              ended: ({ end, outcome }) => ended(end.type, outcome),
            }),
          () => ended('stopped', null),
        )
      },
    )
  }

  forget(): void {
    this.work.forget()
  }
}
