import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { begin, willSaveAs } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('the desktop window saves the sheet as a PDF on the paper chosen', async ({ open, folder }) => {
  const { page, electron } = await open()
  if (electron === null) throw new Error('no program round the page')
  await begin(page)
  await page.keyboard.press('Alt+p')
  const sheet = page.getByTestId('sheet')
  await sheet.getByLabel('Paper').selectOption('letter')
  const file = path.join(folder, 'sheet.pdf')
  await willSaveAs(electron, file)
  await sheet.getByRole('button', { name: 'Save as PDF…' }).click()
  await expect(sheet.getByRole('status')).toHaveText('Saved sheet.pdf')
  const document = await getDocument({ data: new Uint8Array(await readFile(file)), verbosity: 0 }).promise
  const last = await document.getPage(document.numPages)
  expect(last.view.slice(2).map(Math.round)).toEqual([612, 792])
  const { items } = await last.getTextContent()
  const words = items.map((item) => ('str' in item ? item.str : '')).join(' ')
  expect(words).toContain('An estimate, not an approval')
  expect(words.replace(/\s+/g, ' ')).toContain(`page ${document.numPages} of ${document.numPages}`)
})
