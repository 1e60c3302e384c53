import { begin, entry, openMark, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

test.beforeEach(async ({}, info) => {
  info.setTimeout(90_000)
})

test('a wrong entry says what is allowed and keeps the last good value in force', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'pack')
  const series = entry(page, 'pack.series')
  const good = await series.inputValue()
  const speed = page.locator('[data-working="topSpeedMps"]').first()
  const before = await speed.textContent()
  for (const [wrong, words] of [
    ['99', 'Allowed: a whole number, 1 to 60 cells.'],
    ['abc', '“abc” is not understood'],
    ['4.5', 'Allowed: a whole number'],
    ['', 'Needed: a whole number'],
  ] as const) {
    await series.fill(wrong)
    await expect(series).toHaveAttribute('aria-invalid', 'true')
    const message = page.locator(`[id="${(await series.getAttribute('aria-describedby'))?.split(' ')[0]}"]`)
    await expect(message).toContainText(words)
    await expect(message).toContainText(`Kept: ${good} cells.`)
    await expect(speed).toHaveText(before ?? '')
  }
  await series.press('Escape')
  await expect(series).toHaveValue(good)
  await expect(series).toHaveAttribute('aria-invalid', 'false')
})

test('rules between entries are told at the field, and refused', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'track')
  const load = entry(page, 'track.tooth.loadHeightMm')
  await load.fill('190')
  await expect(load).toHaveAttribute('aria-invalid', 'true')
})

test('numbers are taken in any unit, as sums and with a tolerance', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'track')
  const pitch = entry(page, 'track.pitchMm')
  for (const [typed, shown] of [
    ['1 in', '25.4'],
    ['12+8', '20'],
    ['20 ± 5 %', '20 ± 5 %'],
    ['2 cm', '20'],
  ] as const) {
    await pitch.fill(typed)
    await pitch.press('Enter')
    await expect(pitch).toHaveValue(shown)
  }
})

test('arrows step a number, Shift ten steps, Escape takes it back; the wheel does nothing', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'track')
  const teeth = entry(page, 'track.sprocketTeeth')
  const start = Number(await teeth.inputValue())
  await teeth.press('ArrowUp')
  await expect(teeth).toHaveValue(String(start + 1))
  await teeth.press('Shift+ArrowUp')
  await expect(teeth).toHaveValue(String(start + 11))
  await teeth.hover()
  await page.mouse.wheel(0, -240)
  await expect(teeth).toHaveValue(String(start + 11))
})

test('units change what is shown and never what is stored', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'track')
  const pitch = entry(page, 'track.pitchMm')
  await pitch.fill('25.4')
  await pitch.press('Enter')
  const speed = page.locator('[data-working="topSpeedMps"]').first()
  await expect(speed).toContainText('km/h')
  await page.keyboard.press('Alt+u')
  await expect(pitch).toHaveValue('1')
  await expect(speed).toContainText('mph')
  await page.keyboard.press('Alt+u')
  await expect(pitch).toHaveValue('25.4')
})

test('a number in another convention is asked about and converted', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'motor')
  await openMark(page, 'Winding resistance')
  await page.getByRole('button', { name: 'Winding resistance: I have it as…' }).click()
  const dialog = page.getByRole('dialog', { name: 'Winding resistance' })
  await dialog.getByLabel('One phase of a star winding').check()
  await dialog.getByLabel('Your number').fill('5')
  await expect(dialog).toContainText('10 mΩ')
  await dialog.getByRole('button', { name: 'Take it' }).click()
  await expect(entry(page, 'motor.resistanceMilliohm')).toHaveValue('10')
})

test('reductions are added, moved and removed, and undone', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const parts = page.getByRole('combobox', { name: 'Part' })
  await showPart(page, 'stage.1')
  const before = await parts.getByRole('option').count()
  await page.getByRole('button', { name: 'Add a reduction after it' }).click()
  await expect(parts).toHaveValue('stage.2')
  await expect(parts.getByRole('option')).toHaveCount(before + 1)
  await page.getByRole('button', { name: 'Earlier' }).click()
  await expect(parts).toHaveValue('stage.1')
  await page.getByRole('button', { name: 'Remove', exact: true }).click()
  await expect(parts.getByRole('option')).toHaveCount(before)
  for (let step = 0; step < 3; step += 1) await page.getByRole('button', { name: 'Undo' }).click()
  await expect(parts.getByRole('option')).toHaveCount(before)
})
