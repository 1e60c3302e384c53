import { app, dialog } from 'electron'
import type { OurWindow, Windows } from './windows.ts'

/** How long a page may take to put the question: long for a busy machine, short for a person who waits. */
const answerMilliseconds = 5000

interface ClosingParts {
  /** Done with a window that closes by the person's own wish: its work is saved or given up. */
  readonly settle: (ours: OurWindow) => Promise<void>
  /** A window ends without an answer of its page: what was kept of its work stays. */
  readonly giveUp: (ours: OurWindow) => void
}

/**
 * Closing with unsaved work asks in the page: Save, Discard or Cancel. The window stays until the page has answered;
 * quitting closes one window after the other and stops at the first Cancel. A page that does not even put the question
 * hangs: then the program itself asks whether to wait for it or to end it.
 */
export class Closing {
  readonly #windows: Windows
  readonly #parts: ClosingParts
  /** Per window, what waits for its page to put the question, and the program's own question that may follow. */
  readonly #waiting = new Map<number, { timer: NodeJS.Timeout; question: AbortController }>()
  #quitting = false

  constructor(windows: Windows, parts: ClosingParts) {
    this.#windows = windows
    this.#parts = parts
    app.on('before-quit', () => (this.#quitting = true))
    app.on('window-all-closed', () => {
      if (process.platform !== 'darwin' || this.#quitting) app.quit()
    })
  }

  guard(ours: OurWindow): void {
    ours.window.on('close', (event) => {
      if (ours.closing === 'yes' || !ours.shown.unsaved || ours.window.webContents.isCrashed()) return
      event.preventDefault()
      this.#ask(ours)
    })
    ours.window.on('closed', () => this.heard(ours))
  }

  /** The page has put its question: it lives. */
  heard({ owner }: OurWindow): void {
    const waiting = this.#waiting.get(owner)
    clearTimeout(waiting?.timer)
    waiting?.question.abort()
    this.#waiting.delete(owner)
  }

  /** The page's answer. */
  async answer(ours: OurWindow, close: boolean): Promise<void> {
    this.heard(ours)
    if (!close) {
      ours.closing = 'no'
      this.#quitting = false
      return
    }
    ours.closing = 'yes'
    await this.#parts.settle(ours)
    ours.window.close()
    if (this.#quitting) app.quit()
  }

  /** Asks the page at each wish to close, so that one that hung with its question open is found out too. */
  #ask(ours: OurWindow): void {
    ours.closing = 'asked'
    this.#windows.bring(ours.owner)
    this.#windows.send(ours.owner, { kind: 'close-asked' })
    if (this.#waiting.has(ours.owner)) return
    const timer = setTimeout(() => void this.#askForIt(ours, question), answerMilliseconds)
    const question = new AbortController()
    this.#waiting.set(ours.owner, { timer, question })
  }

  async #askForIt(ours: OurWindow, question: AbortController): Promise<void> {
    const { response } = await dialog.showMessageBox(ours.window, {
      type: 'warning',
      message: 'This window does not answer.',
      detail:
        'It may be busy, or may have stopped. Its unsaved work was kept up to a second or two before that, and is ' +
        'offered at the next start if you end it now.',
      buttons: ['Wait', 'End it'],
      defaultId: 0,
      cancelId: 0,
      signal: question.signal,
    })
    if (question.signal.aborted || ours.window.isDestroyed()) return
    this.#waiting.delete(ours.owner)
    if (response === 0) {
      ours.closing = 'no'
      this.#quitting = false
      return
    }
    ours.closing = 'yes'
    this.#parts.giveUp(ours)
    ours.window.destroy()
    if (this.#quitting) app.quit()
  }
}
