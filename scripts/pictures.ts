import { mkdirSync } from 'node:fs'
import path from 'node:path'
import { chromium, type Browser, type Page } from '@playwright/test'
import { servePage } from '../src-main/serve/serve.ts'
import { chromiumPath, rootFlags } from '../test/window/launch/computer.ts'

/** Where the pictures lie. */
const folder = path.join('docs', 'pictures')

type Look = NonNullable<Parameters<Browser['newPage']>[0]>

/** One picture: how the page is shown, and what is done before it is taken. */
interface Picture {
  readonly look: Look
  readonly until?: (page: Page) => Promise<void>
}

const at = (width: number, height: number, more: Look = {}): Look => ({
  viewport: { width, height },
  ...more,
})
const usual = at(1280, 800, { colorScheme: 'light' })
const ask = (number: number) => async (page: Page) => {
  await page.keyboard.press(`Alt+${number}`)
  await page.waitForTimeout(1500)
}
const begin = (page: Page) => page.keyboard.press('Alt+n')

const sizes = [
  [1024, 700],
  [1280, 800],
  [1920, 1080],
] as const

/** How the window looks: sizes, themes, what the system may ask for, and what a person meets when all is not well. */
export function pictures(): ReadonlyMap<string, Picture> {
  const all = new Map<string, Picture>()
  for (const [width, height] of sizes)
    for (const colorScheme of ['light', 'dark'] as const) {
      const look = at(width, height, { colorScheme })
      all.set(`how-fast-${width}-${colorScheme}`, { look })
      all.set(`new-build-${width}-${colorScheme}`, { look, until: begin })
    }
  ;['which-gears', 'will-it-hold', 'how-hot', 'what-happened-empty', 'side-by-side'].forEach((name, index) =>
    all.set(name, { look: usual, until: ask(index + 2) }),
  )
  for (const colorScheme of ['light', 'dark'] as const) {
    const look = at(1280, 800, { forcedColors: 'active', colorScheme })
    all.set(`forced-colours-${colorScheme}`, { look, until: ask(2) })
  }
  // 1280 × 800 at 200 %: half as many px of the page, each twice as large.
  const zoomed = at(640, 400, { deviceScaleFactor: 2 })
  all.set('zoom-200-how-fast', { look: zoomed })
  all.set('zoom-200-new-build', { look: zoomed, until: begin })
  all.set('wrong-entry', { look: usual, until: wrongEntry })
  all.set('wrong-file', { look: usual, until: wrongFile })
  all.set('busy', { look: usual, until: busy })
  all.set('changed', { look: usual, until: changed })
  all.set('gears-found', { look: usual, until: gearsFound })
  all.set('what-happened', { look: usual, until: logRead })
  all.set('entered', { look: usual, until: entered })
  all.set('entered-1024-dark', { look: at(1024, 700, { colorScheme: 'dark' }), until: entered })
  all.set('entered-held', { look: usual, until: enteredHeld })
  all.set('wrong-start', { look: usual, until: wrongStart })
  all.set('letters-125', { look: usual, until: largeLetters })
  return all
}

async function wrongEntry(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: 'Part' }).selectOption('pack')
  await page.locator('[data-entry="pack.series"]').fill('99')
}

async function wrongFile(page: Page): Promise<void> {
  // Said as text: this folder is checked without a browser's types.
  const dataTransfer = await page.evaluateHandle(`(() => {
    const data = new DataTransfer()
    data.items.add(new File(['{"version": 1, "pack": 12'], 'cut.build.json', { type: 'application/json' }))
    return data
  })()`)
  await page.dispatchEvent('body', 'drop', { dataTransfer })
  await page.getByRole('alert').waitFor()
}

async function busy(page: Page): Promise<void> {
  await ask(2)(page)
  const boxes = page.getByRole('tabpanel').locator('input[type=checkbox]')
  for (const box of (await boxes.all()).slice(0, 6)) await box.check()
  await page.getByRole('button', { name: 'Search', exact: true }).click()
  await page.locator('progress').first().waitFor()
  await page.waitForTimeout(600)
}

async function gearsFound(page: Page): Promise<void> {
  await ask(2)(page)
  await page.getByRole('button', { name: 'Search', exact: true }).click()
  await page.getByRole('button', { name: 'Table as CSV' }).waitFor({ timeout: 120_000 })
}

async function logRead(page: Page): Promise<void> {
  await ask(5)(page)
  await page.getByRole('button', { name: 'Look at the demo log' }).click()
  await page.getByRole('application').first().waitFor({ timeout: 60_000 })
  await page.waitForTimeout(1500)
}

/** A machine of which a newcomer has entered what is known (demo). */
async function entered(page: Page): Promise<void> {
  await begin(page)
  for (const [name, text] of [
    ['Motor: Kv', '2650'],
    ['Pack: cells in series', '5'],
    ['First reduction', '12/58'],
    ['Then, if any', '16/36'],
    ['Sprocket: teeth', '10'],
    ['Track: pitch', '16'],
    ['Machine, all-up', '6.2'],
    ['Highest rpm allowed', '50000'],
  ] as const)
    await page.getByRole('textbox', { name, exact: true }).fill(text)
  await page.waitForTimeout(300)
}

/** The same, and what would break: most of it rests on what was not entered. */
async function enteredHeld(page: Page): Promise<void> {
  await entered(page)
  await page.getByRole('button', { name: 'All fields and questions' }).click()
  await page.getByRole('combobox', { name: 'Part' }).selectOption('track')
  await ask(3)(page)
}

async function wrongStart(page: Page): Promise<void> {
  await begin(page)
  await page.getByRole('textbox', { name: 'Pack: cells in series', exact: true }).fill('500')
  await page.getByRole('textbox', { name: 'First reduction', exact: true }).fill('12/')
  await page.keyboard.press('Tab')
}

/** As a browser shows it whose person asks for letters of 20 px in place of 16. */
async function largeLetters(page: Page): Promise<void> {
  await page.addInitScript(
    `document.addEventListener('readystatechange', () => (document.documentElement.style.fontSize = '20px'))`,
  )
  await page.reload()
  await page.getByRole('application').first().waitFor()
}

async function changed(page: Page): Promise<void> {
  await page.getByRole('combobox', { name: 'Part' }).selectOption('pack')
  await page.locator('[data-entry="pack.series"]').fill('8')
  await page.getByRole('textbox', { name: 'A log shows' }).fill('20000')
  await page.getByRole('tabpanel').evaluate((panel) => panel.scrollTo(0, 0))
  await page.waitForTimeout(300)
}

/** `node scripts/run.js pictures [name…]`: takes them into `docs/pictures`; all of them where none is named. */
export async function run(words: readonly string[]): Promise<number> {
  mkdirSync(folder, { recursive: true })
  const served = await servePage(path.join('dist', 'page'), null, 0)
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: [...rootFlags] })
  for (const [name, { look, until }] of pictures()) {
    if (words.length > 0 && !words.includes(name)) continue
    const page = await browser.newPage(look)
    await page.goto(served.address)
    await page.getByRole('button', { name: 'Got it' }).click()
    await until?.(page)
    await page.mouse.move(0, 0)
    await page.waitForTimeout(400)
    await page.screenshot({ path: path.join(folder, `${name}.jpg`), type: 'jpeg', quality: 25 })
    await page.close()
  }
  await browser.close()
  await served.close()
  console.log(`Took them into ${folder}.`)
  return 0
}
