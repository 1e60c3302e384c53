import { readFile, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Page } from '@playwright/test'
import { entry, region, savedWords, showPart } from './journey.ts'
import { expect, test, type Opened, type OpenOptions } from './launch/open.ts'

// A browser tab gets no path, so only the window can set recovered work beside its file; that it comes back at all is
// looked at in safe.spec.ts for both.

/** Longer than unsaved work may stay unkept: 2 s. */
const keptAfter = 2000

type Open = (options?: OpenOptions) => Promise<Opened>

/** A saved file, changed in the window and not saved, and the program killed. */
async function killedOver(open: Open, folder: string, change: (page: Page) => Promise<void>) {
  const file = path.join(folder, 'crawler.build.json')
  await writeFile(file, await readFile('examples/culvert-crawler.build.json'))
  const first = await open({ file })
  await change(first.page)
  await expect(savedWords(first.page)).toContainText('Not saved')
  await first.page.waitForTimeout(keptAfter)
  first.electron?.process().kill('SIGKILL')
  return file
}

async function changeMass(page: Page) {
  await showPart(page, 'vehicle')
  await entry(page, 'vehicle.massKg').fill('41 ± 5 %')
  await entry(page, 'vehicle.massKg').press('Enter')
}

test('recovered work tells what it would change in its file, and never writes there by itself', async ({
  open,
  folder,
}) => {
  const file = await killedOver(open, folder, changeMass)
  const before = await readFile(file, 'utf8')
  const { massKg } = (JSON.parse(before) as { vehicle: { massKg: number } }).vehicle
  const { page } = await open()
  const offer = region(page, 'Recovered work')
  await expect(offer).toContainText('Its file crawler.build.json is untouched.')
  await expect(offer.getByRole('listitem')).toHaveText([
    `Machine: Mass, ready to run ${massKg} kg → 41 kg`,
    'Machine: Mass, ready to run (tolerance) – → ± 5 %',
  ])
  await offer.getByRole('button', { name: 'Recover it' }).click()
  await showPart(page, 'vehicle')
  await expect(entry(page, 'vehicle.massKg')).toHaveValue('41 ± 5 %')
  await expect(savedWords(page)).toContainText('Not saved')
  expect(await readFile(file, 'utf8')).toBe(before)
  await page.keyboard.press('Control+s')
  await expect(savedWords(page)).not.toContainText('Not saved')
  expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ vehicle: { massKg: 41 } })
})

test('a long list of differences is cut short, and declining leaves the file as it was', async ({
  open,
  folder,
}) => {
  let changed = 0
  const file = await killedOver(open, folder, async (page) => {
    await showPart(page, 'vehicle')
    for (const input of await page.locator('input[data-entry^="vehicle."]').all()) {
      const shown = await input.inputValue()
      await input.press('ArrowUp')
      if ((await input.inputValue()) !== shown) changed += 1
    }
  })
  expect(changed).toBeGreaterThan(6)
  const before = await readFile(file, 'utf8')
  const { page } = await open()
  const offer = region(page, 'Recovered work')
  await expect(offer.getByRole('listitem')).toHaveCount(7)
  await expect(offer.getByRole('listitem').last()).toHaveText(`and ${changed - 6} more`)
  await offer.getByRole('button', { name: 'Discard it' }).click()
  await expect(offer).toHaveCount(0)
  expect(await readFile(file, 'utf8')).toBe(before)
})

test('the file that was open when the program was left is opened by the next start, while it is there', async ({
  open,
  folder,
}) => {
  const file = path.join(folder, 'crawler.build.json')
  await writeFile(file, await readFile('examples/culvert-crawler.build.json'))
  const first = await open({ file })
  await expect(first.page.locator('h1')).toHaveText('Newt, the culvert crawler')
  await first.close()
  const second = await open()
  await expect(second.page.locator('h1')).toHaveText('Newt, the culvert crawler')
  // The system's own list hears of each file that is opened.
  const heard = await second.electron?.evaluate(({ app }) => {
    const files: string[] = []
    app.addRecentDocument = (one) => void files.push(one)
    return Object.assign(globalThis, { files }).files.length
  })
  expect(heard).toBe(0)
  await entry(second.page, 'motor.kvRpmPerVolt').fill('301')
  await second.page.keyboard.press('Control+s')
  await expect(savedWords(second.page)).not.toContainText('Not saved')
  expect(await second.electron?.evaluate(() => (globalThis as unknown as { files: string[] }).files)).toEqual(
    [file],
  )
  await expect(savedWords(second.page)).toContainText('crawler.build.json')
  await second.close()
  await rm(file)
  const third = await open()
  await expect(third.page.locator('h1')).toHaveText('Stoat, the quick sled puller')
  await expect(third.page.getByRole('alert')).toHaveCount(0)
  await third.page.getByRole('button', { name: 'Build', exact: true }).click()
  await third.page.getByRole('menuitem', { name: /^Recent/ }).click()
  const recent = third.page.getByRole('dialog', { name: /Recent/ })
  await expect(recent).toContainText('crawler.build.json')
  await expect(recent).toContainText(/no longer there|missing|gone/)
  await recent.getByRole('button', { name: /Clear/ }).click()
  await expect(recent).not.toContainText('crawler.build.json')
})
