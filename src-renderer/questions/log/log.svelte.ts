import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { storedPatternOf } from '../../../shared-engine/drive/rows.ts'
import type { LifeUsed } from '../../../shared-engine/log/life/used.ts'
import { completeBuild, readStoredBuildText, withEntry } from '../../../shared-engine/index.ts'
import { logJob, type LogFound } from '../../../shared-engine/jobs/log.ts'
import type { ColumnsChoice } from '../../../shared-engine/log/columns/choice.ts'
import type { ColumnEvidence } from '../../../shared-engine/log/columns/evidence.ts'
import type { UndoableRepair } from '../../../shared-engine/log/repairs.ts'
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
import type { RecordedMoment, Workspace } from '../../state/workspace.svelte.ts'
import { threads } from '../../workers/client.ts'
import type { Episode } from '../../../shared-engine/log/episodes/episode.ts'
import type { Span } from '../../../shared-engine/log/shown.ts'
import { spanAbout } from './log-data.ts'
import { bytesOf, copyOf, type PickedFile } from './file-bytes.ts'
import { heldLater } from './held-later.ts'
import { isPlain, withColumn, withPart } from './column-choice.ts'
import { logMomentOf } from './moment.ts'
import { worstFirst } from './log-words.ts'
import { keepColumns, keptColumns } from './kept-columns.ts'

/** A log as it was opened: its bytes unchanged, and what a person laid down about its columns. */
interface OpenedLog {
  readonly name: string
  readonly bytes: Uint8Array
  readonly choice: ColumnsChoice
}

/** A log that was read, with what it says. */
export interface ToldLog {
  readonly log: OpenedLog
  /** Whether its channels, life and drive are there too; the story comes before them. */
  readonly whole: boolean
  readonly result: LogResult
  readonly series: readonly LogSeries[]
  readonly evidence: readonly ColumnEvidence[]
  readonly life: readonly LifeUsed[]
  readonly pattern: Pattern | null
}

/** A sentence that stands by itself, without what helps at the command line alone. */
const inWindow = (sentence: string) =>
  sentence.charAt(0).toUpperCase() + sentence.slice(1).replace(/ \(command line: [^)]*\)/, '')

const nothingHeld: Held = { stop: () => {}, drop: () => {} }

/** *What happened*: the log that is open, what it says of the open build, and what could not be read. */
export class LogWork implements QuestionState {
  /** What is read, or being read; null: no log was opened. */
  log = $state.raw<OpenedLog | null>(null)
  /** Why the last file or choice could not be read, in sentences; what was open before it stays. */
  refused = $state.raw<{
    readonly name: string
    readonly sentences: readonly string[]
    /** The file, where it could be had. */
    readonly log?: OpenedLog
    /** Its headings, where it lacks nothing but a time: one of the columns may be it. */
    readonly headings?: readonly string[]
  } | null>(null)
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
  /** Fingerprints of logs as the program sees them by itself: what was laid down is kept for their shape. */
  readonly #shapes = new WeakMap<Uint8Array, string>()
  /** Whether columns were laid down as for the last log of this shape. */
  recalled = $state.raw(false)

  constructor(workspace: Workspace) {
    this.#workspace = workspace
    const { session } = workspace
    workspace.recorded = () => this.moment
    this.work = new Following<ToldLog>(
      () => [session.stored, this.log],
      ({ progress, told, ended }) => {
        const { log } = this
        if (log === null) {
          ended('finished', null)
          return nothingHeld
        }
        const { bytes, choice } = log
        const input = { build: completeBuild(session.stored), bytes, choice, alarms: null }
        let isTold = false
        const tellOnce = ({ result, whole, series, evidence, life, pattern }: LogFound) => {
          if (isTold || !result.ok) return
          isTold = true
          told({ log, result: result.value, whole, series, evidence, life, pattern })
        }
        return heldLater(
          copyOf(bytes),
          (copy) =>
            threads.start(
              'log',
              logJob,
              { ...input, copy },
              {
                progress: ({ done, total, secondsLeft, outcome }) => {
                  progress(done, total, secondsLeft)
                  if (outcome !== null) tellOnce(outcome)
                },
                ended: ({ end, outcome }) => {
                  if (outcome === null || (outcome.result.ok && !outcome.whole)) return ended(end.type, null)
                  const { result, headings, shape, ...found } = outcome
                  ended(end.type, result.ok ? { log, result: result.value, ...found } : null)
                  if (result.ok) this.#accept(log, result.value)
                  else if (!this.#recall(log, shape)) this.#refuse(log.name, result.mistakes, log, headings)
                },
              },
            ),
          () => ended('stopped', null),
        )
      },
    )
  }

  /** The segment that is drawn, from 1. */
  get shownSegment(): number {
    return this.segment ?? worstFirst(this.work.found?.result.episodes ?? [])[0]?.segment ?? 1
  }

  /** What the drawing shows while the log is looked at: the moment under its cursor. */
  get moment(): RecordedMoment | null {
    const { view, session, cursors } = this.#workspace
    const told = this.work.found
    const seconds = cursors.logSeconds
    if (view.question !== 'log' || view.starting || told === null || seconds === null) return null
    return logMomentOf(told, this.shownSegment, seconds, session.checked, view.units)
  }

  /** Reads a file; its story is told as soon as somebody looks. */
  async open(file: PickedFile): Promise<void> {
    const turn = (this.#openings += 1)
    if (file.size >= tooManyBytes) {
      const value = `${(file.size / 2 ** 30).toFixed(1)} GiB`
      this.#refuse(file.name, [refusal('too-big', { value, allowed: 'less than 2 GiB' })])
      return
    }
    threads.ready('log')
    try {
      const bytes = await bytesOf(file, true)
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

  /** Lays down something about the whole log, and reads it again; undefined: as the program sees it. */
  layDown(part: Omit<ColumnsChoice, 'columns'>): void {
    const { log } = this
    if (log === null) return
    const entries = Object.entries({ ...log.choice, ...part }).filter(([, value]) => value !== undefined)
    this.log = { ...log, choice: Object.fromEntries(entries) as ColumnsChoice }
  }

  /** The same for a file that could not be read: with a delimiter or a rate it may be. */
  tryAgain(part: Omit<ColumnsChoice, 'columns'>): void {
    const { refused } = this
    if (refused?.log === undefined) return
    this.log = { ...refused.log, choice: { ...refused.log.choice, ...part } }
  }

  /** The same where the log has no time: a column of it is one after all. */
  takeAsTime(place: number): void {
    const { log, headings } = this.refused ?? {}
    if (log === undefined || headings?.[place] === undefined) return
    const columns = headings.map((name) => ({ name }))
    this.log = { ...log, choice: withColumn(log.choice, columns, place, 'time') }
  }

  /** Lays down the unit of a column; null: as the program sees it. */
  setUnit(place: number, unit: string | null): void {
    const { log } = this
    const columns = this.work.found?.result.columns ?? []
    if (log !== null) this.log = { ...log, choice: withPart(log.choice, columns, place, 'unit', unit) }
  }

  /** Lays down by what a column's numbers are multiplied: below zero where the recorder counts the other way. */
  setFactor(place: number, factor: number): void {
    const { log } = this
    const columns = this.work.found?.result.columns ?? []
    const value = factor === 1 ? null : factor
    if (log !== null) this.log = { ...log, choice: withPart(log.choice, columns, place, 'factor', value) }
  }

  /** Makes the run the build's own drive, as one step to undo; says what stands against it. */
  driveIt(): readonly string[] {
    const { session, notices } = this.#workspace
    const pattern = this.work.found?.pattern ?? null
    const name = this.log?.name ?? ''
    if (pattern === null) return ['The log has no rpm to drive by.']
    const { rows } = storedPatternOf(pattern)
    const next = withEntry(session.stored, 'service.pattern', { name: `Run of ${name}`.slice(0, 60), rows })
    const mistakes = session.change(`drive the run of ${name}`, next)
    if (mistakes.length === 0) notices.done(`The run is this build’s drive: ${rows.length} rows`)
    return mistakes.map(sentenceOf)
  }

  /** Takes a repair back, or makes it again. */
  leaveAsLogged(code: UndoableRepair, left: boolean): void {
    const others = (this.log?.choice.asLogged ?? []).filter((one) => one !== code)
    const asLogged = left ? [...others, code] : others
    this.layDown({ asLogged: asLogged.length === 0 ? undefined : asLogged })
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
    this.recalled = false
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

  #accept(log: OpenedLog, { reading }: LogResult): void {
    this.#good = log
    this.refused = null
    const shape = this.#shapes.get(log.bytes)
    if (shape !== undefined) keepColumns(shape, log.choice)
    else this.#recall(log, reading.fingerprint)
    this.#workspace.notices.done(`Read ${log.name}`)
  }

  /**
   * Reads a log as one of its shape was, the first time that it is seen as the program sees it by itself; seen so again,
   * what was laid down was taken back.
   *
   * @param shape null: nothing of the file would be known again
   * @returns whether it is read again
   */
  #recall(log: OpenedLog, shape: string | null): boolean {
    if (shape === null || !isPlain(log.choice)) return false
    const known = this.#shapes.get(log.bytes)
    if (known !== undefined) keepColumns(known, {})
    const kept = known === undefined ? keptColumns(shape) : null
    this.#shapes.set(log.bytes, known ?? shape)
    this.recalled = kept !== null
    if (kept !== null) this.log = { ...log, choice: kept }
    return kept !== null
  }

  /** Nothing is lost: the log that was read last stays open. */
  #refuse(
    name: string,
    mistakes: readonly Mistake[],
    log?: OpenedLog,
    headings: readonly string[] = [],
  ): void {
    const sentences = mistakes.map((one) => inWindow(sentenceOf(one)))
    const lacksTime = mistakes.some(({ code }) => code === 'log-no-time') && headings.length > 0
    this.refused = {
      name,
      sentences,
      ...(log === undefined ? {} : { log }),
      ...(lacksTime ? { headings } : {}),
    }
    this.log = this.#good
  }
}
