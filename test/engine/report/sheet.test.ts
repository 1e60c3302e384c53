import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { check, type Checked } from '../../../shared-engine/check.ts'
import { readBuild, readStoredBuild, completeBuild } from '../../../shared-engine/entries/read.ts'
import { alarmsOf } from '../../../shared-engine/alarms/alarms.ts'
import { mishapsOf } from '../../../shared-engine/explain/mishaps.ts'
import { fieldOf } from '../../../shared-engine/entries/fields.ts'
import { limitOf } from '../../../shared-engine/limits/table.ts'
import type { Block, Sheet } from '../../../shared-engine/report/block.ts'
import { sheetHtml } from '../../../shared-engine/report/html.ts'
import { markdownText, sheetMarkdown } from '../../../shared-engine/report/markdown.ts'
import { sheetOf } from '../../../shared-engine/report/sheet.ts'
import { displayUnit, format } from '../../../shared-engine/units/display.ts'

const demos = ['quick-sled-puller', 'hut-hauler', 'culvert-crawler'] as const
const manner = { system: 'metric', date: '2031-02-03', workings: false, whole: true, remedies: null } as const

function checkedDemo(name: string, changes: object = {}): Checked {
  const read = readStoredBuild(readFileSync(`examples/${name}.build.json`))
  if (!read.ok) throw new Error('the demo cannot be read')
  return check(completeBuild({ ...read.value, ...changes }))
}

const blocksOf = ({ sections }: Sheet): readonly Block[] => sections.flatMap(({ blocks }) => blocks)
const rowsOf = (sheet: Sheet, id: string): readonly (readonly string[])[] =>
  sheet.sections
    .filter((section) => section.id === id)
    .flatMap(({ blocks }) => blocks)
    .flatMap((block) => (block.block === 'table' ? block.rows.map(({ cells }) => cells) : []))

describe.each(demos)('the sheet of %s', (name) => {
  const checked = checkedDemo(name)
  const metric = sheetOf(checked, manner)

  it.each(['metric', 'imperial'] as const)('has every limit with its numbers, %s', (system) => {
    const rows = rowsOf(system === 'metric' ? metric : sheetOf(checked, { ...manner, system }), 'limits')
    expect(rows).toHaveLength(checked.limits.length)
    for (const [at, row] of checked.limits.entries()) {
      const limit = limitOf(row.id)
      const kind = limit?.kind ?? 'none'
      const unit = displayUnit(kind, system, row.allowed ?? row.actual ?? 0)
      const [label, actual, , allowed, shownUnit] = rows[at] ?? []
      expect([label, actual, allowed, shownUnit]).toEqual([
        limit?.label,
        format(row.actual, kind, system, unit).text,
        format(row.allowed, kind, system, unit).text,
        unit,
      ])
    }
  })

  it('names what was not judged, each mishap that is over, each alarm and every entry that carries a spread', () => {
    const sheet = metric
    const missing = rowsOf(sheet, 'not-judged')
      .map(([labels]) => labels)
      .join('; ')
    for (const { id } of checked.notJudged) expect(missing).toContain(limitOf(id)?.label)
    const mishaps = sheet.sections.find(({ id }) => id === 'mishaps')?.blocks ?? []
    const said = mishaps.flatMap((block) => (block.block === 'list' ? block.items : []))
    expect(said).toHaveLength(mishapsOf(checked).length)
    const set = alarmsOf(checked).filter(({ value }) => value !== null)
    expect(rowsOf(sheet, 'alarms').map(([label]) => label)).toEqual(set.map(({ label }) => label))
    const spread = rowsOf(sheet, 'entries').filter(([, , width]) => width?.startsWith('±'))
    expect(spread.length).toBeGreaterThanOrEqual(Object.keys(checked.build.tolerances).length)
  })

  it('has tables whose rows have a cell for each column, in Markdown too', () => {
    const sheet = metric
    for (const block of blocksOf(sheet))
      if (block.block === 'table')
        for (const { cells } of block.rows) expect(cells).toHaveLength(block.columns.length)
    const tables = tablesOf(sheetMarkdown(sheet))
    expect(tables.length).toBe(blocksOf(sheet).filter(({ block }) => block === 'table').length)
    for (const [head = '', rule = '', ...rows] of tables) {
      expect(rule).toMatch(/^\|( (:---|---:) \|)+$/)
      for (const row of [rule, ...rows]) expect(cellCount(row)).toBe(cellCount(head))
    }
  })

  it('is HTML whose elements close, with every limit’s name, nothing from elsewhere and no script', () => {
    const html = sheetHtml(metric, 'a4')
    expect(unclosed(html)).toEqual([])
    for (const { id } of checked.limits) expect(html).toContain(`<td>${limitOf(id)?.label}</td>`)
    expect(html).not.toMatch(/<script|<link|<img|url\((?!#)|src=|@import/)
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id)
    expect(new Set(ids).size).toBe(ids.length)
  })
})

it('is the same sheet each time, with the day that it was given and none else', () => {
  const checked = checkedDemo('hut-hauler')
  const [first, second] = [sheetOf(checked, manner), sheetOf(checked, manner)]
  expect(first).toEqual(second)
  expect(first.made).toMatch(/model version \d+ · metric units · 2031-02-03$/)
  expect(sheetOf(checked, { ...manner, date: null }).made).toMatch(/metric units$/)
})

it('says of each entry where it comes from, or that nobody said', () => {
  // In the words of the form: each origin of one entry, the rest as the file has them.
  const origins = {
    'vehicle.massKg': 'measured',
    'motor.kvRpmPerVolt': 'stated',
    'pack.cellResistanceMilliohm': 'guessed',
    'track.pitchMm': 'assumed',
  }
  const said = (path: string, checked: Checked) => {
    const label = fieldOf(path)?.label
    const rows = rowsOf(sheetOf(checked, manner), 'entries').filter(([name]) => name === label)
    return rows[0]?.[3]
  }
  const rows = (changes: object) => {
    const checked = checkedDemo('hut-hauler', changes)
    return Object.keys(origins).map((path) => said(path, checked))
  }
  expect(rows({ origins })).toEqual([
    'Measured',
    'Stated on a label or sheet',
    'Guessed',
    'Assumed by the program',
  ])
  expect(rows({ origins: {} })).toEqual(Array.from({ length: 4 }, () => 'Not stated'))
  // What nobody entered is as the program has it without.
  expect(said('pack.maxTemperatureC', checkedDemo('hut-hauler'))).toBe('Default')
})

it.each([
  ['a4', 'A4'],
  ['letter', 'Letter'],
  ['a3', 'A3'],
] as const)('is HTML for the paper that was asked for: %s', (paper, name) => {
  // *Source:* CSS Paged Media Module Level 3, 7.1: the names of paper sizes.
  const html = sheetHtml(sheetOf(checkedDemo('hut-hauler'), manner), paper)
  expect([...html.matchAll(/@page \{ size: (\w+);/g)].map(([, size]) => size)).toEqual([name])
})

it('brings the working of every limit and figure where they are asked for', () => {
  const checked = checkedDemo('culvert-crawler')
  const known = Object.values(checked.figures).filter((value) => value !== null).length
  const sheet = sheetOf(checked, { ...manner, workings: true })
  const workings = sheet.sections.find(({ id }) => id === 'workings')?.blocks ?? []
  expect(workings).toHaveLength(checked.limits.length + known)
})

it('orders the chain that the drive wants: even links, and the distance for them', () => {
  const checked = checkedDemo('hut-hauler')
  const chain = rowsOf(sheetOf(checked, manner), 'order').find(([part]) => part?.includes('chain'))?.[1] ?? ''
  // By hand: p = 15.875, C/p = 19.528, 2 C/p + 59/2 + (25/2π)²/19.528 = 69.37; the even number nearest is 70.
  expect(chain).toContain('70 links')
  // (p/4)(A + √(A² − 8 (25/2π)²)), A = 70 − 29.5 = 40.5: 315.1 mm.
  expect(chain).toContain('315\u202Fmm')
})

describe('what a person wrote', () => {
  const odd = '<script>alert(1)</script> | =1+1 *a* [b](c) `d` & "e"'
  const checked = checkedDemo('hut-hauler', { name: odd, notes: `${odd}\n\`\`\`\n# no heading\n</pre><b>` })
  const sheet = sheetOf(checked, manner)

  it('stands in HTML as text', () => {
    const html = sheetHtml(sheet, 'letter')
    expect(unclosed(html)).toEqual([])
    expect(html).not.toMatch(/<script|<b>/)
    expect(html).toContain(
      '<h1>&lt;script&gt;alert(1)&lt;/script&gt; | =1+1 *a* [b](c) `d` &amp; &quot;e&quot;</h1>',
    )
  })

  it('stands in Markdown as text, and ends no fence', () => {
    const [title = ''] = sheetMarkdown(sheet).split('\n')
    expect(title).toBe('# \\<script\\>alert(1)\\</script\\> \\| =1+1 \\*a\\* \\[b\\](c) \\`d\\` \\& "e"')
    expect(markdownText('- a')).toBe('\\- a')
    const notes = sheetMarkdown(sheet).split('\n')
    const fence = notes.indexOf('````text')
    expect(notes.slice(fence + 2, fence + 4)).toEqual(['```', '# no heading'])
    expect(notes.indexOf('````', fence)).toBeGreaterThan(fence + 3)
  })

  it('cannot drive a terminal or turn the text round', () => {
    const hostile = checkedDemo('hut-hauler', { name: 'a\u001b[2Jb\u202Ec', notes: 'x\u0007\u202Ey' })
    const text = sheetMarkdown(sheetOf(hostile, manner))
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202E]/)
  })
})

it('says of a machine that does not move off what holds it back', () => {
  const read = readBuild(readFileSync('examples/hut-hauler.build.json'))
  if (!read.ok) throw new Error('the demo cannot be read')
  const steep = check({ ...read.value, ground: { ...read.value.ground, gradePercent: 90 } })
  expect(steep.figures.topSpeedMps).toBeNull()
  const sheet = sheetOf(steep, manner)
  expect(blocksOf(sheet)[0]).toMatchObject({
    block: 'answer',
    text: expect.stringMatching(/^It does not move off: /) as string,
  })
  expect(unclosed(sheetHtml(sheet, 'a4'))).toEqual([])
})

/** Tables of a Markdown text, outside of fences: runs of lines that begin with a bar. */
function tablesOf(markdown: string): readonly (readonly string[])[] {
  const runs = markdown.replace(/^(`{3,})text\n[\s\S]*?\n\1$/gm, '').split(/\n{2,}/)
  return runs.filter((run) => run.startsWith('|')).map((run) => run.split('\n'))
}

/** Bars that no backslash escapes, less one. */
const cellCount = (row: string) => row.replace(/\\./g, '').split('|').length - 2

/** Elements of an HTML text that are not closed, or closed in the wrong order. */
function unclosed(html: string): readonly string[] {
  const open: string[] = []
  for (const [tag, slash = '', name = ''] of html.matchAll(/<(\/?)([a-zA-Z][a-zA-Z0-9]*)[^>]*>/g)) {
    if (['meta', 'br', 'hr'].includes(name) || tag.endsWith('/>')) continue
    if (slash === '') open.push(name)
    else if (open.pop() !== name) return [`</${name}>`]
  }
  return open
}
