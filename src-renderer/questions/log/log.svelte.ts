import { completeBuild, readStoredBuildText } from '../../../shared-engine/index.ts'
import { logJob } from '../../../shared-engine/jobs/log.ts'
import type { ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import { refusal } from '../../../shared-engine/log/refusal.ts'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import type { LogSeries } from '../../../shared-engine/log/series.ts'
import { tooManyBytes } from '../../../shared-engine/log/text/reader.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Mistake } from '../../../shared-engine/mistakes/mistake.ts'
import type { ChannelId } from '../../../shared-engine/reference/columns.ts'
import { demoLog } from '../../host/demo-log.ts'
import { Following, type Held } from '../../state/following.svelte.ts'
import type { QuestionState } from '../../state/question.ts'
import type { Workspace } from '../../state/workspace.svelte.ts'
import { threads } from '../../workers/client.ts'
import type { Episode } from '../../../shared-engine/log/episodes/episode.ts'
import { spanAbout, type Span } from './log-data.ts'
import { withColumn } from './column-choice.ts'

/** A log as it was opened: its bytes unchanged, and what a person laid down about its columns. */
interface OpenedLog {
  readonly name: string
  readonly bytes: Uint8Array
  readonly choice: ColumnsChoice
}

/** A log that was read, with what it says. */
export interface ToldLog {
  readonly log: OpenedLog
  readonly result: LogResult
  readonly series: readonly LogSeries[]
}

const nothingHeld: Held = { stop: () => {}, drop: () => {} }

/** *What happened*: the log that is open, what it says of the open build, and what could not be read. */
export class LogWork implements QuestionState {
  /** What is read, or being read; null: no log was opened. */
  log = $state.raw<OpenedLog | null>(null)
  /** Why the last file or choice could not be read, in sentences; what was open before it stays. */
  refused = $state.raw<{ readonly name: string; readonly sentences: readonly string[] } | null>(null)
  /** Segment that is drawn; null: that of the worst that happened. */
  segment = $state.raw<number | null>(null)
  worstFirst = $state.raw(false)
  /** The part of the segment that is drawn; null: all of it. */
  span = $state.raw<Span | null>(null)
  /** Counted up where the plot is asked into sight. */
  looks = $state.raw(0)
  readonly work: Following<ToldLog>
  readonly #workspace: Workspace
  /** The last one that could be read. */
  #good: OpenedLog | null = null
  #openings = 0

  constructor(workspace: Workspace) {
    this.#workspace = workspace
    const { session } = workspace
    this.work = new Following<ToldLog>(
      () => [session.stored, this.log],
      ({ progress, ended }) => {
        const { log } = this
        if (log === null) {
          ended('finished', null)
          return nothingHeld
        }
        const { bytes, choice } = log
        const input = { build: completeBuild(session.stored), bytes, choice, alarms: null }
        return threads.start('log', logJob, input, {
          progress: ({ done, total, secondsLeft }) => progress(done, total, secondsLeft),
          ended: ({ end, outcome }) => {
            if (outcome === null) return ended(end.type, null)
            const { result, series } = outcome
            ended(end.type, result.ok ? { log, result: result.value, series } : null)
            if (result.ok) this.#accept(log)
            else this.#refuse(log.name, result.mistakes)
          },
        })
      },
    )
  }

  /** Reads a file; its story is told as soon as somebody looks. */
  async open(file: Pick<File, 'name' | 'size' | 'arrayBuffer'>): Promise<void> {
    const turn = (this.#openings += 1)
    if (file.size >= tooManyBytes) {
      const value = `${(file.size / 2 ** 30).toFixed(1)} GiB`
      this.#refuse(file.name, [refusal('too-big', { value, allowed: 'less than 2 GiB' })])
      return
    }
    try {
      const bytes = new Uint8Array(await file.arrayBuffer())
      if (turn === this.#openings) this.#take({ name: file.name, bytes, choice: {} })
    } catch {
      const gone: Mistake = { code: 'cannot-read', path: '', value: file.name, allowed: '', kept: '' }
      if (turn === this.#openings) this.#refuse(file.name, [gone])
    }
  }

  /** Opens our demo log, and the demo build that ran it where another one is open. */
  async openDemo(): Promise<void> {
    const { host, session, files } = this.#workspace
    const text = host.demos.find(({ id }) => id === demoLog.build)?.text ?? ''
    const demo = readStoredBuildText(text)
    const isOpen = demo.ok && demo.value.name === session.stored.name
    if (!isOpen && !(await files.chooseDemo(demoLog.build))) return
    this.#openings += 1
    this.#take({ name: demoLog.name, bytes: demoLog.bytes(), choice: {} })
  }

  /** Lays down what a column means, null for nothing, and reads the log again. */
  setColumn(place: number, channel: ChannelId | null): void {
    const { log } = this
    const columns = this.work.found?.result.columns ?? []
    if (log !== null) this.log = { ...log, choice: withColumn(log.choice, columns, place, channel) }
  }

  /** Draws the segment of an episode, from a while before it to a while after, with the cursor at its start. */
  show({ segment, start, end, spunUntil, before }: Episode): void {
    const from = before?.from ?? start
    const length = Math.max(4, 2 * ((spunUntil ?? end) - from))
    this.segment = segment
    this.span = spanAbout((from + (spunUntil ?? end)) / 2, Math.min(length, 60), this.#secondsOf(segment))
    if (length > 60) this.span = spanAbout(from + 20, 60, this.#secondsOf(segment))
    this.#workspace.moveCursor('logSeconds', from)
    this.looks += 1
  }

  #secondsOf(segment: number): number {
    return this.work.found?.result.segments[segment - 1]?.seconds ?? 0
  }

  /** Draws a shorter part (by under 1) or a longer one about a moment; by 0 all of the segment. */
  zoom(segment: number, by: number, about: number | null): void {
    const seconds = this.#secondsOf(segment)
    const { from, to } = this.span ?? { from: 0, to: seconds }
    const middle = about !== null && about >= from && about <= to ? about : (from + to) / 2
    // The moment stays where it is on the screen.
    const share = to > from ? (middle - from) / (to - from) : 0.5
    const length = by === 0 ? seconds : (to - from) * by
    this.span = spanAbout(middle + (0.5 - share) * length, length, seconds)
  }

  /** Moves the part that is drawn by a share of its length. */
  pan(segment: number, share: number): void {
    if (this.span === null) return
    const { from, to } = this.span
    const length = to - from
    this.span = spanAbout((from + to) / 2 + share * length, length, this.#secondsOf(segment))
  }

  chooseSegment(segment: number): void {
    this.segment = segment
    this.span = null
  }

  /** Reads the log again as the program sees its columns. */
  clearColumns(): void {
    if (this.log !== null) this.log = { ...this.log, choice: {} }
  }

  /** The log stays: it is read against the next build. */
  forget(): void {
    this.work.forget()
    this.segment = null
    this.span = null
  }

  #take(log: OpenedLog): void {
    this.refused = null
    this.segment = null
    this.span = null
    this.log = log
  }

  #accept(log: OpenedLog): void {
    this.#good = log
    this.refused = null
    this.#workspace.notices.done(`Read ${log.name}`)
  }

  /** Nothing is lost: the log that was read last stays open. */
  #refuse(name: string, mistakes: readonly Mistake[]): void {
    this.refused = { name, sentences: mistakes.map(sentenceOf) }
    this.log = this.#good
  }
}
