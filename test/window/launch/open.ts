import { mkdtemp, readFile, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import {
  _electron,
  errors,
  expect,
  test as base,
  type Browser,
  type ElectronApplication,
  type Page,
} from '@playwright/test'
import { servePage, type Served } from '../../../src-main/serve/serve.ts'
import { browserLacks, electronPath, root, rootFlags, windowLacks } from './computer.ts'

export interface Opened {
  readonly page: Page
  /** The program round the page; `null` in a browser. */
  readonly electron: ElectronApplication | null
  /** Ends it as a person does; unsaved work is asked about. */
  close(): Promise<void>
}

export interface OpenOptions {
  /** A build to start with, as a full path. */
  readonly file?: string
}

interface Fixtures {
  /** Where the page is shown: set by the projects of playwright.config.ts, so that each spec runs in both. */
  shownIn: 'window' | 'browser'
  /**
   * Opens Pitchline with data of this test's own. A second call in one test finds what the first one kept: close the
   * first, or kill it, to see a restart.
   */
  open: (options?: OpenOptions) => Promise<Opened>
  /** A folder of this test's own. */
  folder: string
  /** Leaves a test out where this machine cannot show the page in its place. */
  possible: undefined
}

interface WorkerFixtures {
  /** The worker's browser, started by the first test that asks: the real window needs none. */
  browserOfWorker: () => Promise<Browser>
}

/** Use in place of Playwright's own `test`: `test('...', async ({ open }) => { const { page } = await open() })`. */
export const test = base.extend<Fixtures, WorkerFixtures>({
  shownIn: ['browser', { option: true }],
  possible: [
    async ({ shownIn }, use) => {
      const lacks = shownIn === 'window' ? windowLacks() : browserLacks()
      test.skip(lacks !== null, lacks ?? '')
      await use(undefined)
    },
    { auto: true },
  ],
  browserOfWorker: [
    async ({ playwright, launchOptions }, use) => {
      let browser: Promise<Browser> | null = null
      await use(() => (browser ??= playwright.chromium.launch(launchOptions)))
      await (await (browser as Promise<Browser> | null))?.close()
    },
    { scope: 'worker' },
  ],
  folder: async ({}, use) => {
    const folder = await mkdtemp(path.join(os.tmpdir(), 'pitchline-test-'))
    await use(folder)
    await rm(folder, { recursive: true, force: true, maxRetries: 5 })
  },
  open: async ({ shownIn, browserOfWorker, folder }, use) => {
    if (shownIn === 'window') await useWindow(folder, use)
    else await useBrowser(await browserOfWorker(), use)
  },
})

export { expect }

type Use = (open: Fixtures['open']) => Promise<void>

/**
 * Errors of the page that nobody caught, of every page of a test: such a one puts a banner over the window, which a test
 * that looks elsewhere would not see. A test that brings one about empties the list.
 */
export const uncaught: string[] = []

function listenTo(page: Page): void {
  page.on('pageerror', ({ message }) => uncaught.push(message))
}

const expectNoneUncaught = () => expect(uncaught.splice(0), 'errors that the page did not catch').toEqual([])

type Launch = NonNullable<Parameters<typeof _electron.launch>[0]>

/** How long the tool may take to get hold of the program, which starts in 1 to 2 s, 4 s on a busy machine. */
const reachedWithin = 12_000

/**
 * Starts the program, a second time where the tool's own handshake with it never ends: the program runs on while the
 * tool is still connecting, and about one start in thirty was not reached on a busy machine, the page loaded and no step
 * of a test run. A program that ends early is not started again. The second try is told, so that it shows.
 */
async function launched(options: Launch): Promise<ElectronApplication> {
  try {
    return await _electron.launch({ ...options, timeout: reachedWithin })
  } catch (trouble) {
    if (!(trouble instanceof errors.TimeoutError)) throw trouble
    console.warn(
      `Electron runs but was not reached within ${reachedWithin / 1000} s: it is started once more.`,
    )
    return _electron.launch({ ...options, timeout: reachedWithin })
  }
}

/** The command line of the program with data of a test's own. */
export const wordsOf = (folder: string, file?: string): string[] => [
  ...rootFlags,
  `--user-data-dir=${path.join(folder, 'data')}`,
  root,
  ...(file === undefined ? [] : [file]),
]

async function useWindow(folder: string, use: Use): Promise<void> {
  const executablePath = electronPath()
  const started: ElectronApplication[] = []
  await use(async ({ file } = {}) => {
    const electron = await launched({
      executablePath: executablePath ?? '',
      args: wordsOf(folder, file),
      cwd: folder,
    })
    started.push(electron)
    const page = await electron.firstWindow()
    listenTo(page)
    await mounted(page)
    return { page, electron, close: () => electron.close() }
  })
  for (const electron of started) killWith(electron)
  expectNoneUncaught()
}

/** The page has drawn something: not a missing build, not an error of its own. */
const mounted = (page: Page) => expect(page.locator('#app > *').first()).toBeAttached()

/** At once, whatever it is asking: the test is over. */
function killWith(electron: ElectronApplication): void {
  try {
    electron.process().kill('SIGKILL')
  } catch {
    // It has ended already.
  }
}

async function useBrowser(browser: Browser, use: Use): Promise<void> {
  const context = await browser.newContext()
  // A headless browser shows no pickers: files come through inputs and go as downloads, as in browsers without them.
  await context.addInitScript(() => {
    for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
      Object.defineProperty(window, name, { value: undefined })
    }
  })
  let served = null as Served | null
  await use(async ({ file } = {}) => {
    // The same address again, or the browser would not find what it kept.
    const port = served === null ? 0 : Number(new URL(served.address).port)
    await served?.close()
    const initial = file === undefined ? null : { name: path.basename(file), bytes: await readFile(file) }
    served = await servePage(path.join(root, 'dist/page'), initial, port)
    const page = await context.newPage()
    listenTo(page)
    await page.goto(served.address)
    await mounted(page)
    return { page, electron: null, close: () => page.close({ runBeforeUnload: false }) }
  })
  await context.close()
  await served?.close()
  expectNoneUncaught()
}
