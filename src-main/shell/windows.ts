import path from 'node:path'
import { app, BrowserWindow, screen } from 'electron'
import { eventChannel } from '../bridge/channels.ts'
import type { Gives, Takes, WindowEvent } from '../bridge/contract.ts'
import { pageAddress } from './app-protocol.ts'
import { placeBeside } from './placing.ts'

type Shown = Takes<'show'>[0]

/** One window and what is known of it. */
export interface OurWindow {
  readonly owner: number
  readonly window: BrowserWindow
  /** The file it was opened for, not yet asked for by its page. */
  wanted: string | null
  /** Where its unsaved work is kept. */
  journal: string
  shown: Shown
  /** Its page crashed and is loaded again. */
  afterCrash: boolean
  /** The page was asked whether the window may close. */
  closing: 'no' | 'asked' | 'yes'
}

const fresh: Shown = { name: 'Pitchline', unsaved: false, undo: null, redo: null }

/** The program's windows: the one place that makes one. */
export class Windows {
  readonly #all = new Map<number, OurWindow>()

  open(wanted: string | null, journal: string): OurWindow {
    const before = this.focused()?.window ?? this.all().at(-1)?.window
    const window = new BrowserWindow({
      ...(before === undefined ? {} : placeBesideWindow(before)),
      width: 1280,
      height: 800,
      minWidth: 1024,
      minHeight: 640,
      show: false,
      title: 'Pitchline',
      webPreferences: {
        preload: path.join(app.getAppPath(), 'dist', 'preload', 'preload.cjs'),
        contextIsolation: true,
        sandbox: true,
        webSecurity: true,
        nodeIntegration: false,
        nodeIntegrationInWorker: false,
        nodeIntegrationInSubFrames: false,
        webviewTag: false,
        spellcheck: false,
        navigateOnDragDrop: false,
      },
    })
    const owner = window.webContents.id
    const ours: OurWindow = { owner, window, wanted, journal, shown: fresh, afterCrash: false, closing: 'no' }
    this.#all.set(owner, ours)
    window.once('ready-to-show', () => window.show())
    window.on('page-title-updated', (event) => event.preventDefault())
    window.on('closed', () => this.#all.delete(owner))
    void window.loadURL(pageAddress)
    return ours
  }

  find(owner: number): OurWindow | null {
    return this.#all.get(owner) ?? null
  }

  all(): readonly OurWindow[] {
    return [...this.#all.values()]
  }

  focused(): OurWindow | null {
    const window = BrowserWindow.getFocusedWindow()
    return this.all().find((one) => one.window === window) ?? null
  }

  /** Brings a window to the front. */
  bring(owner: number): void {
    const window = this.find(owner)?.window
    if (window?.isMinimized()) window.restore()
    window?.focus()
  }

  /** Sends an event to the page of a window; nothing where the window is gone. */
  send(owner: number, event: WindowEvent): void {
    const window = this.find(owner)?.window
    if (window && !window.isDestroyed()) window.webContents.send(eventChannel, event)
  }

  /** Title, and on a Mac the dot in the close button. */
  show(owner: number, shown: Shown): void {
    const ours = this.find(owner)
    if (!ours) return
    ours.shown = shown
    ours.window.setTitle(`${shown.name}${shown.unsaved ? ' (not saved)' : ''} · Pitchline`)
    ours.window.setDocumentEdited(shown.unsaved)
  }
}

function placeBesideWindow(before: BrowserWindow) {
  const bounds = before.getBounds()
  return placeBeside(bounds, screen.getDisplayMatching(bounds).workArea)
}

/** What *About* and the shortcuts need to know. */
export function factsOf(): Gives<'facts'> {
  const platforms = { darwin: 'mac', win32: 'windows' } as const
  const platform = process.platform === 'darwin' || process.platform === 'win32' ? process.platform : null
  return {
    platform: platform === null ? 'linux' : platforms[platform],
    version: __PITCHLINE_VERSION__,
    commit: __PITCHLINE_COMMIT__,
    runtime: `Electron ${process.versions.electron}, Chromium ${process.versions.chrome}`,
  }
}
