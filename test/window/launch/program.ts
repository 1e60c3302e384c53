import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { _electron, errors, type ElectronApplication, type Page } from '@playwright/test'
import { electronPath, forAShortLifeInWindow, root, rootFlags } from './computer.ts'

type Launch = NonNullable<Parameters<typeof _electron.launch>[0]>

/**
 * How long the tool may take to get hold of the program, which starts in 1 to 2 s, 4 s on a busy machine; for hours of
 * trials beside other work the environment names more seconds.
 */
const reachedWithin = 1000 * Number(process.env['PITCHLINE_PATIENCE'] ?? 12)

/**
 * Starts the program, a second time where the tool's own handshake with it never ends: the program runs on while the
 * tool is still connecting, and about one start in thirty was not reached on a busy machine, the page loaded and no step
 * of a test run. A program that ends early is not started again. The second try is said aloud, so that it shows.
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

/** Without a graphics card, as in tests, a page painted as by one costs a seventh more of the processor. */
const withoutCard = ['--disable-gpu', forAShortLifeInWindow]

/** Starts the program with its data in a folder. */
export function start(
  folder: string,
  file?: string,
  flags: readonly string[] = [],
): Promise<ElectronApplication> {
  const args = [...withoutCard, ...flags, ...wordsOf(folder, file)]
  return launched({ executablePath: electronPath() ?? '', args, cwd: folder })
}

/** At once, whatever it is asking: the test is over. */
export function killWith(electron: ElectronApplication): void {
  try {
    electron.process().kill('SIGKILL')
  } catch {
    // It has ended already.
  }
}

interface Started {
  readonly electron: ElectronApplication
  readonly page: Page
}

/** Of the page's own address, where there is none. */
const nothing = 'app://pitchline/nothing'

/** All pages of one address in one process: what it has compiled of the page for one window is there for the next. */
const oneProcess = '--process-per-site'

/**
 * One program for the tests of a worker that look at its page alone: a start takes as long as the rest of a short test.
 * Each test has a window of its own, in a program that knows of nothing earlier. Between two tests an empty page of the
 * same address, in no window, keeps the process of the pages alive: to start one and to compile the page anew
 * was half of a window's start.
 */
export class SharedProgram {
  #folder = ''
  #electron: ElectronApplication | null = null

  /** A new window where nothing is kept from an earlier test; with a file, a new program that is started with it. */
  async fresh(file?: string): Promise<Started> {
    const electron = this.#electron
    if (electron === null || file !== undefined) {
      await this.end()
      return this.again(file)
    }
    const kept = ['unsaved', 'recent.json', 'session.json'].map((name) =>
      path.join(this.#folder, 'data', name),
    )
    await Promise.all(kept.map((one) => rm(one, { recursive: true, force: true })))
    const [page] = await Promise.all([
      electron.waitForEvent('window'),
      // As a second start without a file does.
      electron.evaluate(({ app }, folder) => void app.emit('second-instance', {}, [], folder), this.#folder),
    ])
    return { electron, page }
  }

  /** A program with what an earlier one, closed or killed by the same test, has kept. */
  async again(file?: string): Promise<Started> {
    if (this.#folder === '') this.#folder = await mkdtemp(path.join(os.tmpdir(), 'pitchline-shared-'))
    const electron = await start(this.#folder, file, [oneProcess])
    this.#electron = electron
    electron.once('close', () => {
      if (this.#electron === electron) this.#electron = null
    })
    await electron.evaluate(({ app, dialog }) => {
      // The program ends with its last window, and without a listener the runtime would.
      app.removeAllListeners('window-all-closed')
      app.on('window-all-closed', () => undefined)
      // What a test puts in the place of the system's dialogs is taken back after it.
      Object.assign(globalThis, { ownDialogs: { ...dialog } })
    })
    return { electron, page: await electron.firstWindow() }
  }

  /** Ends what a test has opened; the program stays where it still runs. */
  async clear(): Promise<void> {
    await this.#electron?.evaluate(async ({ BrowserView, BrowserWindow, dialog, session }, address) => {
      const ours = globalThis as { ownDialogs?: object; keeper?: InstanceType<typeof BrowserView> }
      Object.assign(dialog, ours.ownDialogs)
      if (ours.keeper === undefined) {
        // A view without a window: the program's windows are still all that there are.
        ours.keeper = new BrowserView({ webPreferences: { sandbox: true } })
        await ours.keeper.webContents.loadURL(address)
      }
      for (const window of BrowserWindow.getAllWindows()) window.destroy()
      await session.defaultSession.clearStorageData()
    }, nothing)
  }

  /** Ends the program, and forgets what it has kept. */
  async end(): Promise<void> {
    if (this.#electron !== null) killWith(this.#electron)
    this.#electron = null
    if (this.#folder !== '') await rm(this.#folder, { recursive: true, force: true, maxRetries: 5 })
    this.#folder = ''
  }
}
