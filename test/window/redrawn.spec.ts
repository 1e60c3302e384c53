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

/** The drawings once two looks, an idle moment apart, are alike: what is out of sight is drawn when there is time. */
async function settled(page: Page): Promise<string> {
  let seen = ''
  await expect
    .poll(async () => {
      const before = seen
      await page.evaluate(() => new Promise((done) => requestIdleCallback(done)))
      seen = await drawings(page)
      return seen === before
    })
    .toBe(true)
  return seen
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
      // Work that follows may end, and draw, between two looks: then the change is made and looked at again.
      await expect(async () => {
        await entry.fill(value)
        const first = await settled(page)
        expect(first, question).toContain('path')
        await entry.fill(String(Number(value) * 1.3))
        await expect.poll(async () => (await drawings(page)) === first, question).toBe(false)
        const changed = await settled(page)
        await page.getByRole('tab', { name: 'Side by side' }).click()
        await page.getByRole('tab', { name: question }).click()
        // Held against each other as one: a difference would be told in thousands of lines.
        expect((await settled(page)) === changed, question).toBe(true)
      }).toPass()
    }
  }
})
