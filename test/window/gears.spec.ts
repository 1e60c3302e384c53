import type { Page } from '@playwright/test'
import { expectAccessible } from './axe.ts'
import { answer, begin, entry, overInUse, question, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

const search = (page: Page) => answer(page).getByRole('button', { name: 'Search', exact: true })
const candidates = (page: Page) => answer(page).locator('[data-candidate]')
const vary = (page: Page, path: string) => page.locator(`[data-vary="${path}"]`)
const bound = (page: Page) => page.locator('[data-bound="0"]')

async function openGears(page: Page): Promise<void> {
  await begin(page)
  await question(page, 'Which gears').click()
}

test('the five best for 40 km/h, nothing over, least tooth load: looked at, taken, taken back', async ({
  open,
}) => {
  const { page } = await open()
  await openGears(page)
  await expect(answer(page)).toContainText('20,736')
  await search(page).click()
  await expect(search(page)).toBeVisible({ timeout: 30_000 })
  await expect(answer(page)).toContainText('hold everything asked for')
  // What wears out was not asked to hold: where it is over all the same, the row says that it was not.
  await expect(candidates(page).first()).toContainText(/over .*, not asked\s*Drive tooth bending, for long/)
  expect(await candidates(page).count()).toBeGreaterThanOrEqual(5)
  const loads = await candidates(page).evaluateAll((rows) =>
    rows.slice(0, 5).map((row) => Number.parseFloat(row.querySelectorAll('td')[4]?.textContent ?? '')),
  )
  expect(loads).toEqual(loads.toSorted((one, other) => one - other))
  await expect.poll(() => overInUse(page)).toBe(2)

  await candidates(page).first().focus()
  await expect(page.getByTestId('preview')).toHaveText('Preview, not taken')
  await expect.poll(() => overInUse(page)).toBe(0)
  await page.keyboard.press('ArrowDown')
  await expect(candidates(page).nth(1)).toBeFocused()
  await page.keyboard.press('Escape')
  await expect(page.getByTestId('preview')).toHaveCount(0)
  await expect.poll(() => overInUse(page)).toBe(2)

  const teeth = await candidates(page).nth(1).locator('td').nth(3).textContent()
  await page.keyboard.press('Enter')
  await showPart(page, 'track')
  await expect(entry(page, 'track.sprocketTeeth')).toHaveValue((teeth ?? '').trim())
  await expect.poll(() => overInUse(page)).toBe(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  // Undo shows the part that it changes: the first of the gearing.
  await showPart(page, 'track')
  await expect(entry(page, 'track.sprocketTeeth')).toHaveValue('14')
  await expect.poll(() => overInUse(page)).toBe(2)
})

test('a long search stops at once and says what it did not look at', async ({ open }) => {
  const { page } = await open()
  await openGears(page)
  for (const [path, values] of [
    ['stages.0.drivenTeeth', '40..70'],
    ['stages.1.drivenTeeth', '40..90'],
  ] as const) {
    await answer(page)
      .getByRole('checkbox')
      .nth(path.startsWith('stages.0') ? 1 : 3)
      .check()
    await vary(page, path).fill(values)
  }
  await search(page).click()
  const stop = answer(page).getByRole('button', { name: 'Stop' })
  await expect(stop).toBeVisible()
  await expect(answer(page).getByRole('progressbar')).toBeVisible()
  await page.waitForTimeout(500)
  await stop.click()
  await expect(answer(page)).toContainText(/Stopped after [\d,]+ of 32,783,616/)
})

test('a wrong entry says what is allowed, and nothing is searched', async ({ open }) => {
  const { page } = await open()
  await openGears(page)
  await vary(page, 'track.sprocketTeeth').fill('ten')
  await expect(answer(page)).toContainText('Not understood. Allowed: a range (9..24)')
  await expect(search(page)).toBeDisabled()
  await vary(page, 'track.sprocketTeeth').fill('10, 12')
  await bound(page).fill('40 kg')
  await expect(bound(page)).toHaveAttribute('aria-invalid', 'true')
  await expect(search(page)).toBeDisabled()
  await bound(page).fill('25 mph')
  await expect(search(page)).toBeEnabled()
})

test('a space that nothing holds says which demand fails and by how much at best', async ({ open }) => {
  const { page } = await open()
  await openGears(page)
  await bound(page).fill('400 km/h')
  await search(page).click()
  await expect(answer(page)).toContainText('None of 20,736 candidates holds everything', { timeout: 30_000 })
  await expect(answer(page)).toContainText(
    /No candidate holds: Top speed of at least 400.km\/h; the best comes to \d+/,
  )
  await expect(answer(page)).toContainText('To relax:')
})

test('results of before a change say so and are no longer taken', async ({ open, shownIn }) => {
  const { page } = await open()
  await openGears(page)
  await search(page).click()
  await expect(search(page)).toBeVisible({ timeout: 30_000 })
  await showPart(page, 'vehicle')
  await entry(page, 'vehicle.massKg').fill('50')
  await expect(answer(page)).toContainText('From before the change')
  await expect(candidates(page).first().getByRole('button', { name: 'Take' })).toBeDisabled()
  if (shownIn === 'browser') await expectAccessible(page)
})
