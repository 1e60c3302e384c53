import path from 'node:path'
import { app, ipcMain } from 'electron'
import { receive, type Receiver } from './bridge/receive.ts'
import { FileService } from './files/file-service.ts'
import { diskFileSystem as disk } from './files/file-system.ts'
import { Journal } from './files/journal.ts'
import { LastSession } from './files/last-session.ts'
import { OpenFiles, trueNameOf } from './files/open-files.ts'
import { RecentFiles } from './files/recent.ts'
import { OutsideChanges } from './files/watch.ts'
import { declareAppProtocol, setupAppProtocol } from './shell/app-protocol.ts'
import { fileNamedBy } from './shell/arguments.ts'
import { Closing } from './shell/closing.ts'
import { guardCrash, setupCrash } from './shell/crash.ts'
import { handlersOf } from './shell/handlers.ts'
import { setupNoNetwork } from './shell/no-network.ts'
import { setupMenu } from './shell/setup-menu.ts'
import { setupPolicy } from './shell/setup-policy.ts'
import { Windows } from './shell/windows.ts'

/** Boots: each step sets up one thing, the window comes last. */
async function boot(): Promise<void> {
  setupNoNetwork()
  declareAppProtocol()
  setupPolicy()
  setupCrash()
  const opening = setupOpening()
  await app.whenReady()
  setupAppProtocol()

  const data = app.getPath('userData')
  const journal = new Journal(disk, path.join(data, 'unsaved'))
  const recent = new RecentFiles(disk, path.join(data, 'recent.json'))
  const windows = new Windows()
  const files = new OpenFiles()
  const outside = new OutsideChanges(disk, ({ owner, handle }, gone) =>
    windows.send(owner, { kind: 'changed-outside', handle, gone }),
  )
  const show = (owner: number) => windows.bring(owner)
  const lastSession = new LastSession(disk, path.join(data, 'session.json'))
  const noteSession = () => {
    const open = windows.all().flatMap(({ owner }) => files.of(owner).filter(({ claimed }) => claimed))
    void lastSession.note(open.map(({ file }) => file))
  }
  let isQuitting = false
  app.on('before-quit', () => (isQuitting = true))
  const used = (file: string) => {
    app.addRecentDocument(file)
    noteSession()
  }
  const saving = async (owner: number, fingerprint: string, keeps: number) => {
    const ours = windows.find(owner)
    if (ours) await journal.saving(ours.journal, fingerprint, keeps)
  }
  const service = new FileService({ disk, files, recent, outside, show, used, saving })
  const closing = new Closing(windows, {
    settle: (ours) => journal.forget(ours.journal),
    giveUp: (ours) => journal.leave(ours.journal),
  })
  const menu = setupMenu(windows)

  const openWindow = (wanted: string | null) => {
    // The file is this window's from here on, so that no other start can ask for it before the page has.
    const other = wanted === null ? null : files.ownerOf(wanted)
    if (other !== null) return show(other)
    const ours = windows.open(wanted, journal.begin())
    if (wanted !== null) files.claim(ours.owner, wanted)
    closing.guard(ours)
    guardCrash(ours, () => {
      // What the dead page had kept becomes recovered work; the new page begins its own.
      journal.leave(ours.journal)
      ours.journal = journal.begin()
      ours.afterCrash = true
      service.releaseAll(ours.owner)
    })
    ours.window.on('focus', () => files.of(ours.owner).forEach((opened) => void outside.look(opened)))
    ours.window.on('closed', () => {
      service.releaseAll(ours.owner)
      journal.leave(ours.journal)
      // What the last window worked on, or all that are left together, is what the next start opens again.
      if (!isQuitting && windows.all().length > 0) noteSession()
    })
  }
  const parts = { disk, windows, service, files, journal, recent, closing, openWindow, noteSession }
  const handlers = handlersOf({ ...parts, refreshMenu: menu.refresh })
  receive(ipcMain as Receiver, handlers, (id) => windows.find(id) !== null)

  app.on('activate', () => {
    if (windows.all().length === 0) openWindow(null)
  })
  // Beside unsaved work that is offered, nothing is opened unasked.
  const unfinished = await journal.recovered()
  opening.begin(openWindow, unfinished.length > 0 ? [] : await lastSession.files())
}

/**
 * Files that the program is asked to open: on its own command line, by a second start (which ends at once), and by
 * the file manager of a Mac; where it is asked for none, those of the last session. Each gets a window of its own, or the
 * window that works on it already.
 */
function setupOpening(): {
  begin: (openWindow: (wanted: string | null) => void, before: readonly string[]) => void
} {
  const early: string[] = []
  let open: ((wanted: string | null) => void) | null = null
  const openTrue = async (file: string | null) => open?.(file === null ? null : await trueNameOf(file))
  app.on('open-file', (event, file) => {
    event.preventDefault()
    if (open) void openTrue(file)
    else early.push(file)
  })
  app.on('second-instance', (_event, words, folder) => {
    void openTrue(fileNamedBy(words, folder, app.isPackaged))
  })
  return {
    begin(openWindow, before) {
      open = openWindow
      const named = fileNamedBy(process.argv, process.cwd(), app.isPackaged)
      const wanted = named === null ? early : [named, ...early]
      const again = wanted.length === 0 ? before : wanted
      for (const file of again.length === 0 ? [null] : again) void openTrue(file)
    },
  }
}

if (app.requestSingleInstanceLock()) void boot()
else app.quit()
