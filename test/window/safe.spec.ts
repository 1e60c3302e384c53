import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Page } from '@playwright/test'
import { begin, entry, savedWords, showPart, willSaveAs } from './journey.ts'
import { expect, test, uncaught } from './launch/open.ts'

test.use({ ownProgram: true })

async function change(page: Page, mass: string): Promise<void> {
  await showPart(page, 'vehicle')
  await entry(page, 'vehicle.massKg').fill(mass)
  await expect(savedWords(page)).toContainText('Not saved')
}

/** Longer than unsaved work may stay unkept: 2 s. */
const keptAfter = 2000

test('work that was not saved is offered after the program was killed, and comes back whole', async ({
  open,
}) => {
  const first = await open()
  await begin(first.page)
  await change(first.page, '41')
  await first.page.waitForTimeout(keptAfter)
  if (first.electron === null) await first.page.close()
  else first.electron.process().kill('SIGKILL')

  const { page } = await open()
  const offer = page.getByRole('region', { name: 'Recovered work' })
  await expect(offer).toContainText('was not saved')
  await expect(offer).toContainText('There is no file to compare it with.')
  await offer.getByRole('button', { name: 'Recover it' }).click()
  await showPart(page, 'vehicle')
  await expect(entry(page, 'vehicle.massKg')).toHaveValue('41')
  await expect(savedWords(page)).toContainText('Not saved')
  await expect(offer).toHaveCount(0)
})

test('recovered work that is not wanted is gone for good', async ({ open }) => {
  const first = await open()
  await begin(first.page)
  await change(first.page, '42')
  await first.page.waitForTimeout(keptAfter)
  if (first.electron === null) await first.page.close()
  else first.electron.process().kill('SIGKILL')

  const second = await open()
  await second.page.getByRole('button', { name: 'Discard it' }).click()
  await expect(second.page.getByRole('region', { name: 'Recovered work' })).toHaveCount(0)
  await second.close()
  const third = await open()
  await expect(third.page.locator('h1')).toBeVisible()
  await expect(third.page.getByRole('region', { name: 'Recovered work' })).toHaveCount(0)
})

test('a file that is no build is refused with every reason, and nothing is lost', async ({
  open,
  folder,
}) => {
  const file = path.join(folder, 'broken.build.json')
  await writeFile(
    file,
    JSON.stringify({ format: 'pitchline-build', version: 1, name: 'Broken', pack: { series: 99 } }),
  )
  const { page } = await open({ file })
  const alert = page.getByRole('alert')
  await expect(alert).toContainText('broken.build.json is not a build that can be opened.')
  await expect(alert).toContainText('pack.series is 99, out of range')
  await expect(page.locator('h1')).not.toHaveText('Broken')
  await alert.getByRole('button', { name: 'Close the message' }).click()
  await expect(alert).toHaveCount(0)
})

/** Lets go of a file over the page, as the browser tells it. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([name, text]) => {
      const data = new DataTransfer()
      data.items.add(new File([text], name, { type: 'application/json' }))
      return data
    },
    [name, text] as const,
  )
  await page.dispatchEvent('body', 'drop', { dataTransfer })
}

test('a build dropped on the window is opened, and noise is refused', async ({ open, shownIn }) => {
  test.skip(
    shownIn === 'window',
    'a file made in the page has no place on disk, which the real window asks for',
  )
  const { page } = await open()
  await begin(page)
  await drop(page, 'noise.build.json', 'not json')
  await expect(page.getByRole('alert')).toContainText('not JSON')
  await drop(page, 'crawler.build.json', await readFile('examples/culvert-crawler.build.json', 'utf8'))
  await expect(page.locator('h1')).toContainText('crawler')
  await expect(page.getByRole('alert')).toHaveCount(0)
})

test('closing the window with unsaved work asks, and Save saves first', async ({ open, folder }) => {
  const { page, electron } = await open()
  test.skip(electron === null, 'a browser asks in its own words')
  if (electron === null) return
  await begin(page)
  await change(page, '44')
  const close = () => electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close())
  const question = page.getByRole('dialog', { name: /^Save the changes/ })
  await close()
  await expect(question).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(question).toHaveCount(0)
  await expect(entry(page, 'vehicle.massKg')).toHaveValue('44')
  const file = path.join(folder, 'closed.build.json')
  await willSaveAs(electron, file)
  await close()
  const gone = page.waitForEvent('close')
  await question.getByRole('button', { name: 'Save' }).click()
  await gone
  expect(JSON.parse(await readFile(file, 'utf8'))).toMatchObject({ vehicle: { massKg: 44 } })
})

test('a file that another program changes is noticed, and not overwritten unasked', async ({
  open,
  folder,
}) => {
  const file = path.join(folder, 'shared.build.json')
  const text = await readFile('examples/culvert-crawler.build.json', 'utf8')
  await writeFile(file, text)
  const { page, electron } = await open({ file })
  test.skip(electron === null, 'a browser is not told of changes on disk')
  await change(page, '45')
  await writeFile(file, text.replace('"name": "', '"name": "Changed elsewhere: '))
  await expect(page.getByText('was changed by another program').first()).toBeVisible({ timeout: 10_000 })
  await page.keyboard.press('Control+s')
  const question = page.getByRole('dialog', { name: /was changed by another program/ })
  await expect(question).toBeVisible()
  await page.keyboard.press('Escape')
  expect(await readFile(file, 'utf8')).toContain('Changed elsewhere')
  await page.getByRole('button', { name: 'Load that change' }).click()
  await expect(page.locator('h1')).toContainText('Changed elsewhere')
  // What was typed here is one step away, and not lost.
  await page.keyboard.press('Control+z')
  await expect(page.locator('h1')).not.toContainText('Changed elsewhere')
  await expect(entry(page, 'vehicle.massKg')).toHaveValue('45')
})

test.describe('in a program that goes on', () => {
  test.use({ ownProgram: false })

  test('leaving unsaved work asks; Escape stays, Discard goes', async ({ open }) => {
    const { page } = await open()
    await begin(page)
    await change(page, '43')
    const question = page.getByRole('dialog', { name: /^Save the changes/ })
    await page.getByRole('button', { name: 'Build', exact: true }).click()
    await page.getByRole('menuitem', { name: /New build/ }).click()
    await expect(question).toBeVisible()
    await expect(question.getByRole('button', { name: 'Save' })).toBeFocused()
    await page.keyboard.press('Escape')
    await expect(question).toHaveCount(0)
    await expect(entry(page, 'vehicle.massKg')).toHaveValue('43')
    await page.getByRole('button', { name: 'Build', exact: true }).click()
    await page.getByRole('menuitem', { name: /New build/ }).click()
    await question.getByRole('button', { name: 'Discard' }).click()
    await expect(page.locator('h1')).toHaveText('New build')
    await expect(savedWords(page)).not.toContainText('Not saved')
  })

  test('what nobody caught is told like any fault of ours, without its stack', async ({ open }) => {
    const { page } = await open()
    const alert = page.getByRole('alert')
    // All that is listed: a stack would be part of its line, however its places are written.
    const details = alert.getByRole('listitem')
    await page.evaluate(() => void Promise.reject(new Error('planted')))
    await expect(alert).toContainText('Something in the window went wrong.')
    await expect(details).toHaveText(['planted'])
    await page.evaluate(() => void setTimeout(() => JSON.parse('{')))
    await expect(details).toHaveText([/^Uncaught SyntaxError: [^\n]+$/])
    expect(await alert.textContent()).not.toMatch(/:\d+:\d+/)
    await expect.poll(() => uncaught.splice(0)).toHaveLength(2)
  })

  test('the title says what is open, and that it is not saved, after an edit, its undo and a save', async ({
    open,
    folder,
  }) => {
    const { page, electron } = await open()
    await begin(page)
    const title = () =>
      electron === null
        ? page.title()
        : electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getTitle() ?? '')
    const name = (await page.locator('h1').textContent()) ?? ''
    await expect.poll(title).toBe(`${name} · Pitchline`)
    await change(page, '48')
    await expect.poll(title).toBe(`${name} (not saved) · Pitchline`)
    await entry(page, 'vehicle.massKg').press('Enter')
    await page.locator('h1').click()
    await page.keyboard.press('Control+z')
    await expect.poll(title).toBe(`${name} · Pitchline`)
    await change(page, '49')
    await expect.poll(title).toBe(`${name} (not saved) · Pitchline`)
    if (electron) await willSaveAs(electron, path.join(folder, 'titled.build.json'))
    await page.keyboard.press('Control+s')
    await expect.poll(title).toBe(`${name} · Pitchline`)
  })
})
