import type { Page } from '@playwright/test'
import { expect, test } from './launch/open.ts'

/** Every shape of every plot of the view, a line each, without the ids that each of its lives has anew. */
function drawings(page: Page): Promise<string> {
  return page
    .getByRole('tabpanel')
    .locator('svg.scene > g:first-of-type')
    .evaluateAll((layers) => {
      const lineOf = (shape: Element): string => {
        const told = [...shape.attributes].filter(({ name }) => name !== 'id' && name !== 'clip-path')
        const named = told.map(({ name, value }) => `${name}=${value}`).toSorted()
        return [shape.tagName, ...named, shape.childElementCount === 0 ? shape.textContent : ''].join(' ')
      }
      return layers.map((layer) => [...layer.querySelectorAll('*')].map(lineOf).join('\n')).join('\n\n')
    })
}

// Plots are changed where they differ, not drawn anew: what is left of the old drawing must be what the new one has.
test('a plot that was changed shows what one drawn afresh shows', async ({ open }) => {
  const { page } = await open()
  await page.getByRole('combobox', { name: 'Part' }).selectOption('motor')
  const entry = page.locator('[data-entry="motor.kvRpmPerVolt"]')
  for (const value of ['95', '1800']) {
    await entry.fill(value)
    for (const question of ['How fast', 'Will it hold', 'How hot, how long']) {
      await page.getByRole('tab', { name: question }).click()
      const first = await drawings(page)
      expect(first, question).toContain('path')
      await entry.fill(String(Number(value) * 1.3))
      await expect.poll(async () => (await drawings(page)) === first, question).toBe(false)
      // What is out of sight is drawn when there is time: behind it, there is time for us.
      await page.evaluate(() => new Promise((done) => requestIdleCallback(done)))
      const changed = await drawings(page)
      await page.getByRole('tab', { name: 'Side by side' }).click()
      await page.getByRole('tab', { name: question }).click()
      // Held against each other as one: a difference would be told in thousands of lines.
      await expect.poll(async () => (await drawings(page)) === changed, question).toBe(true)
      await entry.fill(value)
    }
  }
})
