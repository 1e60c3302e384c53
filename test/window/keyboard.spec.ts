import { readFile } from 'node:fs/promises'
import path from 'node:path'
import type { Locator, Page } from '@playwright/test'
import { answer, candidatesIn, entry, limit, overInUse, question, savedWords, willSaveAs } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** Most presses of Tab, or of an arrow in a list, from the start of a region to a control in it. */
const mostTabs = 60
/** Most presses of Tab from a question to what to measure first: lists on the way are one stop each. */
const mostToMeasure = 26

/** Tabs on until a control has the focus, and sees that it is not hidden under anything. */
async function tabTo(page: Page, wanted: Locator, most = mostTabs): Promise<void> {
  for (let presses = 0; presses < most; presses += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement).catch(() => false)) break
    await page.keyboard.press('Tab')
  }
  await expect(wanted).toBeFocused()
  await expect(wanted).toBeInViewport()
  // WCAG 2.2, 2.4.11: what has the focus is not entirely hidden by what lies over it.
  const seen = await wanted.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect()
    const over = document.elementFromPoint(left + width / 2, top + height / 2)
    return over !== null && (element.contains(over) || over.contains(element))
  })
  expect(seen).toBe(true)
}

/** Into the list of limits, which is one stop, and down by the arrow keys to one of them. */
async function toLimit(page: Page, name: RegExp): Promise<void> {
  await toRegion(page, 'limits')
  if (!(await page.evaluate(() => document.activeElement?.hasAttribute('data-limit'))))
    await page.keyboard.press('Tab')
  const wanted = limit(page, name)
  for (let presses = 0; presses < mostTabs; presses += 1) {
    if (await wanted.evaluate((element) => element === document.activeElement)) break
    await page.keyboard.press('ArrowDown')
  }
  await tabTo(page, wanted, 0)
}

/** F8 until a heading of the answer has the focus. */
async function toHeading(page: Page, name: string): Promise<void> {
  const here = () => page.evaluate(() => document.activeElement?.textContent.trim())
  for (let presses = 0; presses < 8 && (await here()) !== name; presses += 1) await page.keyboard.press('F8')
  expect(await here()).toBe(name)
}

/** F6 until the focus is in a region. */
async function toRegion(page: Page, name: string): Promise<void> {
  const here = () =>
    page.evaluate(() => document.activeElement?.closest('[data-region]')?.getAttribute('data-region'))
  for (let presses = 0; presses < 8 && (await here()) !== name; presses += 1) await page.keyboard.press('F6')
  expect(await here()).toBe(name)
}

/** Along the power path to a part, into its fields, and to one of its entries. */
async function toEntry(page: Page, part: string, name: string): Promise<void> {
  await toRegion(page, 'path')
  await page.keyboard.press('Home')
  for (let presses = 0; presses < 12; presses += 1) {
    if ((await page.locator(':focus').getAttribute('data-part')) === part) break
    await page.keyboard.press('ArrowRight')
  }
  await page.keyboard.press('Enter')
  await expect(page.getByRole('combobox', { name: 'Part' })).toHaveValue(part)
  await toRegion(page, 'fields')
  await tabTo(page, entry(page, name))
}

async function typeEntry(page: Page, part: string, name: string, value: string): Promise<void> {
  await toEntry(page, part, name)
  await page.keyboard.press('Control+a')
  await page.keyboard.type(value)
  await page.keyboard.press('Enter')
}

async function beginByKey(page: Page): Promise<void> {
  await tabTo(page, page.getByRole('button', { name: 'Got it' }))
  await page.keyboard.press('Enter')
}

test('by keyboard alone: why it is over, changed until nothing is, a logged rpm read, saved, opened again, tooth shear explained', async ({
  open,
  folder,
}) => {
  const opened = await open()
  const { page, electron } = opened
  await beginByKey(page)
  // Why: the worst limit, its sentence, and back.
  await expect.poll(() => overInUse(page)).toBe(2)
  await toLimit(page, /^Gear tooth root, once, stage 1/)
  await page.keyboard.press('Enter')
  const working = page.locator('[data-region="working"]')
  await expect(page.getByRole('heading', { name: 'Gear tooth root, once, stage 1' })).toBeFocused()
  await expect(working).toContainText('a jam at full throttle')
  await page.keyboard.press('Escape')
  await expect(limit(page, /^Gear tooth root, once, stage 1/)).toBeFocused()
  // The throttle capped against the free-running rpm, gears and sprocket changed against the load of a jam.
  await typeEntry(page, 'controller', 'controller.throttleCapPercent', '60 %')
  await expect(limit(page, /^Motor rpm, running free/)).not.toContainText('over')
  await typeEntry(page, 'stage.1', 'stages.0.driverTeeth', '24')
  await typeEntry(page, 'stage.2', 'stages.1.driverTeeth', '23')
  await typeEntry(page, 'track', 'track.sprocketTeeth', '16')
  await expect.poll(() => overInUse(page)).toBe(0)
  // A logged rpm.
  await page.keyboard.press('Alt+1')
  await toRegion(page, 'questions')
  await tabTo(page, page.getByLabel('A log shows'))
  await page.keyboard.type('20000')
  const read = answer(page).getByText(/that is .* over the ground/)
  const speed = Number.parseFloat(/[\d.]+/.exec((await read.textContent()) ?? '')?.[0] ?? '')
  // Teeth × pitch × revolutions a second, less the slip of 5 %: 16 × 0.02 m × 20000/60/(56/24 × 64/23) × 0.95 × 3.6.
  expect(speed).toBeCloseTo(16 * 0.02 * (20000 / 60 / ((56 / 24) * (64 / 23))) * 0.95 * 3.6, 1) // read to 0.1 km/h
  // Saved, closed, opened again.
  const file = path.join(folder, 'by-keyboard.build.json')
  if (electron === null) {
    const download = page.waitForEvent('download')
    await page.keyboard.press('Control+s')
    await (await download).saveAs(file)
  } else {
    await willSaveAs(electron, file)
    await page.keyboard.press('Control+s')
  }
  await expect(savedWords(page)).toContainText('Saved in')
  expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ track: { sprocketTeeth: 16 } })
  await opened.close()
  const again = await open({ file })
  await expect.poll(() => overInUse(again.page)).toBe(0)
  // Where the tooth-shear number came from.
  await toLimit(again.page, /^Drive tooth shear, once/)
  await again.page.keyboard.press('Enter')
  await expect(again.page.getByRole('heading', { name: 'Drive tooth shear, once' })).toBeFocused()
  const shear = again.page.locator('[data-region="working"]')
  await expect(shear).toContainText('Numbers put in')
  await expect(shear.getByRole('button', { name: /go to its field/ }).first()).toBeVisible()
  await expect(shear.locator('math').first()).toBeAttached()
})

test('by keyboard alone: gears searched, the second best taken, how sure that is, what to measure first', async ({
  open,
}) => {
  const { page } = await open()
  await beginByKey(page)
  await page.keyboard.press('Alt+2')
  await expect(question(page, 'Which gears')).toHaveAttribute('aria-selected', 'true')
  await toRegion(page, 'questions')
  await tabTo(page, answer(page).getByRole('button', { name: 'Search', exact: true }))
  await page.keyboard.press('Enter')
  const rows = candidatesIn(page)
  await expect(answer(page)).toContainText('candidates hold everything', { timeout: 30_000 })
  await expect(answer(page).getByRole('button', { name: 'Table as CSV' })).toBeVisible()
  await tabTo(page, rows.first())
  await expect(page.getByTestId('preview')).toBeVisible()
  await page.keyboard.press('ArrowDown')
  await expect(rows.nth(1)).toBeFocused()
  await page.keyboard.press('Enter')
  await expect.poll(() => overInUse(page)).toBe(0)
  await expect(page.getByRole('button', { name: /^Undo.*take gearing/ })).toBeVisible()
  await page.keyboard.press('Alt+3')
  await expect(answer(page)).toContainText('Measure this first', { timeout: 30_000 })
  await toRegion(page, 'questions')
  // What to measure first is not far, for who knows no other key: each list on the way is one stop.
  const measure = answer(page).getByRole('button', { name: /^Open the field of/ })
  await tabTo(page, measure, mostToMeasure)
  // Changes that would hold are one stop, gone through by arrows; headings are gone to by a key.
  await toHeading(page, 'What would hold')
  const changes = answer(page).locator('[data-remedy] button')
  await tabTo(page, changes.first(), 4)
  await page.keyboard.press('Tab')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('End')
  await expect(changes.last()).toBeFocused()
  await page.keyboard.press('Shift+Tab')
  await expect(changes.first()).toBeFocused()
  await page.keyboard.press('ArrowLeft')
  await expect(answer(page).locator('[data-remedy] summary').first()).toBeFocused()
  await page.keyboard.press('ArrowRight')
  await expect(changes.first()).toBeFocused()
  await toHeading(page, 'How sure that is')
  await tabTo(page, answer(page).getByRole('button', { name: /^Open the field of/ }), 4)
  await page.keyboard.press('Enter')
  await expect(page.locator('[data-entry]:focus')).toHaveCount(1)
  await page.keyboard.press('Control+z')
  await expect.poll(() => overInUse(page)).toBe(2)
})
