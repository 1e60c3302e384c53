import { sceneSvg } from '../draw/svg.ts'
import { escaped } from '../draw/svg-element.ts'
import type { Scene } from '../draw/scene.ts'
import type { Block, Column, Row, Section, Sheet } from './block.ts'
import type { Paper } from './paper.ts'
import { fillings, sizeFor } from './fit.ts'
import { sheetStyle } from './style.ts'

const className = (name: string | undefined) => (name === undefined ? '' : ` class="${name}"`)

function tableText(columns: readonly Column[], rows: readonly Row[]): string {
  const sides = columns.map(({ align }) => (align === 'end' ? 'end' : undefined))
  const head = columns.map(({ label }, at) => `<th scope="col"${className(sides[at])}>${escaped(label)}</th>`)
  const body = rows.map(({ cells, tone }) => {
    const row = cells.map((cell, at) => `<td${className(sides[at])}>${escaped(cell)}</td>`)
    return `<tr${className(tone)}>${row.join('')}</tr>`
  })
  return `<table>\n<thead><tr>${head.join('')}</tr></thead>\n<tbody>\n${body.join('\n')}\n</tbody>\n</table>`
}

/** A drawing that fits its place; its ids are those of its own, which no other drawing of the sheet has. */
function figureText(scene: Scene): string {
  return `<figure>\n<figcaption><strong>${escaped(scene.title)}.</strong> ${escaped(scene.summary)}</figcaption>\n${sceneSvg(scene)}</figure>`
}

function blockText(block: Block): string {
  switch (block.block) {
    case 'heading':
      return `<h3>${escaped(block.text)}</h3>`
    case 'caution':
      return `<p class="caution"><strong>Caution.</strong> ${escaped(block.text)}</p>`
    case 'answer':
    case 'quiet':
      return `<p class="${block.block}">${escaped(block.text)}</p>`
    case 'text':
      return `<p>${escaped(block.text)}</p>`
    case 'run':
      return `<p><strong>${escaped(block.label)}.</strong> ${escaped(block.text)}</p>`
    case 'list':
      return `<ul>\n${block.items.map((item) => `<li>${escaped(item)}</li>`).join('\n')}\n</ul>`
    case 'table':
      return tableText(block.columns, block.rows)
    case 'scenes':
      return `<div class="${block.wide ? 'wide' : 'scenes'}">\n${block.scenes.map(figureText).join('\n')}\n</div>`
    case 'lines':
      return `<pre>${escaped(block.lines.join('\n'))}</pre>`
  }
}

/** A heading stands on the page of what it heads: both in one part, which the page may break inside a table. */
function sectionText({ id, heading, blocks }: Section): string {
  return `<section id="${id}">\n<h2>${escaped(heading)}</h2>\n${blocks.map(blockText).join('\n')}\n</section>`
}

/** The sheet as one HTML file that needs nothing else: its style inside, its drawings as vectors, no script. */
export function sheetHtml(sheet: Sheet, paper: Paper): string {
  const { title, made, page, sections, foot } = sheet
  const [answer, ...closely] = page
  const head = [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    `<title>${escaped(title)}</title>`,
    `<style>\n${sheetStyle(paper, sizeFor(sheet, paper, fillings.elsewhere))}</style>`,
  ]
  const body = [
    `<header><h1>${escaped(title)}</h1><p class="quiet">${escaped(made)}</p></header>`,
    ...(answer === undefined ? [] : [`<div class="answer-page">\n${sectionText(answer)}\n</div>`]),
    ...(closely.length === 0 ? [] : [`<div class="page">\n${closely.map(sectionText).join('\n')}\n</div>`]),
    ...sections.map(sectionText),
    `<footer>${escaped(foot)}</footer>`,
  ]
  return `<!doctype html>\n<html lang="en">\n<head>\n${head.join('\n')}\n</head>\n<body>\n${body.join('\n')}\n</body>\n</html>\n`
}
