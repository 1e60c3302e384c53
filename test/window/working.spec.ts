import { answer, begin, entry, limit, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('any figure opens its working, which leads to the entries and follows their changes', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await answer(page).locator('[data-working="topSpeedMps"]').first().click()
  const working = page.locator('.working')
  await expect(working.getByRole('heading', { name: 'Top speed' })).toBeFocused()
  await expect(working.locator('.katex').first()).toBeVisible()
  await expect(working).toContainText('Source')
  await expect(working).toContainText('State')

  await page.keyboard.press('Escape')
  await limit(page, /Motor rpm, running free/).click()
  await working
    .getByRole('button', { name: /go to its field/ })
    .first()
    .click()
  await expect(page.locator('[data-entry]:focus')).toHaveCount(1)
  const before = await working.locator('.result').textContent()
  await showPart(page, 'motor')
  await entry(page, 'motor.kvRpmPerVolt').fill('500')
  await expect(working.locator('.result')).not.toHaveText(before ?? '')
})

test('a limit marks its place in the plot of its question', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await limit(page, /Drive tooth shear, once/).click()
  await expect(page.getByRole('tab', { name: 'Will it hold' })).toHaveAttribute('aria-selected', 'true')
  await expect(answer(page).locator('rect.place').first()).toBeVisible()
})

test('a figure is copied with its full value', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const speed = answer(page).locator('[data-working="topSpeedMps"]').first()
  await speed.focus()
  const copied = await page.evaluate(() => {
    const data = new DataTransfer()
    document.dispatchEvent(
      new ClipboardEvent('copy', { clipboardData: data, bubbles: true, cancelable: true }),
    )
    return data.getData('text/plain')
  })
  expect(copied).toMatch(/^\d+\.\d{6,}\s*km\/h$/)
  await expect(speed).toHaveAttribute('data-full', copied)

  // A plot's numbers go in columns that a spreadsheet parts, and the button says that they went.
  await page.evaluate(() => {
    const writeText = (text: string) => Promise.resolve(void Object.assign(window, { written: text }))
    Object.defineProperty(navigator, 'clipboard', { value: { writeText } })
  })
  const plot = answer(page).getByRole('button', { name: 'Copy the numbers of Thrust and resistance' })
  await plot.click()
  await expect(plot).toHaveText('Copied')
  const written = await page.evaluate(() => (window as unknown as { written: string }).written)
  const [heading = '', row = ''] = written.split('\n')
  expect(heading.split('\t').length).toBeGreaterThan(2)
  expect(row.split('\t')).toHaveLength(heading.split('\t').length)
})

test('one speed cursor is read in every plot and in the drawing', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const thrust = page.getByRole('application', { name: 'Thrust and resistance over ground speed' })
  const motor = page.locator('[data-part="motor"]')
  const before = await motor.getAttribute('aria-label')
  await thrust.focus()
  await page.keyboard.press('Home')
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Shift+ArrowRight')
  await expect(motor).not.toHaveAttribute('aria-label', before ?? '')
  const read = await page.locator('figure .at').allTextContents()
  expect(read.length).toBeGreaterThanOrEqual(3)
  await page.keyboard.press('Escape')
  await expect(motor).toHaveAttribute('aria-label', before ?? '')
})
