import type { Block, Section, Sheet } from '../../../shared-engine/report/block.ts'
import { closely } from '../../../shared-engine/report/fit.ts'
import type { Paper } from '../../../shared-engine/report/paper.ts'
import { readable } from './pdf/letters.ts'
import { putScenes, scenesStart } from './pdf/scenes.ts'
import { putTable, tableStart } from './pdf/table.ts'
import { colours, Writer, type Face } from './pdf/writer.ts'

// The entry of a file of its own, which only a PDF loads: with the letters it is larger than the rest of the program.

const faces = {
  title: { size: 19, weight: 'strong' },
  section: { size: 12.5, weight: 'strong' },
  close: { size: 11, weight: 'strong' },
  heading: { size: 9.5, weight: 'strong' },
  answer: { size: 13, weight: 'strong' },
  text: { size: 9 },
  quiet: { size: 8.5, colour: colours.quiet },
  lines: { size: 8 },
} as const satisfies Record<string, Face>

/** pt of an indented line for each blank that it begins with. */
const blankWidth = 2.6

/** Least height that what stands under a heading needs, so that no heading ends a page. */
function startOf(writer: Writer, block: Block | undefined): number {
  if (block === undefined) return 0
  if (block.block === 'table') return tableStart(writer, block.columns, block.rows)
  if (block.block === 'scenes') return scenesStart(writer, block.scenes, block.wide)
  return 2 * writer.lineHeight(faces.answer)
}

function putHeading(writer: Writer, text: string, face: Face, below: number): void {
  const lines = writer.lines(text, writer.width, face).length
  writer.room(lines * writer.lineHeight(face) + 12 + below)
  writer.y += writer.isClose ? 3 : 6
  writer.paragraph(text, face, writer.isClose ? 0 : 2)
}

function putList(writer: Writer, items: readonly string[]): void {
  for (const item of items) {
    writer.room(writer.lineHeight(faces.text))
    writer.put('•', writer.left + 2, writer.y, faces.text)
    writer.paragraph(item, faces.text, 1, 10)
  }
  writer.y += 3
}

function putRun(writer: Writer, label: string, text: string): void {
  const name = `${label}.`
  const strong: Face = { ...faces.text, weight: 'strong' }
  const indent = writer.widthOf(`${name} `, strong)
  const [first = '', ...others] = writer.lines(text, writer.width, faces.text, indent)
  writer.room(writer.lineHeight(faces.text))
  writer.put(name, writer.left, writer.y, strong)
  writer.put(first, writer.left + indent, writer.y, faces.text)
  writer.y += writer.lineHeight(faces.text)
  for (const line of others) {
    writer.room(writer.lineHeight(faces.text))
    writer.put(line, writer.left, writer.y, faces.text)
    writer.y += writer.lineHeight(faces.text)
  }
  writer.y += 2
}

function putCaution(writer: Writer, text: string): void {
  const words = `Caution. ${text}`
  const height = writer.lines(words, writer.width - 10, faces.text).length * writer.lineHeight(faces.text)
  writer.room(height + 4)
  writer.doc.rect(writer.left, writer.y + 1, 2.5, height).fill(colours.near)
  writer.paragraph(words, faces.text, 4, 10)
}

function putLines(writer: Writer, lines: readonly string[]): void {
  for (const line of lines) {
    const indent = blankWidth * (/^ */.exec(line)?.[0].length ?? 0)
    writer.paragraph(line.trim(), faces.lines, 0, Math.min(indent, writer.width / 2))
  }
  writer.y += 4
}

function putBlock(writer: Writer, block: Block, next: Block | undefined): void {
  switch (block.block) {
    case 'heading':
      return putHeading(writer, block.text, faces.heading, startOf(writer, next))
    case 'caution':
      return putCaution(writer, block.text)
    case 'answer':
    case 'quiet':
    case 'text':
      return writer.paragraph(block.text, faces[block.block])
    case 'run':
      return putRun(writer, block.label, block.text)
    case 'list':
      return putList(writer, block.items)
    case 'table':
      return putTable(writer, block.columns, block.rows)
    case 'scenes':
      return putScenes(writer, block.scenes, block.wide)
    case 'lines':
      return putLines(writer, block.lines)
  }
}

function putSection(writer: Writer, { heading, blocks }: Section): void {
  const [first, second] = blocks
  const below =
    first?.block === 'heading'
      ? writer.lineHeight(faces.heading) + 14 + startOf(writer, second)
      : startOf(writer, first)
  putHeading(writer, heading, writer.isClose ? faces.close : faces.section, below)
  writer.rule(writer.y - 1, colours.ink)
  writer.y += writer.isClose ? 1.5 : 3
  blocks.forEach((block, at) => putBlock(writer, block, blocks[at + 1]))
}

/** Shares of the sheet's usual size that its one page is tried at, the largest first. */
const shares = Array.from({ length: 18 }, (_, step) => 0.95 - 0.02 * step)

/** Title, answer, and the rest of the one page in columns; whether all of it is on that page. */
function putPage(writer: Writer, { title, made, page }: Sheet): boolean {
  const [answer, ...others] = page
  writer.paragraph(title, faces.title, 0)
  writer.paragraph(made, faces.quiet)
  answer?.blocks.forEach((block, at) => putBlock(writer, block, answer.blocks[at + 1]))
  writer.beginColumns(closely.columns, closely.gap)
  for (const section of others) putSection(writer, section)
  const fits = writer.pages === 1
  writer.endColumns()
  return fits
}

function writerFor({ title }: Sheet, paper: Paper, share: number, trial = false): Writer {
  const { side, top, bottom } = closely
  return new Writer(paper, title, { share, side, top, bottom }, trial)
}

/** The largest share at which the page is one; where none is, the smallest. */
function pageWriter(sheet: Sheet, paper: Paper): Writer {
  // Halving: what fits at one size fits at any smaller one.
  let [fits, tooLarge] = [shares.length - 1, -1]
  while (fits - tooLarge > 1) {
    const middle = (fits + tooLarge) >> 1
    if (putPage(writerFor(sheet, paper, shares[middle] ?? 1, true), sheet)) fits = middle
    else tooLarge = middle
  }
  const writer = writerFor(sheet, paper, shares[fits] ?? 1)
  putPage(writer, sheet)
  return writer
}

/** The sheet as a PDF: drawings as vectors, its letters inside, every page numbered; and the letters that it cannot show. */
export async function sheetPdf(
  asked: Sheet,
  paper: Paper,
): Promise<{ readonly bytes: Uint8Array; readonly lacking: readonly string[] }> {
  const { sheet, lacking } = readable(asked, new Writer(paper, ''))
  const { title, made, page, sections, foot } = sheet
  const writer = page.length > 0 ? pageWriter(sheet, paper) : new Writer(paper, asked.title)
  if (page.length > 0) writer.nextPages()
  else {
    writer.paragraph(title, faces.title, 0)
    writer.paragraph(made, faces.quiet)
  }
  for (const section of sections) putSection(writer, section)
  return { bytes: await writer.finish(foot, title), lacking }
}
