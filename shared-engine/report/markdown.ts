import type { Block, Column, Row, Sheet } from './block.ts'

/**
 * Text as Markdown shows it, letter for letter: marks that could begin markup, a cell's end or a tag are escaped.
 *
 * *Source:* CommonMark 0.31, backslash escapes: every ASCII punctuation mark may be escaped.
 */
export function markdownText(text: string): string {
  return text
    .replace(/[\\`*_{}[\]<>#|~&]/g, '\\$&')
    .replace(/^(\s*)([-+=]|\d+(?=[.)]))/, (_, space: string, mark: string) =>
      /\d/.test(mark) ? `${space}${mark}` : `${space}\\${mark}`,
    )
}

/** A cell on one line; an empty one keeps its place. */
const cell = (text: string) => markdownText(text.replace(/\s*\n\s*/g, ' ')) || ' '

const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`

function tableText(columns: readonly Column[], rows: readonly Row[]): string {
  const rule = columns.map(({ align }) => (align === 'end' ? '---:' : ':---'))
  return [
    line(columns.map(({ label }) => cell(label))),
    line(rule),
    ...rows.map(({ cells }) => line(cells.map(cell))),
  ].join('\n')
}

/** Lines that keep their breaks, between fences that no line of them can end. */
function fenced(lines: readonly string[]): string {
  const longest = Math.max(2, ...lines.flatMap((one) => [...one.matchAll(/`+/g)].map(([run]) => run.length)))
  const fence = '`'.repeat(longest + 1)
  return [`${fence}text`, ...lines, fence].join('\n')
}

function blockText(block: Block): string {
  switch (block.block) {
    case 'answer':
      return `**${markdownText(block.text)}**`
    case 'heading':
      return `### ${markdownText(block.text)}`
    case 'caution':
      return `> **Caution.** ${markdownText(block.text)}`
    case 'text':
    case 'quiet':
      return markdownText(block.text)
    case 'run':
      return `**${markdownText(block.label)}.** ${markdownText(block.text)}`
    case 'list':
      return block.items.map((item) => `- ${markdownText(item)}`).join('\n')
    case 'table':
      return tableText(block.columns, block.rows)
    case 'scenes':
      // Text has no drawings: what each shows is said, with its numbers.
      return block.scenes.map(({ title, summary }) => `- ${markdownText(`${title}: ${summary}`)}`).join('\n')
    case 'lines':
      return fenced(block.lines)
  }
}

/** The sheet as Markdown with tables, its drawings in words. */
export function sheetMarkdown({ title, made, page, sections, foot }: Sheet): string {
  const parts = [...page, ...sections].flatMap(({ heading, blocks }) => [
    `## ${markdownText(heading)}`,
    ...blocks.map(blockText),
  ])
  return `${[`# ${markdownText(title)}`, markdownText(made), ...parts, '---', markdownText(foot)].join('\n\n')}\n`
}
