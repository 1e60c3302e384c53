import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'

const page = path.resolve(import.meta.dirname, '../../dist/page')

/** Every file of the built page with its size in bytes. */
function filesOf(): readonly { readonly name: string; readonly bytes: number }[] {
  if (!existsSync(page)) throw new Error('dist/page is missing: run `npm run build` first')
  const names = readdirSync(page, { recursive: true, encoding: 'utf8' })
  return names
    .map((name) => ({ name, facts: statSync(path.join(page, name)) }))
    .filter(({ facts }) => facts.isFile())
    .map(({ name, facts }) => ({ name, bytes: facts.size }))
}

// The budgets are what was measured when they were set, and about a tenth: a package too many, a picture or a second
// copy of something shows. Whoever needs more raises them, with the reason.

test('the page with all that it may load stays within 3.5 MB', () => {
  // 3.2 MB measured: 1.3 the program with model version 2, its workings and drawings, 0.4 logs and their columns, 0.2
  // guided tests and fits, 0.8 a thread, 0.3 mathematics, 0.4 letters, the rest smaller.
  const bytes = filesOf().reduce((sum, file) => sum + file.bytes, 0)
  expect(bytes).toBeLessThan(3.5e6)
})

/** What the page of a start names, and so has before it paints: its own script, those beside it, its styles. */
function filesOfStart() {
  const html = readFileSync(path.join(page, 'index.html'), 'utf8')
  const named = [...html.matchAll(/<(?:script|link)[^>]* (?:src|href)="\.\/([^"]+)"/g)].map(
    ([, name = '']) => name,
  )
  return filesOf().filter(({ name }) => named.includes(name.split(path.sep).join('/')))
}

test('what a start waits for stays within 1.85 MB, and sets no mathematics yet', () => {
  // 1.68 MB measured: 0.42 the window, 0.37 logs, 0.29 drawings, 0.22 the model, 0.09 guided tests, the rest smaller.
  const files = filesOfStart()
  expect(files.length).toBeGreaterThan(5)
  expect(files.reduce((sum, file) => sum + file.bytes, 0)).toBeLessThan(1.85e6)
  // What is read only when asked for: the typesetter, the sheet, guided tests, licences.
  const late = /^assets[/\\](katex|KaTeX|SheetView|Bench|licence-texts|thread)-/
  expect(filesOf().filter(({ name }) => late.test(name)).length).toBeGreaterThan(5)
  expect(files.filter(({ name }) => late.test(name))).toEqual([])
})

test('letters come in the one format that Chromium takes', () => {
  const letters = filesOf().filter(({ name }) => /\.(woff2?|ttf|otf)$/.test(name))
  expect(letters.length).toBeGreaterThan(20)
  expect(letters.filter(({ name }) => !name.endsWith('.woff2'))).toEqual([])
})
