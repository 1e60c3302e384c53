import { answer, begin, entry, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('a word for what is counted, and a comma that can only be read one way, are taken', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'track')
  await entry(page, 'track.sprocketTeeth').fill('13 teeth')
  await entry(page, 'track.sprocketTeeth').press('Enter')
  await expect(entry(page, 'track.sprocketTeeth')).toHaveValue('13')
  await showPart(page, 'motor')
  await entry(page, 'motor.ratedMaxRpm').fill('40,000')
  await entry(page, 'motor.ratedMaxRpm').press('Enter')
  await expect(entry(page, 'motor.ratedMaxRpm')).toHaveValue('40000')
  const log = answer(page).getByRole('textbox', { name: 'A log shows' })
  await log.fill('20,000')
  const grouped = await answer(page).locator('output').first().innerText()
  await log.fill('20000')
  await expect(answer(page).locator('output').first()).toHaveText(grouped)
})

test('what could not be read is said when another part is chosen', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'pack')
  await entry(page, 'pack.capacityMah').fill('12 V')
  await showPart(page, 'motor')
  await expect(page.getByRole('alert')).toContainText(
    '“12 V” was not taken as Capacity. It is as it was: 10000 mAh.',
  )
})

test('Escape takes steps back, and undo shows the part that it changes', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'pack')
  const series = entry(page, 'pack.series')
  await series.focus()
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  await expect(series).toHaveValue('8')
  await page.keyboard.press('Escape')
  await expect(series).toHaveValue('10')
  await series.fill('9')
  await showPart(page, 'track')
  await page.keyboard.press('Control+z')
  await expect(page.getByRole('combobox', { name: 'Part' })).toHaveValue('pack')
  await expect(series).toHaveValue('10')
})
