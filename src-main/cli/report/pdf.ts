import type { Block, Section, Sheet } from '../../../shared-engine/report/block.ts'
import type { Paper } from '../../../shared-engine/report/paper.ts'
import { putScenes, scenesStart } from './pdf/scenes.ts'
import { putTable, tableStart } from './pdf/table.ts'
import { colours, Writer, type Face } from './pdf/writer.ts'

// The entry of a file of its own, which only a PDF loads: with the letters it is larger than the rest of the program.

const faces = {
  title: { size: 19, weight: 'strong' },
  section: { size: 12.5, weight: 'strong' },
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
  writer.y += 6
  writer.paragraph(text, face, 2)
}

function putList(writer: Writer, items: readonly string[]): void {
  for (const item of items) {
    writer.room(writer.lineHeight(faces.text))
    writer.put('•', writer.left + 2, writer.y, faces.text)
    writer.paragraph(item, faces.text, 1, 10)
  }
  writer.y += 3
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
  putHeading(writer, heading, faces.section, below)
  writer.rule(writer.y - 1, colours.ink)
  writer.y += 3
  blocks.forEach((block, at) => putBlock(writer, block, blocks[at + 1]))
}

/** The sheet as a PDF: drawings as vectors, its letters inside, every page numbered. */
export function sheetPdf({ title, made, sections, foot }: Sheet, paper: Paper): Promise<Uint8Array> {
  const writer = new Writer(paper, title)
  writer.paragraph(title, faces.title, 0)
  writer.paragraph(made, faces.quiet)
  for (const section of sections) putSection(writer, section)
  return writer.finish(foot, title)
}
