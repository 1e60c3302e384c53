import { readFile } from 'node:fs/promises'
import path from 'node:path'
import {
  answer,
  begin,
  candidatesIn,
  entry,
  limit,
  question,
  savedWords,
  showPart,
  willSaveAs,
} from './journey.ts'
import { expect, test } from './launch/open.ts'

test('a change is answered everywhere, saved, and there again when the file is opened', async ({
  open,
  folder,
}) => {
  const opened = await open()
  const { page, electron } = opened
  await begin(page)
  await expect(savedWords(page)).toContainText('nothing to save')
  const speed = answer(page).locator('[data-working="topSpeedMps"]')
  const before = await speed.textContent()
  const plot = page.getByRole('application', { name: 'Thrust and resistance over ground speed' })
  const drawn = await plot.innerHTML()
  const worst = await limit(page, /Motor rpm, running free/).textContent()

  await showPart(page, 'motor')
  await entry(page, 'motor.kvRpmPerVolt').fill('500')
  await expect(speed).not.toHaveText(before ?? '')
  await expect.poll(() => plot.innerHTML()).not.toBe(drawn)
  await expect(limit(page, /Motor rpm, running free/)).not.toHaveText(worst ?? '')
  await expect(savedWords(page)).toContainText('Not saved')

  const file = path.join(folder, 'changed.build.json')
  if (electron === null) {
    const download = page.waitForEvent('download')
    await page.keyboard.press('Control+s')
    await (await download).saveAs(file)
  } else {
    await willSaveAs(electron, file)
    await page.getByRole('button', { name: 'Save', exact: true }).click()
  }
  await expect(savedWords(page)).toContainText('Saved in')
  expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ motor: { kvRpmPerVolt: 500 } })

  const after = await speed.textContent()
  await opened.close()
  const again = await open({ file })
  await expect(answer(again.page).locator('[data-working="topSpeedMps"]')).toHaveText(after ?? '')
  await showPart(again.page, 'motor')
  await expect(entry(again.page, 'motor.kvRpmPerVolt')).toHaveValue(/^500/)
})

test('undo and redo go all the way, and undoing to what was saved makes it clean', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'track')
  const teeth = entry(page, 'track.sprocketTeeth')
  const start = await teeth.inputValue()
  await teeth.press('ArrowUp')
  await teeth.press('Enter')
  await entry(page, 'track.pitchMm').fill('1 in')
  await page.keyboard.press('Enter')
  await expect(savedWords(page)).toContainText('Not saved')
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(teeth).toHaveValue(start)
  await expect(savedWords(page)).not.toContainText('Not saved')
  await page.getByRole('button', { name: 'Redo' }).click()
  await page.getByRole('button', { name: 'Redo' }).click()
  await expect(entry(page, 'track.pitchMm')).toHaveValue('25.4')
})

test('each question opens with its answer and shows its plots', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const plots = { 'How fast': 4, 'Will it hold': 7, 'How hot, how long': 3 }
  for (const [name, count] of Object.entries(plots)) {
    await question(page, name).click()
    await expect(answer(page).locator('p').first()).toContainText(/\d/)
    // The bands are drawn once their ten thousand samples are in: on a machine that others load, not within 20 s.
    await expect(answer(page).getByRole('application')).toHaveCount(count, { timeout: 60_000 })
  }
})

test('a machine that may over-rev says so in words, and no longer once its throttle is capped', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await expect(answer(page)).toContainText('Over-rev.')
  await expect(answer(page)).toContainText('past the 30,000 rpm that its maker allows')
  await showPart(page, 'controller')
  await entry(page, 'controller.throttleCapPercent').fill('70')
  await expect(answer(page)).not.toContainText('ver-rev.')
})

test('a question opens at its answer, however far down the last one was read', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await answer(page).getByRole('application').last().scrollIntoViewIfNeeded()
  await expect(answer(page).locator('p').first()).not.toBeInViewport()
  await question(page, 'How hot, how long').click()
  await expect(answer(page).locator('p').first()).toBeInViewport()
})

test('a search does not outlive its build: another one begins with what is asked of it', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await question(page, 'Which gears').click()
  await answer(page).getByRole('button', { name: 'Search', exact: true }).click()
  await expect(candidatesIn(page).first()).toBeVisible({ timeout: 30_000 })
  await page.getByRole('button', { name: 'Build', exact: true }).click()
  await page.getByRole('menuitem', { name: /New build/ }).click()
  await expect(page.locator('h1')).toHaveText('New build')
  await page.getByRole('button', { name: 'All fields and questions' }).click()
  await expect(candidatesIn(page)).toHaveCount(0)
  await expect(answer(page)).toContainText('to look at for what you ask')
  await expect(answer(page).getByText('Must hold')).toBeVisible()
})

test('undo says on its button what it takes back', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'motor')
  await entry(page, 'motor.kvRpmPerVolt').fill('500')
  await expect(page.getByRole('button', { name: 'Undo' })).toContainText('change Motor: Speed constant Kv')
})
