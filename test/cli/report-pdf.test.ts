import { readFileSync } from 'node:fs'
import path from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { alarmsOf } from '../../shared-engine/alarms/alarms.ts'
import { check, type Checked } from '../../shared-engine/check.ts'
import { completeBuild, readStoredBuild } from '../../shared-engine/entries/read.ts'
import { caution } from '../../shared-engine/constants.ts'
import { mishapsOf, mishapSentence } from '../../shared-engine/explain/mishaps.ts'
import { orderOf } from '../../shared-engine/explain/order.ts'
import { figureTable } from '../../shared-engine/figures/table.ts'
import { isLeast } from '../../shared-engine/limits/limit.ts'
import { limitOf } from '../../shared-engine/limits/table.ts'
import { remediesFor } from '../../shared-engine/remedy/remedy.ts'
import type { Sheet } from '../../shared-engine/report/block.ts'
import { paperSizes, type Paper } from '../../shared-engine/report/paper.ts'
import { sheetOf } from '../../shared-engine/report/sheet.ts'
import { pageSubjects } from '../../shared-engine/report/subjects.ts'
import { displayUnit, format, formatText } from '../../shared-engine/units/display.ts'
import type { UnitSystem } from '../../shared-engine/units/kinds.ts'
import { sheetPdf } from '../../src-main/cli/report/pdf.ts'
import { demoFile, pitchline, type demos, temporaryFolder } from './command.ts'

interface Piece {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly y: number
  /** Size of its letters, pt. */
  readonly size: number
}

/** Not the foot of a page, nor its number. */
const isAboveFoot = ({ y }: Piece) => y > 40

/** What another library reads in a PDF: pieces of text with their places, page by page, points from the lower left. */
async function readBack(bytes: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages: { readonly size: readonly number[]; readonly pieces: readonly Piece[] }[] = []
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent()
    const pieces = items.flatMap((item): Piece[] => {
      if (!('str' in item) || item.str.trim() === '') return []
      const [, , across = NaN, up = NaN, x = NaN, y = NaN] = item.transform as readonly number[]
      return [{ text: item.str, left: x, right: x + item.width, y, size: Math.hypot(across, up) }]
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

/** However blanks were set, and whichever of two signs that look the same: the micro sign is read back as μ. */
const plain = (text: string) => text.replace(/\s+/g, ' ').replaceAll('µ', 'μ')

function checkedDemo(name: (typeof demos)[number], changes: object = {}): Checked {
  const read = readStoredBuild(readFileSync(demoFile(name)))
  if (!read.ok) throw new Error('the demo cannot be read')
  return check(completeBuild({ ...read.value, ...changes }))
}

const wholeManner = { date: '2031-02-03', workings: false, whole: true, remedies: null } as const

async function pdfOf(checked: Checked, system: UnitSystem, paper: Paper): Promise<Uint8Array> {
  return (await sheetPdf(sheetOf(checked, { ...wholeManner, system }), paper)).bytes
}

/** The words of a limit's row, and of a figure, as check has them. */
function limitWords(row: Checked['limits'][number], system: UnitSystem): string {
  const { label = '', kind = 'none', sense } = limitOf(row.id) ?? {}
  const unit = displayUnit(kind, system, row.allowed ?? row.actual ?? 0)
  const [actual, allowed] = [row.actual, row.allowed].map((value) => format(value, kind, system, unit).text)
  return plain(`${label} ${actual} ${isLeast(sense) ? '≥' : '≤'} ${allowed} ${unit}`).trim()
}

const figureWords = ({ label, kind }: (typeof figureTable)[number], value: number, system: UnitSystem) => {
  const shown = format(value, kind, system)
  return plain(`${label} ${shown.text} ${shown.unit}`).trim()
}

/** Pieces of text that come nearer than so much to an edge, pt. */
function nearEdge(
  { pieces }: { readonly pieces: readonly Piece[] },
  [width, height]: readonly [number, number],
): readonly string[] {
  const least = 20
  return pieces
    .filter(({ left, right, y }) => left < least || right > width - least || y < least || y > height - least)
    .map(({ text }) => text)
}

describe.each([
  ['quick-sled-puller', 'a4', 'metric', 4.5],
  ['hut-hauler', 'letter', 'metric', 4.5],
  // For the wall: no letters smaller than those of a newspaper.
  ['culvert-crawler', 'a3', 'imperial', 7],
] as const)('the one page of %s on %s, %s', (name, paper, system, leastSize) => {
  it('is one page and says what check says: limits, figures, entries, remedies, alarms, orders, cautions', async () => {
    const checked = checkedDemo(name)
    const remedies = remediesFor(checked.build)
    const sheet = sheetOf(checked, { system, date: '2031-02-03', workings: false, whole: false, remedies })
    const { bytes, lacking } = await sheetPdf(sheet, paper)
    expect(lacking).toEqual([])
    const { pages, text } = await readBack(bytes)
    expect(pages).toHaveLength(1)
    const [page] = pages
    if (page === undefined) throw new Error('no page')
    expect(nearEdge(page, paperSizes[paper])).toEqual([])
    expect(Math.min(...page.pieces.filter(isAboveFoot).map(({ size }) => size))).toBeGreaterThan(leastSize)
    for (const row of checked.limits) expect(text).toContain(limitWords(row, system))
    const values: Readonly<Record<string, number | null>> = checked.figures
    const figures = pageSubjects.flatMap(([, some]) => some)
    expect(figures.length).toBeGreaterThan(40)
    for (const { name: figure, label, kind } of figures) {
      const value = values[figure] ?? null
      if (value !== null) expect(text).toContain(plain(`${label} ${formatText(value, kind, system)}`))
    }
    for (const { id } of checked.notJudged) expect(text).toContain(plain(limitOf(id)?.label ?? ''))
    for (const mishap of mishapsOf(checked)) expect(text).toContain(plain(mishapSentence(mishap, system)))
    for (const { label, words } of orderOf(checked, system))
      expect(text).toContain(plain(`${label}. ${words}`))
    for (const { label, value, kind } of alarmsOf(checked))
      if (value !== null) expect(text).toMatch(labelThen(label, format(value, kind, system).text))
    const [least] = remedies.remedies
    if (!remedies.holds && least !== undefined) expect(text).toContain(`${least.label}: `)
    expect(text).toContain(caution)
    // Every word of every section, so that nothing was left away between two columns.
    for (const word of wordsOf(sheet)) expect(text).toContain(word)
  })
})

/** A label, which way, then its value. */
const labelThen = (label: string, value: string) =>
  new RegExp(`${escapedFor(plain(label))} (above|below) ${escapedFor(plain(value))}`)
const escapedFor = (words: string) => words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** Texts of the page's blocks, tables cell by cell. */
function wordsOf({ page }: Sheet): readonly string[] {
  return page
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => {
      if (block.block === 'table') return block.rows.flatMap(({ cells }) => cells)
      if (block.block === 'list') return block.items
      if (block.block === 'run') return [`${block.label}. ${block.text}`]
      return block.block === 'scenes' || block.block === 'lines' ? [] : [block.text]
    })
    .map((words) => plain(words).trim())
}

it('goes on over its page where even the smallest letters are too many, and loses none', async () => {
  const many = Array.from({ length: 20 }, (_, at) => ({
    name: `pump number ${at} for the floor`,
    watts: at + 1,
    volts: 12,
  }))
  const checked = checkedDemo('hut-hauler', { accessories: many })
  const sheet = sheetOf(checked, {
    system: 'metric',
    date: null,
    workings: false,
    whole: false,
    remedies: null,
  })
  const { bytes } = await sheetPdf(sheet, 'letter')
  const { pages, text } = await readBack(bytes)
  for (const { name } of many) expect(text).toContain(name)
  for (const page of pages) expect(nearEdge(page, paperSizes.letter)).toEqual([])
})

it('names the letters that its typeface lacks instead of showing boxes', async () => {
  const checked = checkedDemo('hut-hauler', { name: 'Ibex 山羊 🦫', notes: 'Für Ørsta, Łódź, Ελλάδα, Яма' })
  const sheet = sheetOf(checked, { ...wholeManner, system: 'metric' })
  const { bytes, lacking } = await sheetPdf(sheet, 'a4')
  expect(lacking).toEqual(['山', '羊', '🦫'])
  const { text } = await readBack(bytes)
  expect(text).toContain('Ibex ?? ?')
  expect(text).toContain('letters that this typeface lacks (U+5C71, U+7F8A, U+1F9AB)')
  expect(text).toContain('Für Ørsta, Łódź, Ελλάδα, Яма')
})

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
    for (const row of checked.limits) expect(text).toContain(limitWords(row, system))
    const values: Readonly<Record<string, number | null>> = checked.figures
    for (const figure of figureTable) {
      const value = values[figure.name] ?? null
      expect(text).toContain(value === null ? figure.label : figureWords(figure, value, system))
    }
    const [width, height] = paperSizes[paper]
    for (const [at, { size, pieces }] of pages.entries()) {
      // pt: what the library rounds the page's box to
      expect(Math.abs((size[0] ?? 0) - width) + Math.abs((size[1] ?? 0) - height)).toBeLessThan(0.02)
      expect(pieces.map((piece) => piece.text).join(' ')).toContain(`page ${at + 1} of ${pages.length}`)
      expect(nearEdge({ pieces }, [width, height])).toEqual([])
    }
  })
})

it('keeps every heading on the page of what it heads', async () => {
  const checked = checkedDemo('hut-hauler')
  const sheet = sheetOf(checked, {
    system: 'metric',
    date: null,
    workings: false,
    whole: true,
    remedies: null,
  })
  const { pages } = await readBack((await sheetPdf(sheet, 'a4')).bytes)
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
