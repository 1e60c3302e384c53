import { closely } from '../../../../shared-engine/report/fit.ts'
import PDFDocument from 'pdfkit'
import regular from 'source-sans/TTF/SourceSans3-Regular.ttf?inline'
import semibold from 'source-sans/TTF/SourceSans3-Semibold.ttf?inline'
import { paperSizes, type Paper } from '../../../../shared-engine/report/paper.ts'

type Weight = 'regular' | 'strong'

/** How a run of words is set. */
export interface Face {
  readonly size: number
  readonly weight?: Weight
  readonly colour?: string
}

export const colours = {
  ink: '#15191d',
  quiet: '#566069',
  hairline: '#cdd2d5',
  near: '#8a5500',
  over: '#b3241a',
}

const leading = 1.28
/** How a page is set: so many points on paper for a point of what is written, and its margins on paper. */
interface Setting {
  readonly share: number
  readonly side: number
  readonly top: number
  readonly bottom: number
}

const usual: Setting = { share: 1, side: 40, top: 42, bottom: 46 }

/** Size at which widths are kept: they grow with the size of the letters. */
const unit = 100
/** Widths of words: a page is tried at several sizes, and most words stand on it more than once. */
const widths: Readonly<Record<Weight, Map<string, number>>> = { regular: new Map(), strong: new Map() }

/** Bytes of a data address. */
const bytesOf = (address: string) => Buffer.from(address.slice(address.indexOf(',') + 1), 'base64')

/**
 * A document that is filled from top to bottom: what it writes goes where the last thing ended, on a new page where the
 * rest of this one is too low. Lines are broken here and not by the library, so that nothing can slip over an edge unseen.
 */
export class Writer {
  readonly doc: PDFKit.PDFDocument
  readonly trial: boolean
  readonly #paper: readonly [width: number, height: number]
  #setting: Setting
  /** That of each page so far. */
  readonly #settings: Setting[] = []
  /** Columns of the page, where there are any, and which is being filled. */
  #columns = 1
  #gap = 0
  #column = 0
  /** Where columns begin on this page. */
  #top: number
  y: number

  /** @param trial only to see where everything comes: letters and drawings are left away, which are most of the work */
  constructor(paper: Paper, title: string, setting: Setting = usual, trial = false) {
    this.#paper = paperSizes[paper]
    this.#setting = setting
    this.trial = trial
    this.doc = new PDFDocument({
      size: [...this.#paper],
      // The library starts a page of its own accord where text passes its margin: here it never does.
      margin: 0,
      bufferPages: true,
      font: '',
      lang: 'en',
      displayTitle: true,
      info: { Title: title, Creator: 'Pitchline' },
    })
    this.doc.registerFont('regular', bytesOf(regular))
    this.doc.registerFont('strong', bytesOf(semibold))
    this.doc.scale(setting.share)
    this.#settings.push(setting)
    this.#top = this.y = this.top
  }

  /** Points of paper as points of what is written. */
  #from(points: number): number {
    return points / this.#setting.share
  }

  get #whole(): number {
    return this.#from(this.#paper[0] - 2 * this.#setting.side)
  }

  private get top(): number {
    return this.#from(this.#setting.top)
  }

  get width(): number {
    return (this.#whole - (this.#columns - 1) * this.#gap) / this.#columns
  }

  get left(): number {
    return this.#from(this.#setting.side) + this.#column * (this.width + this.#gap)
  }

  get bottom(): number {
    return this.#from(this.#paper[1] - this.#setting.bottom)
  }

  /** Whether the one page is being filled, where room is dear. */
  get isClose(): boolean {
    return this.#setting !== usual
  }

  get pages(): number {
    return this.doc.bufferedPageRange().count
  }

  /** From here on down the page is filled column by column. */
  beginColumns(columns: number, gap: number): void {
    this.#columns = columns
    this.#gap = this.#from(gap)
    this.#top = this.y
  }

  endColumns(): void {
    this.#columns = 1
    this.#column = 0
  }

  /** What follows stands on pages of the usual size, a new one where something is to follow. */
  nextPages(): void {
    this.#setting = usual
    this.y = Infinity
  }

  /** Begins a column or a page where less than so much is left of this one; whether it did. */
  room(height: number): boolean {
    if (this.y + height <= this.bottom || this.y <= this.#top) return false
    if (this.#column + 1 < this.#columns) this.#column += 1
    else {
      this.doc.addPage().scale(this.#setting.share)
      this.#settings.push(this.#setting)
      this.#column = 0
      this.#top = this.top
    }
    this.y = this.#top
    return true
  }

  lineHeight({ size }: Face): number {
    return size * (this.isClose ? closely.leading : leading)
  }

  /** Whether the typeface has a letter. */
  hasLetter(letter: string): boolean {
    this.doc.font('regular')
    // The types keep the library's own font to themselves.
    const { _font } = this.doc as unknown as {
      readonly _font: { readonly font: { hasGlyphForCodePoint: (code: number) => boolean } }
    }
    return _font.font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0)
  }

  widthOf(text: string, { size, weight = 'regular' }: Face): number {
    const known = widths[weight].get(text)
    const width = known ?? this.doc.font(weight).fontSize(unit).widthOfString(text)
    if (known === undefined) widths[weight].set(text, width)
    return (width * size) / unit
  }

  /** Text in lines no wider than so much, the first less by its indent, broken at blanks; a word that is wider is cut. */
  lines(text: string, width: number, face: Face, firstIndent = 0): readonly string[] {
    const lines: string[] = []
    const blank = this.widthOf(' ', face)
    let line = ''
    let filled = 0
    for (const word of text.split(/[ \n\t]+/).filter((piece) => piece !== '')) {
      const wide = this.widthOf(word, face)
      const room = width - (lines.length === 0 ? firstIndent : 0)
      if (filled + (line === '' ? 0 : blank) + wide <= room) {
        filled += (line === '' ? 0 : blank) + wide
        line = line === '' ? word : `${line} ${word}`
        continue
      }
      if (line !== '') lines.push(line)
      const pieces = this.cut(word, width, face)
      lines.push(...pieces.slice(0, -1))
      line = pieces.at(-1) ?? ''
      filled = this.widthOf(line, face)
    }
    return line === '' && lines.length > 0 ? lines : [...lines, line]
  }

  private cut(word: string, width: number, face: Face): readonly string[] {
    if (this.widthOf(word, face) <= width) return [word]
    const pieces = ['']
    for (const letter of word) {
      const longer = (pieces.at(-1) ?? '') + letter
      if (longer.length > 1 && this.widthOf(longer, face) > width) pieces.push(letter)
      else pieces[pieces.length - 1] = longer
    }
    return pieces
  }

  /** One line of text with its top at a place. */
  put(text: string, x: number, y: number, face: Face): void {
    const { size, weight = 'regular', colour = colours.ink } = face
    if (text === '' || this.trial) return
    this.doc.font(weight).fontSize(size).fillColor(colour)
    this.doc.text(text, x, y + size, { lineBreak: false, baseline: 'alphabetic' })
  }

  /** Words over the whole width, or from an indent on; page by page where they are long. */
  paragraph(text: string, face: Face, after = 3, indent = 0): void {
    for (const line of this.lines(text, this.width - indent, face)) {
      this.room(this.lineHeight(face))
      this.put(line, this.left + indent, this.y, face)
      this.y += this.lineHeight(face)
    }
    this.y += after
  }

  rule(y: number, colour = colours.hairline): void {
    this.doc.lineWidth(0.5).strokeColor(colour)
    this.doc
      .moveTo(this.left, y)
      .lineTo(this.left + this.width, y)
      .stroke()
  }

  /** Foot and number of every page; then all bytes. */
  async finish(foot: string, name: string): Promise<Uint8Array> {
    const { doc } = this
    const { start, count } = doc.bufferedPageRange()
    for (let page = 0; page < count; page += 1) {
      doc.switchToPage(start + page)
      this.#setting = this.#settings[page] ?? usual
      const face = { size: this.#setting === usual ? 7.5 : this.#from(6), colour: colours.quiet }
      const y = this.bottom + this.#from(14)
      this.rule(y - this.#from(4))
      this.put(foot, this.left, y, face)
      const [title = ''] = this.lines(name, this.width * 0.3, face)
      const number = `${title} · page ${page + 1} of ${count}`
      this.put(number, this.left + this.width - this.widthOf(number, face), y, face)
    }
    const chunks: Buffer[] = []
    doc.on('data', (chunk: Buffer) => void chunks.push(chunk))
    const ended = new Promise((resolve) => doc.on('end', resolve))
    doc.end()
    await ended
    return Buffer.concat(chunks)
  }
}
