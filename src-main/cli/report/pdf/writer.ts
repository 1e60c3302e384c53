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
const margin = { side: 40, top: 42, bottom: 46 }

/** Bytes of a data address. */
const bytesOf = (address: string) => Buffer.from(address.slice(address.indexOf(',') + 1), 'base64')

/**
 * A document that is filled from top to bottom: what it writes goes where the last thing ended, on a new page where the
 * rest of this one is too low. Lines are broken here and not by the library, so that nothing can slip over an edge unseen.
 */
export class Writer {
  readonly doc: PDFKit.PDFDocument
  readonly left = margin.side
  readonly width: number
  readonly height: number
  y = margin.top

  constructor(paper: Paper, title: string) {
    const [width, height] = paperSizes[paper]
    this.width = width - 2 * margin.side
    this.height = height
    this.doc = new PDFDocument({
      size: [width, height],
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
  }

  get bottom(): number {
    return this.height - margin.bottom
  }

  get pageHeight(): number {
    return this.bottom - margin.top
  }

  /** Begins a page where less than so much is left of this one; whether it did. */
  room(height: number): boolean {
    if (this.y + height <= this.bottom || this.y <= margin.top) return false
    this.doc.addPage()
    this.y = margin.top
    return true
  }

  lineHeight({ size }: Face): number {
    return size * leading
  }

  widthOf(text: string, { size, weight = 'regular' }: Face): number {
    return this.doc.font(weight).fontSize(size).widthOfString(text)
  }

  /** Text in lines no wider than so much, broken at blanks; a word that is wider is cut. */
  lines(text: string, width: number, face: Face): readonly string[] {
    const lines: string[] = []
    let line = ''
    for (const word of text.split(/[ \n\t]+/).filter((piece) => piece !== '')) {
      const longer = line === '' ? word : `${line} ${word}`
      if (this.widthOf(longer, face) <= width) {
        line = longer
        continue
      }
      if (line !== '') lines.push(line)
      const pieces = this.cut(word, width, face)
      lines.push(...pieces.slice(0, -1))
      line = pieces.at(-1) ?? ''
    }
    return line === '' && lines.length > 0 ? lines : [...lines, line]
  }

  private cut(word: string, width: number, face: Face): readonly string[] {
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
    if (text === '') return
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
    const face = { size: 7.5, colour: colours.quiet }
    const [title = ''] = this.lines(name, this.width * 0.3, face)
    for (let page = 0; page < count; page += 1) {
      doc.switchToPage(start + page)
      const y = this.height - margin.bottom + 14
      this.rule(y - 4)
      this.put(foot, this.left, y, face)
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
