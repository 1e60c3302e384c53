import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { alarmsOf } from '../../shared-engine/alarms/alarms.ts'
import { check, readBuildText } from '../../shared-engine/index.ts'
import { formatFull, oneText } from '../../shared-engine/units/display.ts'
import { begin, entry, question, region, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

const block = (page: Page) => region(page, 'Alarm card')
const row = (page: Page, id: string) => page.locator(`[data-alarm="${id}"]`)

function stoat() {
  const file = new URL('../../examples/quick-sled-puller.build.json', import.meta.url)
  const read = readBuildText(readFileSync(file, 'utf8'))
  if (!read.ok) throw new Error('the demo cannot be read')
  return check(read.value)
}

async function openHot(page: Page): Promise<void> {
  await begin(page)
  await question(page, 'How hot, how long').click()
}

test('every line of the card is the engine’s, with its direction in words and its working', async ({
  open,
}) => {
  const { page } = await open()
  await openHot(page)
  const alarms = alarmsOf(stoat()).filter(({ value }) => value !== null)
  expect(alarms.length).toBeGreaterThan(5)
  for (const { id, label, direction, value, kind, warningSeconds } of alarms) {
    const line = row(page, id)
    await expect(line).toContainText(label)
    await expect(line).toContainText(direction)
    const figures = line.locator('[data-full]')
    await expect(figures.first()).toHaveAttribute('data-full', oneText(formatFull(value, kind, 'metric')))
    if (warningSeconds !== null)
      await expect(figures.nth(1)).toHaveAttribute(
        'data-full',
        oneText(formatFull(warningSeconds, 'time', 'metric')),
      )
  }
  await row(page, 'rpm').locator('[data-full]').first().click()
  await expect(page.getByRole('heading', { name: 'Motor rpm', exact: true })).toBeFocused()
  const working = page.locator('[data-region="working"]')
  await expect(working).toContainText('common practice, no source')
  await page.keyboard.press('Escape')
  await expect(row(page, 'rpm').locator('[data-full]').first()).toBeFocused()
})

test('an entry that goes takes its alarm along and is named', async ({ open }) => {
  const { page } = await open()
  await openHot(page)
  // 95 % of the rated 30,000 rpm, as `docs/model.md` has it.
  await expect(row(page, 'rpm')).toContainText('28,500')
  await showPart(page, 'motor')
  await entry(page, 'motor.ratedMaxRpm').fill('20000')
  await expect(row(page, 'rpm')).toContainText('19,000')
  await showPart(page, 'pack')
  await entry(page, 'pack.continuousC').fill('')
  await expect(row(page, 'pack-amps')).toHaveCount(0)
  await expect(block(page)).toContainText(/Pack current: no alarm; it needs “.+”( \(.+\))?\./)
})
