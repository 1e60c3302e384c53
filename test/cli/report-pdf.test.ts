import { readFileSync } from 'node:fs'
import path from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { check, type Checked } from '../../shared-engine/check.ts'
import { completeBuild, readStoredBuild } from '../../shared-engine/entries/read.ts'
import { figureTable } from '../../shared-engine/figures/table.ts'
import { isLeast } from '../../shared-engine/limits/limit.ts'
import { limitOf } from '../../shared-engine/limits/table.ts'
import { paperSizes, type Paper } from '../../shared-engine/report/paper.ts'
import { sheetOf } from '../../shared-engine/report/sheet.ts'
import { displayUnit, format } from '../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../shared-engine/units/kinds.ts'
import { sheetPdf } from '../../src-main/cli/report/pdf.ts'
import { demoFile, pitchline, type demos, temporaryFolder } from './command.ts'

interface Piece {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly y: number
}

/** Not the foot of a page, nor its number. */
const isAboveFoot = ({ y }: Piece) => y > 46

/** What another library reads in a PDF: pieces of text with their places, page by page, points from the lower left. */
async function readBack(bytes: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages: { readonly size: readonly number[]; readonly pieces: readonly Piece[] }[] = []
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent()
    const pieces = items.flatMap((item): Piece[] => {
      if (!('str' in item) || item.str.trim() === '') return []
      const [, , , , x = NaN, y = NaN] = item.transform as readonly number[]
      return [{ text: item.str, left: x, right: x + item.width, y }]
    })
    pages.push({ size: page.view.slice(2), pieces })
  }
  const { info } = await document.getMetadata()
  await document.destroy()
  return {
    pages,
    title: (info as { Title?: string }).Title,
    text: plain(pages.flatMap(({ pieces }) => pieces.filter(isAboveFoot).map(({ text }) => text)).join(' ')),
  }
}

/** However blanks were set. */
const plain = (text: string) => text.replace(/\s+/g, ' ')

function checkedDemo(name: (typeof demos)[number], changes: object = {}): Checked {
  const read = readStoredBuild(readFileSync(demoFile(name)))
  if (!read.ok) throw new Error('the demo cannot be read')
  return check(completeBuild({ ...read.value, ...changes }))
}

const pdfOf = (checked: Checked, system: UnitSystem, paper: Paper) =>
  sheetPdf(sheetOf(checked, { system, date: '2031-02-03', workings: false }), paper)

describe.each([
  ['quick-sled-puller', 'a4', 'metric'],
  ['hut-hauler', 'letter', 'metric'],
  ['culvert-crawler', 'a4', 'imperial'],
  ['culvert-crawler', 'letter', 'metric'],
] as const)('the PDF of %s on %s, %s', (name, paper, system) => {
  it('says every limit and figure as check does, on pages of that paper, with nothing over an edge', async () => {
    const checked = checkedDemo(name)
    const { pages, text, title } = await readBack(await pdfOf(checked, system, paper))
    expect(title).toBe(checked.name)
    for (const row of checked.limits) {
      const { label = '', kind = 'none', sense } = limitOf(row.id) ?? {}
      const unit = displayUnit(kind, system, row.allowed ?? row.actual ?? 0)
      const [actual, allowed] = [row.actual, row.allowed].map(
        (value) => format(value, kind, system, unit).text,
      )
      expect(text).toContain(
        plain(`${label} ${actual} ${isLeast(sense) ? '≥' : '≤'} ${allowed} ${unit}`).trim(),
      )
    }
    const values: Readonly<Record<string, number | null>> = checked.figures
    for (const { name: figure, label, kind } of figureTable) {
      const value = values[figure] ?? null
      if (value === null) expect(text).toContain(label)
      else {
        const shown = format(value, kind, system)
        expect(text).toContain(plain(`${label} ${shown.text} ${shown.unit}`).trim())
      }
    }
    const [width, height] = paperSizes[paper]
    for (const [at, { size, pieces }] of pages.entries()) {
      // pt: what the library rounds the page's box to
      expect(Math.abs((size[0] ?? 0) - width) + Math.abs((size[1] ?? 0) - height)).toBeLessThan(0.02)
      expect(pieces.map((piece) => piece.text).join(' ')).toContain(`page ${at + 1} of ${pages.length}`)
      for (const { left, right, y } of pieces) {
        expect(left).toBeGreaterThan(20)
        expect(right).toBeLessThan(width - 20)
        expect(y).toBeGreaterThan(20)
        expect(y).toBeLessThan(height - 20)
      }
    }
  })
})

it('keeps every heading on the page of what it heads', async () => {
  const checked = checkedDemo('hut-hauler')
  const sheet = sheetOf(checked, { system: 'metric', date: null, workings: false })
  const { pages } = await readBack(await sheetPdf(sheet, 'a4'))
  const headings = sheet.sections.flatMap(({ heading, blocks }) => [
    heading,
    ...blocks.flatMap((block) => (block.block === 'heading' ? [block.text] : [])),
  ])
  for (const { pieces } of pages) {
    expect(headings).not.toContain(pieces.filter(isAboveFoot).at(-1)?.text)
  }
})

it('has its drawings as vectors and its letters inside', async () => {
  const bytes = Buffer.from(await pdfOf(checkedDemo('hut-hauler'), 'metric', 'a4')).toString('latin1')
  expect(bytes).not.toContain('/Subtype /Image')
  expect(bytes).toMatch(/\/FontFile[23]? /)
})

it('writes long and odd names and notes whole', async () => {
  const notes = Array.from({ length: 70 }, (_, at) => `line ${at} ${'word'.repeat(at % 50)}`).join('\n')
  const name = `<script> | =1+1 ${'W'.repeat(90)}`
  const { text } = await readBack(await pdfOf(checkedDemo('hut-hauler', { name, notes }), 'metric', 'a4'))
  const letters = (words: string) => words.replace(/\s+/g, '')
  expect(letters(text)).toContain(letters(name))
  for (const line of notes.split('\n')) expect(letters(text)).toContain(letters(line))
})

const folder = temporaryFolder()

it('is written by the command, and never over another file', () => {
  const file = path.join(folder(), 'sheet.pdf')
  const words = ['report', demoFile('culvert-crawler'), '-o', file]
  expect(pitchline(words)).toEqual({ code: 0, out: `${file} written\n`, err: '' })
  const bytes = readFileSync(file)
  expect(bytes.subarray(0, 5).toString()).toBe('%PDF-')
  expect(pitchline(words).code).toBe(1)
  expect(readFileSync(file).equals(bytes)).toBe(true)
})
