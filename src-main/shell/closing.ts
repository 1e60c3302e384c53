import { app } from 'electron'
import type { OurWindow, Windows } from './windows.ts'

/**
 * Closing with unsaved work asks in the page: Save, Discard or Cancel. The window stays until the page has answered;
 * quitting closes one window after the other and stops at the first Cancel.
 */
export class Closing {
  readonly #windows: Windows
  /** Done with a window that closes by the person's own wish: its work is saved or given up. */
  readonly #settle: (ours: OurWindow) => Promise<void>
  #quitting = false

  constructor(windows: Windows, settle: (ours: OurWindow) => Promise<void>) {
    this.#windows = windows
    this.#settle = settle
    app.on('before-quit', () => (this.#quitting = true))
    app.on('window-all-closed', () => {
      if (process.platform !== 'darwin' || this.#quitting) app.quit()
    })
  }

  guard(ours: OurWindow): void {
    ours.window.on('close', (event) => {
      if (ours.closing === 'yes' || !ours.shown.unsaved || ours.window.webContents.isCrashed()) return
      event.preventDefault()
      if (ours.closing === 'asked') return
      ours.closing = 'asked'
      this.#windows.bring(ours.owner)
      this.#windows.tell(ours.owner, { kind: 'close-asked' })
    })
  }

  /** The page's answer. */
  async answer(ours: OurWindow, close: boolean): Promise<void> {
    if (!close) {
      ours.closing = 'no'
      this.#quitting = false
      return
    }
    ours.closing = 'yes'
    await this.#settle(ours)
    ours.window.close()
    if (this.#quitting) app.quit()
  }
}
