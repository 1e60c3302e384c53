import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { begin, willSaveAs } from './journey.ts'
import { expect, test } from './launch/open.ts'

test.use({ ownProgram: false })

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
  // Laid out for paper by the runtime that prints: nothing of the window is on it.
  expect(words).not.toContain('Back to the window')
  expect(words).not.toContain('Will it hold')
  expect(words.replace(/\s+/g, ' ')).toContain(`page ${document.numPages} of ${document.numPages}`)

  // Printed: from the program's own menu, from any view. What is printed is the page, with the sheet over all of it; the
  // system's dialog behind it waits for a person.
  await page.keyboard.press('Escape')
  await expect(sheet).toHaveCount(0)
  await page.evaluate(() => {
    window.print = () => {
      const shown = window.document.querySelector('[data-testid=sheet] h1')?.textContent ?? 'no sheet'
      window.document.body.setAttribute('data-printed', shown)
    }
  })
  await electron.evaluate(({ Menu }) => {
    Menu.getApplicationMenu()
      ?.items.flatMap(({ submenu }) => submenu?.items ?? [])
      .find(({ label }) => label.startsWith('Print the sheet'))
      ?.click()
  })
  await expect(page.locator('body')).toHaveAttribute('data-printed', /Stoat/)
})
