import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { ElectronApplication } from '@playwright/test'
import { begin, entry, savedWords, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** Answers the system's message boxes with one button, and keeps what they said. */
async function willAnswer(electron: ElectronApplication, response: number): Promise<() => Promise<string[]>> {
  await electron.evaluate(({ dialog }, response) => {
    const said: string[] = []
    Object.assign(globalThis, { said })
    dialog.showMessageBox = ((_window: unknown, { message, detail }: { message: string; detail: string }) => {
      said.push(message, detail)
      return Promise.resolve({ response, checkboxChecked: false })
    }) as typeof dialog.showMessageBox
  }, response)
  return () => electron.evaluate(() => (globalThis as unknown as { said: string[] }).said)
}

test('a page that dies is offered again, with its work, and the cause is written down here only', async ({
  open,
  folder,
}) => {
  const { page, electron } = await open()
  if (!electron) throw new Error('this spec is for the real window')
  await begin(page)
  await showPart(page, 'vehicle')
  await entry(page, 'vehicle.massKg').fill('45')
  await expect(savedWords(page)).toContainText('Not saved')
  await page.waitForTimeout(2000)
  const said = await willAnswer(electron, 0)
  await electron.evaluate(({ BrowserWindow }) =>
    BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
  )
  await expect.poll(said).toHaveLength(2)
  expect((await said())[0]).toBe('This window stopped working.')

  // Playwright lets go of a page that crashed: what stands in the window now is asked through the program itself.
  const inPage = (script: string) =>
    electron.evaluate(({ BrowserWindow }, script) => {
      return BrowserWindow.getAllWindows()[0]?.webContents.executeJavaScript(script) as Promise<unknown>
    }, script)
  await expect
    .poll(() => inPage("document.querySelector('[aria-label=\"Recovered work\"]')?.textContent ?? ''"))
    .toContain('was not saved')
  expect(await readFile(path.join(folder, 'data', 'stopped.log'), 'utf8')).toMatch(/^\d{4}-.*page: \w+/m)
})

test('two windows, two builds; the same build a second time shows the window that has it', async ({
  open,
  folder,
}) => {
  const file = path.join(folder, 'one.build.json')
  await writeFile(file, await readFile('examples/culvert-crawler.build.json'))
  const { page, electron } = await open({ file })
  if (!electron) throw new Error('this spec is for the real window')
  const opening = electron.waitForEvent('window')
  await electron.evaluate(({ Menu, BrowserWindow }) =>
    Menu.getApplicationMenu()
      ?.getMenuItemById('window.new')
      ?.click(undefined, BrowserWindow.getAllWindows()[0]),
  )
  const second = await opening
  await expect(second.locator('h1')).not.toHaveText((await page.locator('h1').textContent()) ?? '')
  await electron.evaluate(({ dialog }, filePath) => {
    dialog.showOpenDialog = () => Promise.resolve({ canceled: false, filePaths: [filePath] })
  }, file)
  await second.keyboard.press('Control+o')
  await expect(second.getByRole('alert')).toContainText('one.build.json is open in another window')

  // Once the first works on something else, the second may have it.
  await page.keyboard.press('Control+n')
  await expect(page.locator('h1')).toHaveText('New build')
  await second.keyboard.press('Control+o')
  await expect(second.locator('h1')).toContainText('crawler')
})

test('quitting with unsaved work asks; Cancel keeps the program, Discard ends it', async ({ open }) => {
  const { page, electron } = await open()
  if (!electron) throw new Error('this spec is for the real window')
  await begin(page)
  await showPart(page, 'vehicle')
  await entry(page, 'vehicle.massKg').fill('46')
  await expect(savedWords(page)).toContainText('Not saved')
  const quit = () => electron.evaluate(({ app }) => setTimeout(() => app.quit(), 0)).then(() => undefined)
  const question = page.getByRole('dialog', { name: /^Save the changes/ })
  await quit()
  await expect(question).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(question).toHaveCount(0)
  await quit()
  await expect(question).toBeVisible()
  const ended = electron.waitForEvent('close')
  // The program may be gone before the click is answered: that is what is wanted.
  await question
    .getByRole('button', { name: 'Discard' })
    .click()
    .catch(() => undefined)
  await ended
})

test('a fault of the program round the page is said in a sentence, written down, and ends nothing', async ({
  open,
  folder,
}) => {
  const { page, electron } = await open()
  if (!electron) throw new Error('this spec is for the real window')
  await electron.evaluate(({ dialog }) => {
    const said: string[] = []
    Object.assign(globalThis, { said })
    dialog.showMessageBox = ((options: { message: string; detail: string }) => {
      said.push(`${options.message} ${options.detail}`)
      return Promise.resolve({ response: 0, checkboxChecked: false })
    }) as typeof dialog.showMessageBox
    dialog.showErrorBox = (title, content) => void said.push(`${title} ${content}`)
  })
  const said = () => electron.evaluate(() => (globalThis as unknown as { said: string[] }).said)
  await electron.evaluate(() => void Promise.reject(new Error('planted rejection')))
  await expect.poll(said).toHaveLength(1)
  await electron.evaluate(() => {
    setTimeout(() => {
      throw new Error('planted throw')
    }, 0)
  })
  await expect.poll(said).toHaveLength(2)
  for (const words of await said()) {
    expect(words).toContain('Something in the program went wrong. Your work in the windows is still there')
    expect(words).not.toMatch(/planted|\n\s+at /)
  }
  const written = () => readFile(path.join(folder, 'data', 'stopped.log'), 'utf8')
  await expect.poll(written).toMatch(/program: .*planted rejection[^]*program: .*planted throw/)
  await expect(page.locator('h1')).toBeVisible()
})
