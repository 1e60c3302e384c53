import type { Page } from '@playwright/test'
import { expectAccessible } from './axe.ts'
import { begin, entry, openMark, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

const bench = (page: Page) => page.getByRole('dialog')
const cell = (page: Page, place: string) => bench(page).locator(`[data-place="${place}"]`)

/** A spreadsheet's cells, as they come from the clipboard. */
async function paste(page: Page, text: string): Promise<void> {
  await page.evaluate((pasted) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', pasted)
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true })
    document.activeElement?.dispatchEvent(event)
  }, text)
}

test('readings give an entry with its tolerance, by keyboard alone; they stay with the build and are undone by name', async ({
  open,
  shownIn,
}) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'motor')
  await entry(page, 'motor.resistanceMilliohm').focus()
  await page.keyboard.press('Alt+M')
  await expect(bench(page)).toContainText('Winding resistance by four wires')
  await expect(bench(page).getByRole('note')).toContainText('Take care')
  await cell(page, 'rows.0.amps').focus()
  // 10 mΩ at 20 °C: Ohm's law, with a little scatter.
  await paste(page, 'Current\tVolts (mV)\n2,0\t20,0\n4,0\t40,1\n6,0\t59,9\n8,0\t80,1\n10,0\t99,9')
  await cell(page, 'lists.windingCelsius').focus()
  await page.keyboard.type('20 20.1')
  const result = bench(page).locator('[data-result="resistance"]')
  await expect(result).toContainText(/^(9\.9|10\.0)/, { timeout: 15_000 })
  await expect(bench(page).getByRole('application', { name: /Volts over current/ })).toBeVisible()
  if (shownIn === 'browser') await expectAccessible(page, 'dialog')
  const told = (await result.textContent()) ?? ''
  await bench(page).getByRole('button', { name: 'Take Winding resistance into the build' }).focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('Escape')
  await expect(bench(page)).toHaveCount(0)
  await expect(entry(page, 'motor.resistanceMilliohm')).toBeFocused()
  const [value = ''] = told.split('\u202F')
  await expect(entry(page, 'motor.resistanceMilliohm')).toHaveValue(value)
  await openMark(page, 'Winding resistance')
  await expect(page.getByLabel('Where Winding resistance comes from')).toHaveValue('measured')
  await expect(page.getByRole('button', { name: /^Undo: take Winding resistance/ })).toBeVisible()
  await page.keyboard.press('Alt+M')
  await expect(cell(page, 'rows.4.volts')).toHaveValue('99,9 mV')
  await page.keyboard.press('Escape')
  await page.keyboard.press('Control+Z')
  await expect(page.getByRole('button', { name: /^Undo: change readings/ })).toBeVisible()
  await expect(entry(page, 'motor.resistanceMilliohm')).not.toHaveValue(value)
})

test('what is no number is said beside the table and kept out of the build; too few readings give no result', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+M')
  await bench(page).getByRole('button', { name: 'Speed constant from the free run' }).first().click()
  await cell(page, 'rows.0.volts').fill('3.9 or so')
  await expect(cell(page, 'rows.0.volts')).toHaveAttribute('aria-invalid', 'true')
  await expect(bench(page)).toContainText('Row 1, Volts, V: “or so” is not a unit of this entry')
  await expect(bench(page)).toContainText('Not kept: the place counts as empty.')
  await cell(page, 'rows.0.volts').fill('3,9')
  await cell(page, 'rows.0.rpm').fill('2000')
  // Neither a wheel nor an arrow changes a reading unseen.
  await cell(page, 'rows.0.rpm').hover()
  await page.mouse.wheel(0, 120)
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('ArrowDown')
  await expect(cell(page, 'rows.0.rpm')).toHaveValue('2000')
  await expect(bench(page)).toContainText('take the readings again', { timeout: 15_000 })
  await expect(bench(page).getByRole('button', { name: /^Take / })).toHaveCount(0)
  await bench(page).getByRole('button', { name: 'Remove these readings' }).click()
  await expect(cell(page, 'rows.0.volts')).toHaveValue('')
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: /^Undo: remove readings/ })).toBeVisible()
})

test('an entry that several tests can fill shows these first; the list begins with what tells most', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'motor')
  await entry(page, 'motor.kvRpmPerVolt').focus()
  await page.getByRole('button', { name: 'Speed constant Kv: from a measurement' }).click()
  await expect(bench(page).getByRole('heading', { name: /2 ways to measure it/ })).toBeVisible()
  await expect(bench(page)).toContainText(/Halving the tolerance of .* narrows the margin of/, {
    timeout: 30_000,
  })
})
