import os from 'node:os'
import path from 'node:path'
import { app } from 'electron'
import { failed, succeeded, type Result } from '../../shared-engine/mistakes/mistake.ts'
import type { Handlers } from '../bridge/receive.ts'
import { askOpen, askSave } from '../files/dialogs.ts'
import type { FileService } from '../files/file-service.ts'
import type { FileSystem } from '../files/file-system.ts'
import type { Journal } from '../files/journal.ts'
import type { OpenFiles } from '../files/open-files.ts'
import type { RecentFiles } from '../files/recent.ts'
import { saveAtomically } from '../files/atomic-save.ts'
import type { Closing } from './closing.ts'
import { printOptions } from './print-options.ts'
import { factsOf, type OurWindow, type Windows } from './windows.ts'

interface HandlerParts {
  readonly disk: FileSystem
  readonly windows: Windows
  readonly service: FileService
  readonly files: OpenFiles
  readonly journal: Journal
  readonly recent: RecentFiles
  readonly closing: Closing
  readonly openWindow: (wanted: string | null) => void
  readonly refreshMenu: () => void
  /** A window works on another file, or on none: what the next start opens again is noted anew. */
  readonly noteSession: () => void
}

const done = succeeded(null)

/** What each verb of the bridge does, for the window that asks. */
export function handlersOf(parts: HandlerParts): Handlers {
  return {
    ...windowHandlers(parts),
    ...fileHandlers(parts),
    ...exportHandlers(parts),
    ...workHandlers(parts),
  }
}

type Some<V extends keyof Handlers> = Pick<Handlers, V>

function windowHandlers(
  parts: HandlerParts,
): Some<'facts' | 'start' | 'show' | 'newWindow' | 'heardClose' | 'answerClose'> {
  const { windows, service, journal, closing } = parts
  return {
    facts: () => succeeded(factsOf()),
    async start(owner) {
      const ours = windowOf(windows, owner)
      const { wanted, afterCrash } = ours
      ours.wanted = null
      ours.afterCrash = false
      const opened = wanted === null ? null : await service.open(owner, wanted)
      const recovered = []
      for (const work of await journal.recovered()) {
        const offer = await service.withFile(owner, work)
        if (offer === null) await journal.forget(work.id)
        else recovered.push(offer)
      }
      return succeeded({ opened, recovered, afterCrash })
    },
    show(owner, shown) {
      windows.show(owner, shown)
      parts.refreshMenu()
      return done
    },
    newWindow() {
      parts.openWindow(null)
      return done
    },
    heardClose(owner) {
      closing.heard(windowOf(windows, owner))
      return done
    },
    async answerClose(owner, close) {
      await closing.answer(windowOf(windows, owner), close)
      return done
    },
  }
}

function fileHandlers(
  parts: HandlerParts,
): Some<
  'open' | 'read' | 'openDropped' | 'release' | 'recent' | 'openRecent' | 'clearRecent' | 'save' | 'saveAs'
> {
  const { windows, service, recent } = parts
  return {
    async open(owner) {
      const file = await askOpen(windowOf(windows, owner).window)
      return file === null ? done : service.open(owner, file)
    },
    read: (owner, handle) => service.read(owner, handle),
    openDropped: (owner, file) => service.open(owner, file),
    release(owner, handle) {
      service.release(owner, handle)
      parts.noteSession()
      return done
    },
    async recent() {
      const list = await recent.list()
      return succeeded(list.map(({ id, file, missing }) => ({ id, missing, ...shownPath(file) })))
    },
    async openRecent(owner, id) {
      const file = await recent.fileOf(id)
      return file === null ? notRecent() : service.open(owner, file)
    },
    async clearRecent() {
      await recent.clear()
      app.clearRecentDocuments()
      return done
    },
    save: (owner, handle, saved, fingerprint) => service.save(owner, handle, saved, fingerprint),
    async saveAs(owner, name, saved) {
      const file = await askSave(windowOf(windows, owner).window, 'build', name)
      return file === null ? done : service.saveAs(owner, file, saved)
    },
  }
}

function exportHandlers({ disk, windows }: HandlerParts): Some<'exportFile' | 'exportPdf'> {
  return {
    async exportFile(owner, kind, name, bytes) {
      const file = await askSave(windowOf(windows, owner).window, kind, name)
      if (file === null) return done
      const saved = await saveAtomically(disk, { file, bytes, replaces: 'anything' })
      return saved.ok ? succeeded(path.basename(file)) : saved
    },
    async exportPdf(owner, paper, name) {
      const { window } = windowOf(windows, owner)
      const file = await askSave(window, 'pdf', name)
      if (file === null) return done
      const bytes = await window.webContents.printToPDF(printOptions(paper))
      const saved = await saveAtomically(disk, { file, bytes, replaces: 'anything' })
      return saved.ok ? succeeded(path.basename(file)) : saved
    },
  }
}

function workHandlers({
  windows,
  files,
  journal,
}: HandlerParts): Some<'keep' | 'forget' | 'discardRecovered'> {
  return {
    async keep(owner, { name, text, handle, fingerprint }) {
      const opened = handle === null ? null : files.find(owner, handle)
      const keptAt = new Date().toISOString()
      const [file, known] = [opened?.file ?? null, [...(opened?.fingerprints ?? [])]]
      const entry = { name, text, file, fingerprint, known, keptAt }
      const kept = await journal.keep(windowOf(windows, owner).journal, entry)
      return kept.ok ? done : kept
    },
    async forget(owner) {
      await journal.forget(windowOf(windows, owner).journal)
      return done
    },
    async discardRecovered(_owner, id) {
      // Only what no window owns: one page can't throw another's work away.
      if (await journal.isRecovered(id)) await journal.forget(id)
      return done
    },
  }
}

function windowOf(windows: Windows, owner: number): OurWindow {
  const ours = windows.find(owner)
  if (!ours) throw new Error(`no window ${owner}`)
  return ours
}

/** Name and folder as a person reads them: the home folder as `~`. */
function shownPath(file: string): { name: string; place: string } {
  const folder = path.dirname(file)
  const home = os.homedir()
  const inHome = folder === home || folder.startsWith(home + path.sep)
  return { name: path.basename(file), place: inHome ? `~${folder.slice(home.length)}` : folder }
}

function notRecent<T>(): Result<T> {
  return failed([{ code: 'no-such-file', path: '', value: '', allowed: 'a file of the list', kept: '' }])
}
