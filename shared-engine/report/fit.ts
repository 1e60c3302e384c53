import { textWidth } from '../draw/text-width.ts'
import type { Block, Column, Row, Section, Sheet } from './block.ts'
import { paperSizes, type Paper } from './paper.ts'

/** How the one page is set; points. A style sheet and whoever writes a PDF use the same. */
export const closely = { columns: 3, gap: 10, side: 22, top: 21, bottom: 41, leading: 1.15 } as const

/** Sizes of its letters that are tried, pt: the largest is pleasant, the smallest that of a data sheet's small print. */
const sizes = Array.from({ length: 20 }, (_, step) => 8.5 - 0.2 * step)
/**
 * How much of a line is filled, by widths that are rather too wide for the bundled typeface and too narrow for some that a
 * file may meet elsewhere. *Source:* tried on the demos, in Chromium.
 */
export const fillings = { bundled: 1.12, elsewhere: 0.9 } as const
/** Columns are not filled to their last line: a heading stays with what it heads, a drawing is not cut. */
const spare = 0.93

/**
 * The size of letters, pt, at which the sheet's page should fit on one paper, for those who cannot try: a style sheet in a
 * file without a script. The smallest where none does; what is too much then goes on over the page.
 *
 * @param filling one of `fillings`
 */
export function sizeFor({ page, title, made }: Sheet, paper: Paper, filling: number): number {
  const linesIn = (text: string, across: number, size: number) =>
    Math.max(1, Math.ceil(textWidth(text, size) / (across * filling)))
  const [width, height] = paperSizes[paper]
  const whole = width - 2 * closely.side
  const column = (whole - (closely.columns - 1) * closely.gap) / closely.columns
  const [answer, ...others] = page
  const fits = (size: number) => {
    const line = size * closely.leading
    const head = linesIn(title, whole, 2 * size) * 2 * line + linesIn(made, whole, size) * line
    const top = answer === undefined ? 0 : sectionHeight(answer, whole, size, linesIn)
    const room = (height - closely.top - closely.bottom - head - top - 3 * line) * closely.columns
    const needed = others.reduce((sum, section) => sum + sectionHeight(section, column, size, linesIn), 0)
    return needed <= room * spare
  }
  return sizes.find(fits) ?? sizes.at(-1) ?? 0
}

/** Lines that a text takes: how wide, at which size. */
type Lines = (text: string, width: number, size: number) => number

function sectionHeight({ blocks }: Section, width: number, size: number, linesIn: Lines): number {
  // Its heading is larger than the text and has a line of room about it.
  return blocks.reduce(
    (sum, block) => sum + blockHeight(block, width, size, linesIn),
    2.4 * size * closely.leading,
  )
}

function blockHeight(block: Block, width: number, size: number, linesIn: Lines): number {
  const line = size * closely.leading
  const after = 0.25 * size
  const lines = (text: string) => linesIn(text, width, size) * line
  switch (block.block) {
    case 'heading':
      return lines(block.text) + 0.6 * size
    case 'answer':
      return linesIn(block.text, width, 1.5 * size) * 1.5 * line + after
    case 'text':
    case 'quiet':
      return lines(block.text) + after
    case 'caution':
      return lines(`Caution. ${block.text}`) + after
    case 'run':
      return lines(`${block.label}. ${block.text}`) + after
    case 'list':
      return block.items.reduce((sum, item) => sum + lines(`     ${item}`), after)
    case 'lines':
      return block.lines.reduce((sum, one) => sum + lines(one), after)
    case 'table':
      return tableHeight(block, width, size, linesIn) + after
    case 'scenes':
      return block.scenes.reduce(
        (sum, { title, summary, width: across, height }) =>
          sum + lines(`${title}. ${summary}`) + (width * height) / across + line,
        0,
      )
  }
}

/** Numbers are not broken: their columns are as wide as the widest of them, the others share what is left. */
function tableHeight(
  { columns, rows }: { readonly columns: readonly Column[]; readonly rows: readonly Row[] },
  width: number,
  size: number,
  linesIn: Lines,
): number {
  const all = [columns.map(({ label }) => label), ...rows.map(({ cells }) => cells)]
  const widest = columns.map(({ align }, at) =>
    align === 'end' ? Math.max(...all.map((cells) => textWidth(cells[at] ?? '', size))) + 4 : 0,
  )
  const left = width - widest.reduce((sum, one) => sum + one, 0)
  const shares = columns.reduce((sum, { align, share }) => sum + (align === 'end' ? 0 : share), 0)
  const across = columns.map(({ align, share }, at) =>
    align === 'end' ? Infinity : Math.max(4 * size, (left * share) / shares - 4, widest[at] ?? 0),
  )
  return all.reduce((sum, cells) => {
    const lines = cells.map((cell, at) => linesIn(cell, across[at] ?? width, size))
    return sum + Math.max(...lines) * size * closely.leading + 1.2
  }, 0)
}
