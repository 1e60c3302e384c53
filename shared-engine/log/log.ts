import type { Build } from '../entries/schema.ts'
import { failed, succeeded, type Result } from '../mistakes/mistake.ts'
import type { ColumnsChoice } from './columns/choice.ts'
import type { ReplayedAlarm } from './facts/alarms.ts'
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

/** Parts of the work behind the text: meaning and repairs, then what happened. */
const partsBehind = 2

/**
 * Reads a log in steps, so that whoever asks can show how far it is and stop between two of them.
 *
 * @example const reading = new LogReading(input); while (!reading.done) reading.step(); reading.result()
 */
export class LogReading {
  /** How many steps there are. */
  readonly steps: number
  readonly #input: LogInput
  readonly #text: TextReader
  #next = 0
  #read: Result<ReadLog> | null = null
  #result: Result<LogResult> | null = null

  constructor(input: LogInput) {
    this.#input = input
    const { delimiter, decimal } = input.choice
    this.#text = new TextReader(input.bytes, {
      ...(delimiter === undefined ? {} : { delimiter }),
      ...(decimal === undefined ? {} : { decimal }),
    })
    this.steps = this.#text.blocks + partsBehind
  }

  get done(): boolean {
    return this.#next >= this.steps
  }

  /** Does the next step; nothing once all are done. */
  step(): void {
    const behind = this.#next - this.#text.blocks
    if (behind < 0) this.#text.read(this.#next)
    else if (behind === 0) this.#read = this.#meaning()
    else if (behind === 1) this.#result = this.#story()
    this.#next += 1
  }

  #meaning(): Result<ReadLog> {
    const text = this.#text.result()
    return 'grid' in text ? readLog(text, this.#input.build, this.#input.choice) : failed([text])
  }

  #story(): Result<LogResult> {
    const read = this.#read
    if (read === null || !read.ok) return read ?? failed([])
    return succeeded(resultOf(read.value, this.#input.alarms))
  }

  /** What the log says, or why it cannot be read; null before the last step. */
  result(): Result<LogResult> | null {
    return this.#result
  }

  /** The log's channels, for plots; null before they are read, or where the log cannot be. */
  read(): ReadLog | null {
    return this.#read?.ok === true ? this.#read.value : null
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
