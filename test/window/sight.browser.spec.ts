import type { Page } from '@playwright/test'
import { answer, begin, candidatesIn, question } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** Pairs of words of the drawing that lie over each other by more than a dot. */
function wordsOverWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const all = [
      ...document.querySelectorAll('.power-path text, .power-path > .turn, .power-path .words button'),
    ]
      .map((one) => ({ words: (one.textContent ?? '').trim(), box: one.getBoundingClientRect() }))
      .filter(({ words, box }) => words !== '' && box.width > 0)
    return all.flatMap((one, at) =>
      all
        .slice(at + 1)
        .filter(
          ({ box }) =>
            Math.min(one.box.right, box.right) - Math.max(one.box.left, box.left) > 1 &&
            Math.min(one.box.bottom, box.bottom) - Math.max(one.box.top, box.top) > 5,
        )
        .map(({ words }) => `“${one.words}” and “${words}”`),
    )
  })
}

test('no words of the drawing lie over others, at any size', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  for (const build of ['the demo', 'a new build']) {
    for (const size of [
      { width: 1280, height: 800 },
      { width: 1024, height: 640 },
      { width: 640, height: 400 },
    ]) {
      await page.setViewportSize(size)
      expect(await wordsOverWords(page), `${build}, ${size.width} × ${size.height}`).toEqual([])
    }
    await page.setViewportSize({ width: 1280, height: 800 })
    await page.keyboard.press('Alt+n')
  }
})

test('Take is in sight in every row, however many entries are varied', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await question(page, 'Which gears').click()
  const boxes = answer(page).locator('input[type=checkbox]')
  for (const box of await boxes.all()) {
    if ((await boxes.and(page.locator(':checked')).count()) < 5) await box.check()
  }
  await answer(page).getByRole('button', { name: 'Search', exact: true }).click()
  await expect(candidatesIn(page).first()).toBeVisible()
  // Rows come and go while it looks: asked of whichever is first then.
  const sight = () =>
    page.evaluate(() => {
      const take = [...document.querySelectorAll('[data-candidate] .take button')][0]
      const room = take?.closest('.scroll')
      if (take === undefined || !room) return 'no row'
      const [words, box] = [take.getBoundingClientRect(), room.getBoundingClientRect()]
      const inSight = words.left >= box.left && words.right <= box.right + 1 && room.scrollLeft === 0
      return `${inSight ? 'in sight' : 'cut off'}, table ${room.scrollWidth > room.clientWidth ? 'wider' : 'no wider'}`
    })
  await expect.poll(sight).toBe('in sight, table wider')
})

test('where the system picks the colours, the button meant first can be read and one tab is marked', async ({
  open,
}) => {
  const { page } = await open()
  await page.emulateMedia({ forcedColors: 'active' })
  const first = page.getByRole('button', { name: 'Got it' })
  const [words, ground] = await first.evaluate((button) => {
    // What the system's own pair of colours is computed to.
    const probe = document.createElement('i')
    probe.style.cssText = 'forced-color-adjust: none; color: HighlightText; background: Highlight'
    document.body.append(probe)
    const [own, pair] = [getComputedStyle(button), getComputedStyle(probe)]
    const fits = [own.color === pair.color, own.backgroundColor === pair.backgroundColor]
    probe.remove()
    return fits
  })
  expect([words, ground]).toEqual([true, true])
  await begin(page)
  const lines = await page
    .getByRole('tab')
    .evaluateAll((tabs) => tabs.map((tab) => getComputedStyle(tab).borderBottomColor))
  expect(lines.filter((line) => line === lines[0])).toHaveLength(1)
})
