import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { expectAccessible } from './axe.ts'
import { answer as answerOf, begin } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** Text and size of the pages of a PDF. */
async function readBack(bytes: Uint8Array) {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages = await Promise.all(
    Array.from({ length: document.numPages }, (_, at) => document.getPage(at + 1)),
  )
  const texts = await Promise.all(pages.map((page) => page.getTextContent()))
  const words = texts.flatMap(({ items }) => items.map((item) => ('str' in item ? item.str : '')))
  return { count: pages.length, size: pages[0]?.view.slice(2), text: words.join(' ').replace(/\s+/g, ' ') }
}

test('the sheet says what the window says, prints alone on its paper, and gives the window back', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  const plain = (text: string | null) => (text ?? '').replace(/\s+/g, ' ').trim()
  const answer = plain(await answerOf(page).locator('p').first().textContent())
  const limits = await page.locator('[data-region=limits] [data-limit]').count()
  await page.getByRole('button', { name: 'Sheet', exact: true }).focus()
  await page.keyboard.press('Alt+p')
  const sheet = page.getByTestId('sheet')
  await expect(sheet.getByRole('heading', { level: 1 })).toBeFocused()
  expect(plain(await sheet.locator('.answer').textContent())).toBe(answer)
  const labels = await sheet.locator('[data-section=limits] tbody tr').count()
  expect(labels).toBeGreaterThanOrEqual(limits)
  expect(labels).toBeGreaterThan(20)
  // Nothing is wider than the window.
  expect(await sheet.evaluate((one) => one.scrollWidth - one.clientWidth)).toBe(0)

  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', 'yes')
  })
  await page.keyboard.press('Control+p')
  await expect(page.locator('body')).toHaveAttribute('data-printed', 'yes')

  await expect(sheet.locator('[data-section=remedies]')).toBeVisible()
  const a4 = await readBack(await page.pdf({ preferCSSPageSize: true }))
  expect(a4.count).toBe(1)
  // *Source:* ISO 216: 210 mm by 297 mm, in points of 1/72 inch.
  expect(a4.size?.map(Math.round)).toEqual([595, 842])
  const today = new Date().toLocaleDateString('sv')
  expect(a4.text).toMatch(new RegExp(`model version \\d+ · metric units · ${today}`))
  await sheet.getByLabel('Paper').selectOption('letter')
  const printed = await readBack(await page.pdf({ preferCSSPageSize: true }))
  expect(printed.count).toBe(1)
  expect(printed.size?.map(Math.round)).toEqual([612, 792])
  expect(printed.text).toContain(answer)
  for (const label of await sheet.locator('[data-section=limits] td:first-child').allTextContents())
    expect(printed.text).toContain(plain(label))
  expect(printed.text).not.toContain('Back to the window')
  expect(printed.text).not.toContain('Will it hold')

  expect(printed.text).toContain('What would hold')
  await sheet.getByLabel('Everything, on many pages').check()
  const whole = await readBack(await page.pdf({ preferCSSPageSize: true }))
  expect(whole.count).toBeGreaterThan(5)
  expect(whole.text).toContain(answer)
  await sheet.getByLabel('Everything, on many pages').uncheck()

  await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
  const margins = await page.evaluate(() => {
    const { colorScheme, backgroundColor } = getComputedStyle(document.documentElement)
    return { colorScheme, backgroundColor }
  })
  expect(margins, 'in the dark').toEqual({
    colorScheme: 'light',
    backgroundColor: 'rgb(255, 255, 255)',
  })
  await page.emulateMedia({ media: 'screen' })
  await expectAccessible(page, '.printed')

  await page.keyboard.press('Escape')
  await expect(sheet).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'Sheet', exact: true })).toBeFocused()
})
