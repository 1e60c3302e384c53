import { mkdtemp, readFile, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { expect, test as base, type ElectronApplication, type Page } from '@playwright/test'
import { browserLacks, windowLacks } from './computer.ts'
import { SharedPage } from './page.ts'
import { killWith, SharedProgram, start } from './program.ts'

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
   * In the real window: a program started for each test, for specs of starting, closing or the program's own doings;
   * `*.window.spec.ts` have it where nothing else is said. Without it the tests of a worker share one, each with a window
   * of its own.
   */
  ownProgram: boolean | 'as the file'
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
  /** The worker's page in a browser, started by the first test that asks: the real window needs none. */
  pageOfWorker: SharedPage
  /** The worker's program, started by the first test that opens a window in it. */
  programOfWorker: SharedProgram
}

/** Use in place of Playwright's own `test`: `test('...', async ({ open }) => { const { page } = await open() })`. */
export const test = base.extend<Fixtures, WorkerFixtures>({
  shownIn: ['browser', { option: true }],
  ownProgram: ['as the file', { option: true }],
  possible: [
    async ({ shownIn }, use) => {
      const lacks = shownIn === 'window' ? windowLacks() : browserLacks()
      test.skip(lacks !== null, lacks ?? '')
      await use(undefined)
    },
    { auto: true },
  ],
  pageOfWorker: [
    async ({ playwright, launchOptions }, use) => {
      const shared = new SharedPage(() => playwright.chromium.launch(launchOptions))
      await use(shared)
      await shared.end()
    },
    { scope: 'worker' },
  ],
  programOfWorker: [
    async ({}, use) => {
      const program = new SharedProgram()
      await use(program)
      await program.end()
    },
    { scope: 'worker' },
  ],
  folder: async ({}, use) => {
    const folder = await mkdtemp(path.join(os.tmpdir(), 'pitchline-test-'))
    await use(folder)
    await rm(folder, { recursive: true, force: true, maxRetries: 5 })
  },
  open: async ({ shownIn, ownProgram, pageOfWorker, programOfWorker, folder }, use, { file }) => {
    const own = ownProgram === 'as the file' ? file.endsWith('.window.spec.ts') : ownProgram
    if (shownIn === 'browser') await useBrowser(pageOfWorker, use)
    else if (own) await useOwnProgram(folder, use)
    else await useSharedProgram(programOfWorker, use)
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

/** The page has drawn something: not a missing build, not an error of its own. */
const mounted = (page: Page) => expect(page.locator('#app > *').first()).toBeAttached()

async function useOwnProgram(folder: string, use: Use): Promise<void> {
  const started: ElectronApplication[] = []
  await use(async ({ file } = {}) => {
    const electron = await start(folder, file)
    started.push(electron)
    return openedIn(electron, await electron.firstWindow())
  })
  for (const electron of started) killWith(electron)
  expectNoneUncaught()
}

async function useSharedProgram(program: SharedProgram, use: Use): Promise<void> {
  let opened = 0
  await use(async ({ file } = {}) => {
    opened += 1
    const { electron, page } = await (opened === 1 ? program.fresh(file) : program.again(file))
    return openedIn(electron, page)
  })
  await program.clear()
  expectNoneUncaught()
}

async function openedIn(electron: ElectronApplication, page: Page): Promise<Opened> {
  listenTo(page)
  await mounted(page)
  return { page, electron, close: () => electron.close() }
}

async function useBrowser(shared: SharedPage, use: Use): Promise<void> {
  await use(async ({ file } = {}) => {
    const initial = file === undefined ? null : { name: path.basename(file), bytes: await readFile(file) }
    const page = await shared.open(initial, listenTo)
    await mounted(page)
    return { page, electron: null, close: () => page.close({ runBeforeUnload: false }) }
  })
  await shared.clear()
  expectNoneUncaught()
}
