import type { Mistake } from '../../mistakes/mistake.ts'
import { refusal } from '../refusal.ts'
import { Repairs } from '../repairs.ts'
import { CellCutter } from './cut.ts'
import { decoderOf, type Decoder } from './decode.ts'
import { declaredDelimiter, dialectOf, linesLookedAt, type Dialect } from './dialect.ts'
import { encodingOf, type Encoded, type Encoding } from './encoding.ts'
import { Grid } from './grid.ts'
import { HeadFinder, type Head } from './head.ts'
import { fingerprintOf } from './heading.ts'
import { isBlank, isComment, LineCutter } from './lines.ts'
import type { DecimalMark } from './number.ts'
import { RowReader } from './rows.ts'

/** What a person has laid down about a log's text. */
interface TextChoice {
  readonly delimiter?: string
  readonly decimal?: DecimalMark
}

/** A log's text, read: its rows as numbers, and how they were written. */
export interface LogText {
  readonly encoding: Encoding
  readonly dialect: Dialect
  readonly headerRow: number | null
  readonly fingerprint: string
  readonly grid: Grid
  readonly repairs: Repairs
}

/** Bytes read in one piece: a few milliseconds of work. */
const blockBytes = 16_384
/** Rows for which there is room at the start. */
const rowsToBegin = 4_096
/** Bytes from which a file is not read. */
export const tooManyBytes = 2 ** 31

/**
 * Reads a log's text block by block, so that whoever reads can show how far it is and stop.
 *
 * Nothing is held but the rows as numbers: a row becomes eight bytes for each of its cells as soon as it is read.
 */
export class TextReader {
  /** How many blocks there are. */
  readonly blocks: number
  readonly #bytes: Uint8Array
  readonly #choice: TextChoice
  readonly #encoded: Encoded | null = null
  readonly #decoder: Decoder | null = null
  readonly #cutter = new LineCutter()
  readonly #repairs = new Repairs()
  readonly #grid: Grid
  #refused: Mistake | null = null
  /** Lines before the dialect is known. */
  #held: string[] = []
  #told = 0
  #line = 1
  #dialect: Dialect | null = null
  #finder: HeadFinder | null = null
  #head: Head | null = null
  #rows: RowReader | null = null
  #firstLine = ''

  constructor(bytes: Uint8Array, choice: TextChoice) {
    this.#bytes = bytes
    this.#choice = choice
    this.blocks = Math.max(1, Math.ceil(bytes.length / blockBytes))
    const encoded = bytes.length >= tooManyBytes ? null : encodingOf(bytes)
    this.#grid = new Grid(rowsToBegin)
    if (encoded === null) this.#refused = refusal('too-big', tooBig(bytes.length))
    else if (typeof encoded === 'string') this.#refused = refusal(encoded)
    else {
      this.#encoded = encoded
      this.#decoder = decoderOf(encoded.encoding)
    }
  }

  /** Reads a block; blocks are read in order. Nothing happens once the log is refused. */
  read(block: number): void {
    if (this.#encoded === null || this.#decoder === null || this.#refused !== null) return
    const { from, to } = this.#encoded
    const start = Math.max(from, block * blockBytes)
    const end = Math.min(to, (block + 1) * blockBytes)
    const last = block === this.blocks - 1
    if (start >= end && !last) return
    const text = this.#decoder.decode(this.#bytes.subarray(start, Math.max(start, end)), last)
    const lines = this.#cutter.take(text, last)
    // A little more than as many rows for each byte as so far, so that the grid need not grow at the very end.
    this.#grid.expected = Math.ceil((1.01 * this.#grid.count * (to - from)) / Math.max(1, start - from))
    if (lines !== null) this.#take(lines)
    if (last) this.#end()
  }

  /** What was read, once every block is in; else why it cannot be. */
  result(): LogText | Mistake {
    if (this.#refused !== null) return this.#refused
    if (this.#encoded === null || this.#dialect === null || this.#head === null) return refusal('no-rows')
    return {
      encoding: this.#encoded.encoding,
      dialect: this.#dialect,
      headerRow: this.#head.headerRow,
      fingerprint: fingerprintOf(this.#head.headings, this.#head.units),
      grid: this.#grid,
      repairs: this.#repairs,
    }
  }

  /**
   * By what a file of this kind is known again, also one that cannot be read: its headings and units, else a first line in
   * words; null without either.
   */
  get shape(): string | null {
    if (this.#head !== null) return fingerprintOf(this.#head.headings, this.#head.units)
    return /\p{L}/u.test(this.#firstLine) ? fingerprintOf([this.#firstLine], null) : null
  }

  #take(text: string): void {
    if (this.#rows !== null) {
      this.#line += this.#rows.lines(text, this.#line)
      return
    }
    const lines = text.split('\n')
    if (this.#finder !== null) {
      this.#seek(lines)
      return
    }
    for (const line of lines) {
      this.#held.push(line)
      if (!isBlank(line) && !isComment(line)) this.#told += 1
    }
    if (this.#told >= linesLookedAt) this.#settle('')
  }

  /**
   * Decides how the text is written, and goes through the lines that were held for it.
   *
   * @param unended what stands behind the last line end, where the file is at its end
   */
  #settle(unended: string): void {
    const all = [...this.#held, unended]
    if (all.every(isBlank)) {
      this.#refused = refusal('empty')
      return
    }
    const said = declaredDelimiter(all[0] ?? '')
    if (said !== null) all[0] = this.#held[0] = ''
    const lines = all.filter((line) => !isBlank(line) && !isComment(line))
    this.#firstLine = lines[0] ?? ''
    const { delimiter, decimal } = this.#choice
    this.#dialect = dialectOf(lines, {
      delimiter: delimiter ?? said,
      ...(decimal === undefined ? {} : { decimal }),
    })
    if (this.#dialect === null) {
      this.#refused = refusal('one-column')
      return
    }
    this.#finder = new HeadFinder(new CellCutter(this.#dialect.delimiter), this.#dialect.decimal)
    const held = this.#held
    this.#held = []
    this.#seek(held)
  }

  /** Looks for the first data row; what follows it goes to the reader of rows. */
  #seek(lines: readonly string[]): void {
    for (let place = 0; place < lines.length; place += 1) {
      this.#head = this.#finder?.look(lines[place] ?? '', this.#line) ?? null
      this.#line += 1
      if (this.#head === null || this.#dialect === null) continue
      const cutter = new CellCutter(this.#dialect.delimiter)
      this.#rows = new RowReader(this.#grid, this.#head, cutter, this.#dialect.decimal, this.#repairs)
      const rest = lines.slice(place + 1)
      if (rest.length > 0) this.#line += this.#rows.lines(rest.join('\n'), this.#line)
      return
    }
  }

  #end(): void {
    const rest = this.#cutter.rest
    if (this.#finder === null) this.#settle(rest)
    if (this.#refused !== null) return
    if (this.#rows === null) this.#seek([rest])
    else if (rest !== '') this.#rows.unended(rest, this.#line)
    this.#zeros()
  }

  #zeros(): void {
    if (this.#encoded?.zerosCut === true) this.#repairs.add('cut-tail', null, this.#line)
  }
}

const tooBig = (length: number) => ({
  value: `${(length / 2 ** 30).toFixed(1)} GiB`,
  allowed: 'less than 2 GiB',
})
