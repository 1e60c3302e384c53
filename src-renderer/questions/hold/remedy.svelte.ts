import { worstRow } from '../../../shared-engine/limits/worst.ts'
import { completeBuild, withEntry } from '../../../shared-engine/index.ts'
import type { Remedies, Remedy } from '../../../shared-engine/remedy/remedy.ts'
import { remedyJob } from '../../../shared-engine/jobs/remedy.ts'
import { changeName } from '../../fields/edits.ts'
import { threads } from '../../workers/client.ts'
import { Following } from '../../state/following.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'
import type { LimitId } from '../../../shared-engine/limits/id.ts'

/** *What would hold*: the least change of each entry that brings a limit to 20 % in hand. */
export class RemedyWork implements QuestionState {
  readonly #workspace: Workspace
  /** The limit that was asked for; null: the one chosen in the ledger, or the worst. */
  asked = $state.raw<LimitId | null>(null)
  readonly work: Following<Remedies>

  constructor(workspace: Workspace) {
    this.#workspace = workspace
    this.work = new Following<Remedies>(
      () => [workspace.session.stored, this.limit],
      ({ ended }) =>
        threads.start(
          'remedy',
          remedyJob,
          { build: completeBuild(workspace.session.stored), limit: this.limit },
          { ended: ({ end, outcome }) => ended(end.type, outcome) },
        ),
    )
  }

  /** The limit in question; null where the ledger is empty. */
  readonly limit: LimitId | null = $derived.by(() => {
    const { session, view } = this.#workspace
    const rows = session.atCap.limits
    const chosen = [this.asked, view.limit].find((id) => id !== null && rows.some((row) => row.id === id))
    return chosen ?? worstRow(rows)?.id ?? null
  })

  /** Takes a change into the open build, as one undoable step. */
  take({ path, label, apply }: Remedy, words: string): void {
    if (!this.work.isCurrent) return
    const { session, notices } = this.#workspace
    const next = apply.reduce(
      (stored, change) => withEntry(stored, change.path, change.value ?? undefined),
      session.stored,
    )
    const mistakes = session.change(`${changeName(path, label)} to ${words}`, next)
    if (mistakes.length > 0)
      notices.trouble('This change could not be taken.', 'The build is as it was.', mistakes)
    else notices.done(`Taken: ${label} to ${words}. Undo takes it back.`)
  }

  forget(): void {
    this.work.forget()
    this.asked = null
  }
}
