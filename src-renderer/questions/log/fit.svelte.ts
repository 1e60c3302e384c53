import { completeBuild } from '../../../shared-engine/index.ts'
import { channelsOfBlock, fitEntries, type FitEntry } from '../../../shared-engine/fit/entries.ts'
import type { FittedEntry } from '../../../shared-engine/fit/answer.ts'
import type { SeenFit } from '../../../shared-engine/jobs/fit.ts'
import { isMoved, type FittedChannelId } from '../../../shared-engine/validate/fitted.ts'
import type { InAir } from '../../../shared-engine/fit/in-air.ts'
import type { ChannelName } from '../../../shared-engine/fit/log.ts'
import type { ChannelId } from '../../../shared-engine/reference/columns.ts'
import { originAt, takeMeasured } from '../../fields/edits.ts'
import { Following, type Held } from '../../state/following.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'
import { threads } from '../../workers/client.ts'
import { heldLater } from './held-later.ts'
import { LogWork } from './log.svelte.ts'

/** Which logged channels can give what a fit reads; motor amps may be worked out of the pack's. */
const sources: Readonly<Record<ChannelName, readonly ChannelId[]>> = {
  motorRpm: ['rpm', 'erpm', 'wheelRpm'],
  packVolts: ['volts'],
  packAmps: ['amps'],
  motorAmps: ['motorAmps', 'amps'],
  duty: ['duty', 'throttle'],
  groundMps: ['speed'],
  motorCelsius: ['motorC'],
  controllerCelsius: ['controllerC'],
}

const nothingHeld: Held = { stop: () => {}, drop: () => {} }

/** *Fit the build to this run*: what is asked of the log, and what it tells. */
export class FitWork implements QuestionState {
  readonly #workspace: Workspace
  readonly work: Following<SeenFit>
  /** Entries that are asked for; null: all that the log has channels for. */
  #asked = $state.raw<readonly string[] | null>(null)
  #taken = $state.raw<readonly { readonly path: string; readonly bytes: Uint8Array }[]>([])
  /** Stretches that were driven with the loops in the air, in the order in which they were marked. */
  inAir = $state.raw<readonly InAir[]>([])
  /** Channels that are drawn; null: those that the fit has moved. */
  #drawn = $state.raw<readonly FittedChannelId[] | null>(null)
  /** Whether a person wants it: it takes seconds. */
  wanted = $state.raw(false)

  constructor(workspace: Workspace) {
    this.#workspace = workspace
    this.work = new Following<SeenFit>(
      () => [workspace.session.stored, this.#log.log, this.asked, this.inAir],
      ({ progress, ended }) => {
        const { log } = this.#log
        if (log === null || this.asked.length === 0) {
          ended('finished', null)
          return nothingHeld
        }
        const { bytes, choice } = log
        const { asked, inAir } = this
        const input = { build: completeBuild(workspace.session.stored), bytes, choice, asked, inAir }
        return heldLater(
          import('../../../shared-engine/jobs/fit.ts'),
          ({ fitJob }) =>
            threads.start('fit', fitJob, input, {
              progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
              ended: ({ end, outcome }) => ended(end.type, outcome),
            }),
          () => ended('stopped', null),
        )
      },
    )
  }

  get #log(): LogWork {
    return this.#workspace.of(LogWork)
  }

  /** Entries that the open log has channels for. */
  readonly able: readonly FitEntry[] = $derived.by(() => {
    const found = this.#log.work.found
    const there = found?.result.columns.map(({ channel }) => channel) ?? []
    return fitEntries.filter(({ block }) =>
      channelsOfBlock[block].every((name) => sources[name].some((id) => there.includes(id))),
    )
  })

  readonly asked: readonly string[] = $derived(this.#asked ?? this.able.map(({ path }) => path))

  ask(path: string, wanted: boolean): void {
    const others = this.asked.filter((one) => one !== path)
    this.#asked = wanted ? [...others, path] : others
  }

  /** Channels that are drawn beside the prediction: at first those that the fit has moved, all where it has moved none. */
  readonly drawn: readonly FittedChannelId[] = $derived.by(() => {
    const channels = this.work.found?.channels ?? []
    const moved = channels.filter(isMoved)
    return this.#drawn ?? (moved.length > 0 ? moved : channels).map(({ id }) => id)
  })

  drawChannel(id: FittedChannelId, wanted: boolean): void {
    const others = this.drawn.filter((one) => one !== id)
    this.#drawn = wanted ? [...others, id] : others
  }

  markInAir(stretch: InAir): void {
    this.unmarkInAir(stretch)
    this.inAir = [...this.inAir, stretch]
  }

  unmarkInAir({ segment, from, to }: InAir): void {
    this.inAir = this.inAir.filter((one) => one.segment !== segment || one.from !== from || one.to !== to)
  }

  /** Puts one fitted value into the build with its tolerance, as one step to undo; says what stands against it. */
  take({ path, value, plusMinus }: FittedEntry): string {
    const trouble = takeMeasured(this.#workspace, {
      path,
      value,
      plusMinus,
      origin: 'measured',
      from: 'a log',
    })
    const bytes = this.#log.log?.bytes
    if (trouble === '' && bytes !== undefined) this.#taken = [...this.#taken, { path, bytes }]
    return trouble
  }

  /** Entries that were taken from this very log since the program was started, and that still are measured. */
  takenFrom(bytes: Uint8Array): readonly string[] {
    const { stored } = this.#workspace.session
    const paths = this.#taken
      .filter((one) => one.bytes === bytes && originAt(stored, one.path) === 'measured')
      .map(({ path }) => path)
    return paths.filter((path, at) => paths.indexOf(path) === at)
  }

  forget(): void {
    this.work.forget()
    this.#asked = null
    this.#drawn = null
    this.inAir = []
  }
}
