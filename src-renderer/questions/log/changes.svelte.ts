import { completeBuild, readStoredBuild, type Build } from '../../../shared-engine/index.ts'
import type { Changes } from '../../../shared-engine/log/changes/result.ts'
import { refusal } from '../../../shared-engine/log/refusal.ts'
import { tooManyBytes } from '../../../shared-engine/log/text/reader.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../../shared-engine/mistakes/mistake.ts'
import { Following, type Held } from '../../state/following.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'
import { threads } from '../../workers/client.ts'
import { sameHeading } from './file-lines.ts'
import { bytesOf, type PickedFile } from './file-bytes.ts'
import { heldLater } from './held-later.ts'
import { LogWork } from './log.svelte.ts'

const nothingHeld: Held = { stop: () => {}, drop: () => {} }

/** *Before and after*: an earlier run, or the build itself, held against the open log. */
export class ChangesWork implements QuestionState {
  readonly work: Following<Changes>
  /** What the open log is compared with; null: nothing is. */
  against = $state.raw<'log' | 'build' | null>(null)
  before = $state.raw<{ readonly name: string; readonly bytes: Uint8Array } | null>(null)
  /** The build that the earlier run was driven with; null: the open one. */
  drivenWith = $state.raw<{ readonly name: string; readonly build: Build } | null>(null)
  /** Why the last file could not be read, in sentences. */
  refused = $state.raw<readonly string[]>([])

  constructor(workspace: Workspace) {
    // Asked for each time: the states of a question are made one after the other.
    const log = () => workspace.of(LogWork)
    this.work = new Following<Changes>(
      () => [workspace.session.stored, log().log, this.against, this.before, this.drivenWith],
      ({ progress, ended }) => {
        const opened = log().log
        const { before, against } = this
        if (opened === null || against === null || (against === 'log' && before === null)) {
          ended('finished', null)
          return nothingHeld
        }
        const build = completeBuild(workspace.session.stored)
        const { bytes, choice } = opened
        const earlier =
          against === 'build' || before === null
            ? null
            : {
                build: this.drivenWith?.build ?? build,
                bytes: before.bytes,
                choice: sameHeading(before.bytes, bytes) ? choice : {},
              }
        const input = { before: earlier, after: { build, bytes, choice } }
        return heldLater(
          import('../../../shared-engine/jobs/changes.ts'),
          ({ changesJob }) =>
            threads.start('changes', changesJob, input, {
              progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
              ended: ({ end, outcome }) => {
                if (outcome?.ok === false) this.#refuse(outcome.mistakes)
                ended(end.type, outcome?.ok === true ? outcome.value : null)
              },
            }),
          () => ended('stopped', null),
        )
      },
    )
  }

  get wanted(): boolean {
    return this.against === 'build' || (this.against === 'log' && this.before !== null)
  }

  /** Takes the log of the run before. */
  async open(file: PickedFile): Promise<void> {
    const bytes = file.size >= tooManyBytes ? null : await bytesOrNull(file)
    if (bytes === null) {
      const value = file.size >= tooManyBytes ? `${(file.size / 2 ** 30).toFixed(1)} GiB` : file.name
      this.#refuse([
        file.size >= tooManyBytes
          ? refusal('too-big', { value, allowed: 'less than 2 GiB' })
          : { code: 'cannot-read', path: '', value, allowed: '', kept: '' },
      ])
      return
    }
    this.refused = []
    this.before = { name: file.name, bytes }
    this.against = 'log'
  }

  /** Takes the build that the earlier run was driven with. */
  async openBuild(file: PickedFile): Promise<void> {
    const bytes = await bytesOrNull(file)
    if (bytes === null)
      return this.#refuse([{ code: 'cannot-read', path: '', value: file.name, allowed: '', kept: '' }])
    const read = readStoredBuild(bytes)
    if (!read.ok) return this.#refuse(read.mistakes)
    this.refused = []
    this.drivenWith = { name: file.name, build: completeBuild(read.value) }
  }

  #refuse(mistakes: readonly Mistake[]): void {
    this.refused = mistakes.map(sentenceOf)
  }

  forget(): void {
    this.work.forget()
  }
}

const bytesOrNull = (file: PickedFile): Promise<Uint8Array | null> => bytesOf(file).catch(() => null)
