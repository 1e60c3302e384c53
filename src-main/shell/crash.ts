import { appendFile } from 'node:fs/promises'
import path from 'node:path'
import { app, dialog } from 'electron'
import type { OurWindow } from './windows.ts'

/**
 * A page or helper process that died: the work is kept, a reload offered, and the cause written to a file of the
 * program's own data. Nothing is sent anywhere.
 */
export function setupCrash(): void {
  process.on('uncaughtException', (error) => showOwnFault(error))
  process.on('unhandledRejection', (reason) => showOwnFault(reason))
  app.on('child-process-gone', (_event, { type, reason, exitCode }) =>
    log(`${type}: ${reason} (${exitCode})`),
  )
}

let isShown = false

/** A bug of ours in the program round the page: said in a sentence, never as a stack, and the program goes on. */
function showOwnFault(thrown: unknown): void {
  log(`program: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`)
  // One question at a time: a fault that repeats must not cover the screen.
  if (isShown || !app.isReady()) return
  isShown = true
  const detail =
    'Your work in the windows is still there: save it, then start the program anew. ' +
    'What happened was written to stopped.log in the program’s own data. Nothing was sent anywhere.'
  const answered = dialog.showMessageBox({
    type: 'error',
    message: 'Something in the program went wrong.',
    detail,
    buttons: ['Go on'],
  })
  void answered.catch(() => undefined).then(() => (isShown = false))
}

export function guardCrash(ours: OurWindow, beforeReload: () => void): void {
  ours.window.webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit') return
    log(`page: ${reason} (${exitCode})`)
    void offerReload(ours, reason, beforeReload)
  })
}

async function offerReload(ours: OurWindow, reason: string, beforeReload: () => void): Promise<void> {
  const { response } = await dialog.showMessageBox(ours.window, {
    type: 'error',
    message: 'This window stopped working.',
    detail: `Your work was kept up to a second or two before, and is offered after the reload. Cause: ${reason}.`,
    buttons: ['Reload', 'Close the window'],
    defaultId: 0,
    cancelId: 1,
  })
  if (ours.window.isDestroyed()) return
  beforeReload()
  if (response === 0) ours.window.webContents.reload()
  else ours.window.destroy()
}

function log(what: string): void {
  const line = `${new Date().toISOString()} ${what}\n`
  const file = path.join(app.getPath('userData'), 'stopped.log')
  // Where even this fails there is nobody left to report to.
  appendFile(file, line).catch(() => console.error(line))
}
