import path from 'node:path'
import type { Browser, BrowserContext, Page } from '@playwright/test'
import { servePage, type Served } from '../../../src-main/serve/serve.ts'
import { root } from './computer.ts'

type Initial = Parameters<typeof servePage>[1]

const viewport = { width: 1280, height: 800 }

/**
 * One page for the tests of a worker, read anew by each of them: the browser keeps what it has compiled of a page for the
 * next time it is read at the same address, which is two thirds of a start. What a test left in it is taken away.
 */
export class SharedPage {
  readonly #launch: () => Promise<Browser>
  #browser: Browser | null = null
  #context: BrowserContext | null = null
  #page: Page | null = null
  #served: Served | null = null
  /** The same for all tests, or the browser would find neither what it has compiled nor what a test has kept. */
  #port = 0
  /** Whether the page is in use by the running test, which has another where it asks a second time. */
  #taken = false

  constructor(launch: () => Promise<Browser>) {
    this.#launch = launch
  }

  /** The page with a build to start with, or the first demo; of one test, each call but the first is a further page. */
  async open(initial: Initial, prepared: (page: Page) => void): Promise<Page> {
    await this.#served?.close()
    this.#served = await servePage(path.join(root, 'dist/page'), initial, this.#port)
    this.#port = Number(new URL(this.#served.address).port)
    const page = this.#taken ? await (await this.#contextNow()).newPage() : await this.#pageNow()
    this.#taken = true
    prepared(page)
    await page.goto(this.#served.address)
    return page
  }

  async #contextNow(): Promise<BrowserContext> {
    if (this.#context !== null) return this.#context
    this.#browser ??= await this.#launch()
    this.#context = await this.#browser.newContext({ viewport })
    // A headless browser shows no pickers: files come through inputs and go as downloads, as in browsers without them.
    await this.#context.addInitScript(() => {
      for (const name of ['showOpenFilePicker', 'showSaveFilePicker']) {
        Object.defineProperty(window, name, { value: undefined })
      }
    })
    return this.#context
  }

  async #pageNow(): Promise<Page> {
    if (this.#page === null || this.#page.isClosed()) this.#page = await (await this.#contextNow()).newPage()
    return this.#page
  }

  /** Takes away what a test has left; where that cannot be, the page itself. */
  async clear(): Promise<void> {
    this.#taken = false
    const [page, context] = [this.#page, this.#context]
    if (page === null || context === null || this.#served === null) return
    const others = context.pages().filter((one) => one !== page)
    await Promise.all(others.map((one) => one.close({ runBeforeUnload: false })))
    if (page.isClosed()) return this.#drop()
    page.removeAllListeners()
    // Of the same address, where nothing is: elsewhere the browser would go on in another process, with nothing compiled.
    await page.goto(new URL('nothing', this.#served.address).href)
    await page.setViewportSize(viewport)
    await page.emulateMedia({ media: null, colorScheme: null, reducedMotion: null, forcedColors: null })
    const session = await context.newCDPSession(page)
    const { origin } = new URL(this.#served.address)
    await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' })
    await session.detach()
  }

  async #drop(): Promise<void> {
    const context = this.#context
    this.#page = this.#context = null
    await context?.close()
  }

  async end(): Promise<void> {
    await this.#drop()
    await this.#browser?.close()
    await this.#served?.close()
  }
}
