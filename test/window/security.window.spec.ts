import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import type { ElectronApplication } from '@playwright/test'
import { channels } from '../../src-main/bridge/channels.ts'
import { electronPath } from './launch/computer.ts'
import { expect, test } from './launch/open.ts'
import { wordsOf } from './launch/program.ts'

const needed = (electron: ElectronApplication | null): ElectronApplication => {
  if (!electron) throw new Error('this spec is for the real window')
  return electron
}

const windowsOf = (electron: ElectronApplication) =>
  electron.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)

test.describe('a window of a program', () => {
  test.use({ ownProgram: false })

  test('the page finds nothing of Node or Electron, and the bridge with its verbs only', async ({ open }) => {
    const { page } = await open()
    const found = await page.evaluate(() =>
      ['require', 'process', 'module', 'global', 'Buffer', 'electron', 'ipcRenderer'].filter(
        (name) => name in globalThis,
      ),
    )
    expect(found).toEqual([])
    const bridge = await page.evaluate(() =>
      Object.keys((globalThis as { pitchline?: object }).pitchline ?? {}),
    )
    expect(bridge.sort()).toEqual([...Object.keys(channels), 'listen'].sort())
  })

  test('the window that runs is isolated and sandboxed', async ({ open }) => {
    const { electron } = await open()
    const preferences = await needed(electron).evaluate(({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents as unknown as {
        getLastWebPreferences(): Record<string, unknown>
      }
      const { contextIsolation, sandbox, webSecurity, nodeIntegration, webviewTag } =
        contents.getLastWebPreferences()
      return { contextIsolation, sandbox, webSecurity, nodeIntegration, webviewTag: webviewTag ?? false }
    })
    expect(preferences).toEqual({
      contextIsolation: true,
      sandbox: true,
      webSecurity: true,
      nodeIntegration: false,
      webviewTag: false,
    })
  })

  test('it goes nowhere: no link, no script, no new window, no frame of another site', async ({ open }) => {
    const { page, electron } = await open()
    const address = page.url()
    const opened = await page.evaluate(() => window.open('https://example.org/') === null)
    expect(opened).toBe(true)
    for (const target of [
      'https://example.org/',
      'file:///etc/passwd',
      'app://elsewhere/index.html',
      'data:text/html,x',
    ]) {
      await page.evaluate((href) => {
        const link = document.createElement('a')
        link.href = href
        document.body.append(link)
        link.click()
        link.target = '_blank'
        link.click()
        link.remove()
      }, target)
    }
    await page.waitForTimeout(500)
    expect(page.url()).toBe(address)
    expect(await windowsOf(needed(electron))).toBe(1)
  })

  test('a file dropped on the page does not replace it', async ({ open }) => {
    const { page } = await open()
    const address = page.url()
    await page.evaluate(() => {
      const transfer = new DataTransfer()
      transfer.items.add(new File(['{}'], 'any.txt', { type: 'text/plain' }))
      for (const type of ['dragenter', 'dragover', 'drop']) {
        document.body.dispatchEvent(
          new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer: transfer }),
        )
      }
    })
    await page.waitForTimeout(300)
    expect(page.url()).toBe(address)
  })

  test('every permission is denied but writing the clipboard', async ({ open }) => {
    const { page } = await open()
    const asked = await page.evaluate(async () => {
      const states: Record<string, string> = {}
      for (const name of ['geolocation', 'notifications', 'camera', 'microphone', 'midi', 'clipboard-read']) {
        try {
          states[name] = (await navigator.permissions.query({ name: name as PermissionName })).state
        } catch {
          states[name] = 'unknown'
        }
      }
      return states
    })
    expect(Object.values(asked).filter((state) => state === 'granted')).toEqual([])
    const camera = await page.evaluate(() =>
      navigator.mediaDevices.getUserMedia({ video: true }).then(
        () => 'given',
        (error: Error) => error.name,
      ),
    )
    expect(camera).not.toBe('given')
  })

  test('addresses outside the page answer nothing', async ({ open }) => {
    const { electron } = await open()
    const statuses = await needed(electron).evaluate(async ({ net }) => {
      const addresses = [
        'app://pitchline/index.html',
        'app://pitchline/../../package.json',
        'app://pitchline/%2e%2e/%2e%2e/package.json',
        'app://pitchline/..%5c..%5cpackage.json',
        'app://elsewhere/index.html',
      ]
      const found: number[] = []
      for (const address of addresses) found.push((await net.fetch(address)).status)
      return found
    })
    expect(statuses).toEqual([200, 404, 404, 404, 404])
  })

  test('the page can name no file: what is no dropped file is refused, whatever it says of itself', async ({
    open,
    folder,
  }) => {
    const secret = path.join(folder, 'secret.txt')
    writeFileSync(secret, 'not for the page')
    const { page } = await open()
    const answers = await page.evaluate(async (file) => {
      const { openDropped } = (
        globalThis as unknown as { pitchline: { openDropped(given: unknown): unknown } }
      ).pitchline
      const made = new File(['x'], 'secret.txt')
      Object.defineProperty(made, 'path', { value: file })
      Object.defineProperty(File.prototype, 'path', { value: file, configurable: true })
      const given = [{ path: file }, file, made, new File(['x'], file), [file], null]
      const answers: unknown[] = []
      for (const one of given) answers.push(await openDropped(one))
      return answers
    }, secret)
    expect(answers).toEqual(
      Array(6).fill({ ok: false, mistakes: [expect.objectContaining({ code: 'request-refused' })] }),
    )
  })

  test('a file that is let go of over the window by the system is opened, and never shown in its place', async ({
    open,
    folder,
  }) => {
    const file = path.join(folder, 'crawler.build.json')
    writeFileSync(file, readFileSync('examples/culvert-crawler.build.json'))
    const { page } = await open()
    const address = page.url()
    const system = await page.context().newCDPSession(page)
    const data = { items: [], files: [file], dragOperationsMask: 1 }
    for (const type of ['dragEnter', 'dragOver', 'drop'] as const) {
      await system.send('Input.dispatchDragEvent', { type, x: 400, y: 400, data })
    }
    await expect(page.locator('h1')).toContainText('crawler')
    expect(page.url()).toBe(address)
  })
})

test('a second start with a file opens a window in the first program and ends', async ({ open, folder }) => {
  const { electron } = await open()
  const first = needed(electron)
  const file = path.join(folder, 'second.build.json')
  writeFileSync(file, '{}')
  const opening = first.waitForEvent('window')
  // Without the tool, as a person starts it: it ends as soon as it has handed its file over.
  const second = spawn(electronPath() ?? '', wordsOf(folder, file), { cwd: folder, stdio: 'ignore' })
  const ended = once(second, 'exit')
  await opening
  expect(await ended).toEqual([0, null])
  expect(await windowsOf(first)).toBe(2)
})

test('a second start with a file that is open shows its window, and opens no other', async ({
  open,
  folder,
}) => {
  const file = path.join(folder, 'crawler.build.json')
  writeFileSync(file, readFileSync('examples/culvert-crawler.build.json'))
  const { electron } = await open({ file })
  const first = needed(electron)
  await first.evaluate(({ BrowserWindow }) => {
    const shown: string[] = []
    Object.assign(globalThis, { shown })
    const [window] = BrowserWindow.getAllWindows()
    if (window) window.focus = () => void shown.push(window.getTitle())
  })
  const second = spawn(electronPath() ?? '', wordsOf(folder, file), { cwd: folder, stdio: 'ignore' })
  await once(second, 'exit')
  await expect
    .poll(() => first.evaluate(() => (globalThis as unknown as { shown: string[] }).shown))
    .toHaveLength(1)
  expect(await windowsOf(first)).toBe(1)
})
