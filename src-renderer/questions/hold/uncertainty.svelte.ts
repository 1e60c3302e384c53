import { completeBuild } from '../../../shared-engine/index.ts'
import {
  standardUncertainty,
  type UncertainLimit,
  type Uncertainty,
} from '../../../shared-engine/uncertainty/uncertainty.ts'
import { tolerancedEntriesOf } from '../../../shared-engine/uncertainty/entries.ts'
import type { UncertaintyFound } from '../../../shared-engine/uncertainty/samples.ts'
import { uncertaintyDrawsJob, uncertaintyToldJob } from '../../../shared-engine/jobs/uncertainty-parts.ts'
import type { UncertaintyInput } from '../../../shared-engine/jobs/uncertainty.ts'
import { threads, type JobHandle } from '../../workers/client.ts'
import { Following, type Held, type Watching } from '../../state/following.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'

/** What the draws of a build say, and how many they were. */
export interface Drawn {
  readonly uncertainty: Uncertainty
  readonly done: number
  readonly asked: number
}

/** Draws of the window's own first look: the ends of a band are good to a percent, and it is there in a moment. */
const firstDraws = 2_000

/** By limit. */
type Bands = Readonly<Record<string, UncertainLimit | undefined>>

const noBands: Bands = {}

/** *How sure*: what the spreads of entries make of the limits. */
export class UncertaintyWork implements QuestionState {
  readonly #workspace: Workspace
  seed = $state.raw(standardUncertainty.seed)
  draws = $state.raw(firstDraws)
  /** The limit whose entries are looked at; null: the one chosen in the ledger, or the worst. */
  asked = $state.raw<string | null>(null)
  readonly work: Following<Drawn>

  constructor(workspace: Workspace) {
    this.#workspace = workspace
    this.work = new Following<Drawn>(
      () => [workspace.session.stored, this.seed, this.draws],
      (watching) => this.#begin(watching),
    )
  }

  /** Whether any entry has a tolerance, or an origin, that takes part. */
  readonly hasSpreads: boolean = $derived.by(() => {
    const { stored } = this.#workspace.session
    if (stored.tolerances === undefined && stored.origins === undefined) return false
    return tolerancedEntriesOf(completeBuild(stored)).entries.length > 0
  })

  /** What was found last, which may be of before a change; null where nothing was. */
  readonly #last: Bands | null = $derived.by(() => {
    const { found } = this.work
    return found && Object.fromEntries(found.uncertainty.limits.map((limit) => [limit.id, limit]))
  })

  /** For the ledger: only what belongs to the numbers that it shows. */
  readonly bands: Bands = $derived.by(() =>
    this.work.isCurrent && !this.#isTried ? (this.#last ?? noBands) : noBands,
  )

  /**
   * For the ledger: whose bands are about to come, or to come back once nothing is tried on any more, as they were last,
   * so that their lines stay free and nothing jumps; null: any limit's.
   */
  readonly awaited: Bands | null = $derived.by(() => {
    const { isAwaited, isCurrent } = this.work
    return isAwaited || (isCurrent && this.#isTried) ? this.#last : noBands
  })

  get #isTried(): boolean {
    const { preview, lookedAt } = this.#workspace.session
    return preview !== null || lookedAt !== null
  }

  forget(): void {
    this.work.forget()
    this.asked = null
  }

  /** Draws on all threads, and puts together on one: the window's own is not held up by either. */
  #begin({ progress, ended }: Watching<Drawn>): Held {
    const build = completeBuild(this.#workspace.session.stored)
    const input: UncertaintyInput = { build, samples: this.draws, seed: this.seed }
    let now: JobHandle
    const tell = (how: 'finished' | 'stopped', pieces: readonly UncertaintyFound[]) => {
      const done = pieces.reduce((sum, { piece }) => sum + piece.to - piece.from, 0)
      if (done === 0) return ended(how, null)
      const drawn = { ...input, pieces }
      now = threads.start('uncertainty', uncertaintyToldJob, drawn, {
        ended: ({ end, outcome }) => {
          const told = outcome === null ? null : { uncertainty: outcome, done, asked: input.samples }
          ended(end.type === 'finished' ? how : end.type, told)
        },
      })
    }
    now = threads.start('uncertainty', uncertaintyDrawsJob, input, {
      progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
      ended: ({ end, outcome }) => (end.type === 'failed' ? ended('failed', null) : tell(end.type, outcome)),
    })
    return { stop: () => now.stop(), drop: () => now.drop() }
  }
}
