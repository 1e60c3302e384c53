import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { rulesOfColour, tags } from './axe-rules.ts'
import { expect } from './launch/open.ts'

/** In place of axe itself where the page has it already; the text of what is found is not asked for. */
const inPlace = 'axe.configure({ noHtml: true })'

/** What axe finds, a line each; `colours`: by the rules of colour only. */
export async function troublesOf(page: Page, within = 'html', only?: 'colours'): Promise<string[]> {
  // Read anew it costs as much as it takes to look at a short view.
  const isThere = await page.evaluate(() => 'axe' in window)
  // The real window has one page only; the other way of running axe would open a second.
  const axe = new AxeBuilder({ page, ...(isThere ? { axeSource: inPlace } : {}) })
    .include(within)
    .setLegacyMode()
    // No rule in force reads the style sheets by itself.
    .options({
      resultTypes: ['violations'],
      preload: false,
      rules: { 'heading-order': { enabled: true } },
    })
  const found = await (only === 'colours' ? axe.withRules(rulesOfColour) : axe.withTags(tags)).analyze()
  return found.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`,
  )
}

/**
 * The page is free of what axe finds, its colours in the light and in the dark. For the browser's project: the window
 * shows the same page, and axe takes seconds.
 */
export async function expectAccessible(page: Page, within = 'html'): Promise<void> {
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await troublesOf(page, within, 'colours'), 'in the dark').toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
  expect(await troublesOf(page, within), 'in the light').toEqual([])
}
