import type { Build } from '../entries/schema.ts'
import { failed, succeeded, type Result } from '../mistakes/mistake.ts'
import type { ColumnsChoice } from './columns/choice.ts'
import type { ReplayedAlarm } from './facts/alarms.ts'
import type { InPieces } from './pieces.ts'
import { readLog, type ReadLog } from './read.ts'
import { resultOf, type LogResult } from './result.ts'
import { TextReader } from './text/reader.ts'

/** A log and what it is held against. */
export interface LogInput {
  readonly build: Build
  readonly bytes: Uint8Array
  /** What a person lays down about the columns; `{}` for nothing. */
  readonly choice: ColumnsChoice
  /** Alarms to replay; null: the program's own card. */
  readonly alarms: readonly ReplayedAlarm[] | null
}

/** Pauses in the work behind the text, about: of a million rows of the usual channels, made ready to be drawn. */
const pausesBehind = 115
/** Work behind the text over that of the text, about. */
const workBehind = 3

/** What is done with a log that was read, in the same steps. */
type AfterReading = (log: ReadLog, result: LogResult) => InPieces<void>

/**
 * Reads a log in steps, so that whoever asks can show how far it is and stop between two of them.
 *
 * @example const reading = new LogReading(input); while (!reading.done) reading.step(); reading.result()
 */
export class LogReading {
  /** How many steps there are. */
  readonly steps: number
  readonly #text: TextReader
  readonly #behind: InPieces<void>
  #next = 0
  #pauses = 0
  #ended = false
  #read: ReadLog | null = null
  #headings: readonly string[] = []
  #result: Result<LogResult> | null = null

  constructor(input: LogInput, after: AfterReading | null = null) {
    const { delimiter, decimal } = input.choice
    this.#text = new TextReader(input.bytes, {
      ...(delimiter === undefined ? {} : { delimiter }),
      ...(decimal === undefined ? {} : { decimal }),
    })
    this.steps = this.#text.blocks + Math.ceil(workBehind * this.#text.blocks)
    this.#behind = this.#meaning(input, after)
  }

  get done(): boolean {
    return this.#next >= this.steps
  }

  /**
   * Does the next step; nothing once all are done.
   *
   * @returns whether it was a long one, as those behind the text are, after which somebody may want to be heard
   */
  step(): boolean {
    const { blocks } = this.#text
    const behind = this.#next - blocks
    if (behind < 0) this.#text.read(this.#next)
    const isLast = this.#next === this.steps - 1
    this.#next += 1
    return behind >= 0 && this.#goOn(isLast ? Infinity : (pausesBehind * behind) / (this.steps - blocks))
  }

  /**
   * Goes on with what is behind the text up to so many pauses, which may come to an end before.
   *
   * @returns whether there was anything to do
   */
  #goOn(pauses: number): boolean {
    const before = this.#pauses
    while (!this.#ended && this.#pauses <= pauses) {
      this.#pauses += 1
      this.#ended = this.#behind.next().done === true
    }
    return this.#pauses > before
  }

  *#meaning({ build, choice, alarms }: LogInput, after: AfterReading | null): InPieces<void> {
    const text = this.#text.result()
    if ('grid' in text) this.#headings = text.grid.columns.map(({ name }) => name)
    const read: Result<ReadLog> = 'grid' in text ? yield* readLog(text, build, choice) : failed([text])
    if (!read.ok) {
      this.#result = read
      return
    }
    this.#read = read.value
    const result = yield* resultOf(read.value, alarms)
    this.#result = succeeded(result)
    if (after === null) return
    yield
    yield* after(read.value, result)
  }

  /** What the log says, or why it cannot be read; null before that is known, at the last step at the latest. */
  result(): Result<LogResult> | null {
    return this.#result
  }

  /** Headings of the columns, whatever became of them; none where the text has no columns. */
  headings(): readonly string[] {
    return this.#headings
  }

  /** By what a log of this kind is known again, read or not; null where nothing would do. */
  get shape(): string | null {
    return this.#text.shape
  }

  /** The log's channels, for plots; null before they are read, or where the log cannot be. */
  read(): ReadLog | null {
    return this.#read
  }
}

/**
 * Reads a log at once.
 *
 * @returns what it says, or every reason why it cannot be read
 */
export function logOf(input: LogInput): Result<LogResult> {
  const reading = new LogReading(input)
  while (!reading.done) reading.step()
  return reading.result() ?? failed([])
}
