import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Page } from '@playwright/test'
import { expectAccessible } from './axe.ts'
import { begin, entry, question, region, showPart, willSaveAs } from './journey.ts'
import { expect, test } from './launch/open.ts'

const block = (page: Page) => region(page, 'Over a drive')
const driven = (page: Page) => page.locator('[data-drive="answer"]')
const cell = (page: Page, column: string, row: number) =>
  page.locator(`[data-column="${column}"]`).nth(row - 1)

async function openHot(page: Page): Promise<void> {
  await begin(page)
  await question(page, 'How hot, how long').click()
  await expect(driven(page)).toBeVisible({ timeout: 20_000 })
}

/** The preset of eight rows, ten minutes and forty seconds long. */
async function openHutRound(page: Page): Promise<void> {
  await openHot(page)
  await block(page).getByLabel('Drive', { exact: true }).selectOption('Hut round')
  await expect(block(page).locator('p').first()).toContainText('Hut round takes', { timeout: 20_000 })
}

/** A pattern of a thousand starts that break loose and are braked: long enough to be stopped. */
function longPattern(): string {
  const rows = Array.from({ length: 2000 }, (_, at) =>
    at % 2 === 0
      ? { seconds: 60, throttlePercent: 100, gripPercent: 1 }
      : { seconds: 2, brakePercent: 100, gripPercent: 1 },
  )
  return JSON.stringify({ format: 'pitchline-pattern', version: 2, name: 'Two thousand', notes: '', rows })
}

test('a named pattern is driven: what is left, peaks with their moments, energy, plots on one axis', async ({
  open,
  shownIn,
}) => {
  const { page } = await open()
  await openHutRound(page)
  // The sum of the rows' seconds is 640: 10 min 40 s.
  await expect(block(page).locator('p').first()).toContainText(/Hut round takes 10\.67.min/)
  await expect(block(page)).toContainText('RMS current of one motor')
  await expect(block(page)).toContainText(/Hottest winding\s*[\d.]+.°C at [\d.]+.min/)
  await expect(block(page).getByRole('table', { name: /^Where the .* from the pack went/ })).toContainText(
    'Climbing',
  )
  const plot = block(page).getByRole('application', { name: 'Over the drive: Hut round' })
  for (const axis of ['Temperature', 'Charge', 'Pack volts', 'Ground speed', 'Current'])
    await expect(plot).toContainText(axis)
  // A controller for toys is past its burst as soon as it drives, in the first row, whose field is one press away.
  await showPart(page, 'controller')
  await entry(page, 'controller.burstAmps').fill('1')
  const passed = page.locator('[data-passed="controller.current-burst"]')
  await expect(passed).toContainText(/passes 1\.000.A .*, in row 1, and reaches/, { timeout: 20_000 })
  await passed.getByRole('button', { name: 'row 1 of the drive' }).click()
  await expect(cell(page, 'ask', 1)).toBeFocused()
  await passed.getByRole('button', { name: 'a lower current limit' }).click()
  await expect(entry(page, 'controller.currentLimitAmps')).toBeFocused()
  await block(page).getByLabel('Drive', { exact: true }).selectOption('Stop and go')
  await expect(block(page).locator('p').first()).toContainText('Stop and go', {
    timeout: 20_000,
  })
  if (shownIn === 'browser') await expectAccessible(page, '#answer')
})

test('rows are edited by keyboard; a wrong one says what is allowed and nothing is driven', async ({
  open,
}) => {
  const { page } = await open()
  await openHutRound(page)
  await block(page).getByText('The pattern’s 8 rows').click()
  await cell(page, 'ask', 2).fill('900 km/h')
  await expect(block(page)).toContainText('Row 2, what is asked. Allowed: 0 to 200 km/h.')
  await expect(cell(page, 'ask', 2)).toHaveAttribute('aria-invalid', 'true')
  await cell(page, 'ask', 2).fill('fast')
  await expect(block(page)).toContainText(/Row 2, what is asked\. .*km\/h/)
  await page.keyboard.press('Escape')
  await expect(cell(page, 'ask', 2)).toHaveValue('6')

  await cell(page, 'seconds', 8).fill('2 min')
  await expect(block(page)).toContainText('From before the change.')
  // 640 s less 40 s and 120 s more: 12 min.
  await expect(block(page).locator('p').first()).toContainText(/Hut round, changed takes 12\.00.min/, {
    timeout: 20_000,
  })
  await page.keyboard.press('Enter')
  await expect(cell(page, 'seconds', 9)).toBeFocused()
  await expect(cell(page, 'seconds', 9)).toHaveValue('120')
  await page.keyboard.press('Control+Delete')
  await expect(page.locator('[data-column="seconds"]')).toHaveCount(8)
  await expect(cell(page, 'seconds', 8)).toBeFocused()
  await block(page).getByRole('button', { name: 'Undo: remove a row' }).click()
  await expect(page.locator('[data-column="seconds"]')).toHaveCount(9)
  await page.getByRole('button', { name: 'Metric' }).click()
  await expect(cell(page, 'ask', 1)).toHaveValue(/^2\.485/) // 4 km/h over 1.609344 km a mile
})

test('a pattern is saved, opened again and stopped; a file that is none changes nothing', async ({
  open,
  folder,
}) => {
  const { page, electron } = await open()
  await openHutRound(page)
  const file = path.join(folder, 'round.pattern.json')
  const save = block(page).getByRole('button', { name: 'Save the pattern' })
  if (electron === null) {
    const download = page.waitForEvent('download')
    await save.click()
    await (await download).saveAs(file)
  } else {
    await willSaveAs(electron, file)
    await save.click()
    await expect.poll(() => readFile(file, 'utf8').catch(() => '')).not.toBe('')
  }
  const saved: unknown = JSON.parse(await readFile(file, 'utf8'))
  expect(saved).toMatchObject({ format: 'pitchline-pattern', name: 'Hut round' })

  const picker = block(page).getByLabel('A file of a drive pattern')
  await writeFile(path.join(folder, 'none.json'), '{"format":"pitchline-pattern","version":1}')
  await picker.setInputFiles(path.join(folder, 'none.json'))
  await expect(page.getByText('none.json is not a drive pattern that can be opened.')).toBeVisible()
  await expect(block(page).locator('p').first()).toContainText('Hut round takes')

  await writeFile(path.join(folder, 'long.json'), longPattern())
  await picker.setInputFiles(path.join(folder, 'long.json'))
  const stop = block(page).getByRole('button', { name: 'Stop' })
  // Without waiting for it to stand still: the drive may end meanwhile.
  await stop.dispatchEvent('click', {}, { timeout: 10_000 })
  await expect(block(page)).toContainText('Stopped: the drive was not followed to its end.')
  await expect(block(page).getByRole('button', { name: 'Drive', exact: true })).toBeVisible()
  await block(page).getByText('The pattern’s 2000 rows').click()
  await expect(block(page)).toContainText('Too many rows to edit here')
  await picker.setInputFiles(file)
  // Its thread was ended: the next drive does not wait for the one that was stopped.
  await expect(block(page).locator('p').first()).toContainText(/Hut round takes 10\.67.min/, {
    timeout: 5000,
  })
})
