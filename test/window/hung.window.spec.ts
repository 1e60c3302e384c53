import type { ElectronApplication, Page } from '@playwright/test'
import { begin, entry, region, savedWords, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** Longer than unsaved work may stay unkept: 2 s. */
const keptAfter = 2000

/** Answers the program's own question with one of its buttons, once it comes. */
async function willChoose(electron: ElectronApplication, response: number): Promise<void> {
  await electron.evaluate(({ dialog }, response) => {
    const said: string[] = []
    Object.assign(globalThis, { said })
    dialog.showMessageBox = ((_window: unknown, { message }: { message: string }) => {
      said.push(message)
      return Promise.resolve({ response, checkboxChecked: false })
    }) as typeof dialog.showMessageBox
  }, response)
}

const saidBy = (electron: ElectronApplication) =>
  electron.evaluate(() => (globalThis as unknown as { said: string[] }).said)

/** Unsaved work, kept, in a page that then answers nothing for a time. */
async function hangs(page: Page, milliseconds: number): Promise<void> {
  await begin(page)
  await showPart(page, 'vehicle')
  await entry(page, 'vehicle.massKg').fill('47')
  await expect(savedWords(page)).toContainText('Not saved')
  await page.waitForTimeout(keptAfter)
  await page.evaluate((milliseconds) => {
    setTimeout(() => {
      const until = Date.now() + milliseconds
      while (Date.now() < until);
    }, 0)
  }, milliseconds)
}

const wishes = {
  'its window is closed': (electron: ElectronApplication) =>
    electron.evaluate(({ BrowserWindow }) => setTimeout(() => BrowserWindow.getAllWindows()[0]?.close(), 0)),
  'the program is quitted': (electron: ElectronApplication) =>
    electron.evaluate(({ app }) => setTimeout(() => app.quit(), 0)),
  'the system ends the program': async (electron: ElectronApplication) => electron.process().kill('SIGTERM'),
}

for (const [when, wish] of Object.entries(wishes)) {
  test(`a page that hangs can be ended where ${when}, and its work is offered at the next start`, async ({
    open,
  }) => {
    const { page, electron } = await open()
    if (!electron) throw new Error('this spec is for the real window')
    await hangs(page, 600_000)
    await willChoose(electron, 1)
    const ended = electron.waitForEvent('close', { timeout: 30_000 })
    await wish(electron)
    await ended
    const { page: next } = await open()
    await expect(region(next, 'Recovered work')).toContainText('was not saved')
  })
}

test('a page that is busy for a time is waited for, and then puts its own question', async ({ open }) => {
  const { page, electron } = await open()
  if (!electron) throw new Error('this spec is for the real window')
  await hangs(page, 8000)
  await willChoose(electron, 0)
  await wishes['its window is closed'](electron)
  await expect.poll(() => saidBy(electron)).toEqual(['This window does not answer.'])
  const question = page.getByRole('dialog', { name: /^Save the changes/ })
  await expect(question).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(entry(page, 'vehicle.massKg')).toHaveValue('47')
})

test('a page that puts its question in time is not interrupted, however long the answer takes', async ({
  open,
}) => {
  const { page, electron } = await open()
  if (!electron) throw new Error('this spec is for the real window')
  await hangs(page, 0)
  await willChoose(electron, 1)
  await wishes['its window is closed'](electron)
  await expect(page.getByRole('dialog', { name: /^Save the changes/ })).toBeVisible()
  await page.waitForTimeout(7000)
  expect(await saidBy(electron)).toEqual([])
  expect(await entry(page, 'vehicle.massKg').inputValue()).toBe('47')
})
