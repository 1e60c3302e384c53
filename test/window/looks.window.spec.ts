import type { ElectronApplication, Page } from '@playwright/test'
import { answer, begin, limits, question } from './journey.ts'
import { expect, test } from './launch/open.ts'

/**
 * The whole window against kept pictures, in one runtime only: letters, curves and their smoothing are Chromium's, and a
 * machine's own browser may be of any version. The typeface is the bundled one; nothing moves; no date is on the page.
 *
 * To accept a change that was meant: `npx playwright test looks --project=window --update-snapshots`, and look at it. The
 * pictures are kept with 64 colours, a quarter of the size; the comparison's own tolerance of colour covers that.
 */
const runtime = '25.1.1'

/** 0.5 % of the dots: edges of letters under another system's font settings; a line of text moved by 2 px is more. */
const maxDiffPixelRatio = 0.005

test.use({ ownProgram: false })

const sizes = { usual: [1280, 800], least: [1024, 700] } as const

async function shown(
  page: Page,
  electron: ElectronApplication | null,
  size: keyof typeof sizes,
): Promise<void> {
  if (electron === null) throw new Error('this spec is for the real window')
  const version = await electron.evaluate(() => process.versions.electron)
  test.skip(version !== runtime, `the pictures are of Electron ${runtime}, this is ${version}`)
  const [width, height] = sizes[size]
  await electron.evaluate(
    ({ BrowserWindow }, [width, height]) => BrowserWindow.getAllWindows()[0]?.setContentSize(width, height),
    [width, height] as const,
  )
  await expect.poll(() => page.evaluate(() => [innerWidth, innerHeight])).toEqual([width, height])
  await begin(page)
  await page.evaluate(() => document.fonts.ready)
}

async function looksLike(page: Page, name: string): Promise<void> {
  // The pointer at rest where nothing answers it.
  await page.mouse.move(2, 2)
  await expect(page).toHaveScreenshot(`${name}.png`, { maxDiffPixelRatio })
}

test('light, metric: how fast', async ({ open }) => {
  const { page, electron } = await open()
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
  await shown(page, electron, 'usual')
  await looksLike(page, 'how-fast')
})

test('at the least size: gears found, six rows and more in sight', async ({ open }) => {
  const { page, electron } = await open()
  await page.emulateMedia({ colorScheme: 'light', reducedMotion: 'reduce' })
  await shown(page, electron, 'least')
  await question(page, 'Which gears').click()
  await answer(page).getByRole('button', { name: 'Search', exact: true }).click()
  await expect(answer(page).getByRole('button', { name: 'Table as CSV' })).toBeAttached({ timeout: 30_000 })
  const rows = answer(page).locator('[data-candidate]')
  await expect(rows.nth(5)).toBeInViewport()
  await looksLike(page, 'which-gears')
})

test('dark, imperial: what would hold, with bands in the ledger', async ({ open }) => {
  const { page, electron } = await open()
  await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' })
  await shown(page, electron, 'usual')
  await page.getByRole('button', { name: 'Metric' }).click()
  await question(page, 'Will it hold').click()
  await expect(page.locator('[data-remedy]').first()).toBeVisible({ timeout: 20_000 })
  await expect(limits(page).locator('[data-band]').first()).toBeAttached({ timeout: 20_000 })
  await page.locator('#answer').evaluate((panel) => panel.scrollTo(0, 0))
  await looksLike(page, 'will-it-hold')
})
