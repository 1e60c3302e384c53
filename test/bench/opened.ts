import { mkdtempSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { hrtime } from 'node:process'
import { _electron, chromium, type ElectronApplication, type Page } from 'playwright'
import { servePage } from '../../src-main/serve/serve.ts'
import {
  browserLacks,
  chromiumPath,
  electronPath,
  rootFlags,
  startDisplay,
  windowLacks,
} from '../window/launch/computer.ts'

/** Benches are started in the project's folder; a bundle's own place says nothing of it. */
export const root = process.cwd()

const inWindow = windowLacks() === null
/** Where a bench of the page runs; Chromium where there is no runtime. */
export const place = inWindow ? 'window' : 'Chromium'

/** A program that was opened. */
export interface Opened {
  readonly page: Page
  /** s from its start to its first answer. */
  readonly took: number
  /** The process that runs the page. */
  readonly process: number
  readonly close: () => Promise<void>
}

const seconds = (since: bigint): number => Number(hrtime.bigint() - since) / 1e9

async function answered(page: Page): Promise<void> {
  await page.getByRole('tabpanel').getByText('km/h').first().waitFor()
}

/**
 * Opens the program and says how long it took until it answered.
 *
 * @param data folder of what it keeps
 * @param file build that it opens, in the window
 * @param openly without its content policy: a bench needs a worker of its own beside the page's
 */
export async function opened(data: string, file: string, openly = false): Promise<Opened> {
  const start = hrtime.bigint()
  const executablePath = electronPath()
  if (inWindow && executablePath !== null) {
    const args = [...rootFlags, `--user-data-dir=${data}`, root, file]
    const program = await _electron.launch({ executablePath, args, bypassCSP: openly })
    const page = await program.firstWindow()
    await answered(page)
    const took = seconds(start)
    // The page may have been there before the policy was set aside.
    if (openly) await page.reload().then(() => answered(page))
    const metrics = await program.evaluate(({ app }) => app.getAppMetrics())
    const pid = metrics.find(({ type }) => type === 'Tab')?.pid ?? 0
    return { page, took, process: pid, close: () => killed(program) }
  }
  const served = await servePage(path.join(root, 'dist/page'), null, 0)
  const executable = chromiumPath()
  const browser = await chromium.launch({
    args: [...rootFlags],
    ...(executable === undefined ? {} : { executablePath: executable }),
  })
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 }, bypassCSP: openly })
  await page.goto(served.address)
  await answered(page)
  const took = seconds(start)
  const { processInfo } = await (await browser.newBrowserCDPSession()).send('SystemInfo.getProcessInfo')
  const pid = processInfo.find(({ type }) => type === 'renderer')?.id ?? 0
  const close = async (): Promise<void> => {
    await browser.close()
    await served.close()
  }
  return { page, took, process: pid, close }
}

/** Ends the program at once, whatever it would ask, and waits until its helpers let go of its folder. */
async function killed(program: ElectronApplication): Promise<void> {
  const ended = new Promise((done) => program.process().once('exit', done))
  program.process().kill('SIGKILL')
  await ended
  await new Promise((done) => setTimeout(done, 500))
}

/** Runs a bench of the page with a folder of its own where it can be shown, or says in one line why it cannot. */
export async function whereShown(measured: (folder: string) => Promise<void>): Promise<void> {
  if (!inWindow && browserLacks() !== null) {
    console.error(
      `Not measured: the window, because ${windowLacks()}; nor the page, because ${browserLacks()}.`,
    )
    process.exitCode = 1
    return
  }
  const display = await startDisplay()
  const folder = mkdtempSync(path.join(os.tmpdir(), 'pitchline-bench-'))
  try {
    await measured(folder)
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
    display?.kill()
  }
}
