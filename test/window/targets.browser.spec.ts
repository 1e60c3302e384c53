import type { Page } from '@playwright/test'
import { answer, begin, question, questions, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

/**
 * Controls less than 24 px wide or high (WCAG 2.2, 2.5.8). A figure within a sentence is as high as its line; a box to
 * tick is pressed by its words too.
 */
function small(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const controls = document.querySelectorAll<HTMLElement>(
      'button:not(.figure), select, input:not([type=checkbox], [type=radio], [type=file]), textarea, summary, label:has(input[type=checkbox], input[type=radio]), [role=tab], [data-part]',
    )
    return [...controls].flatMap((control) => {
      const { width, height } = control.getBoundingClientRect()
      // 0.5 px: boxes stand between dots.
      const least = control.matches('.action.main') ? 39.5 : 23.5 // those meant first: with gloves on
      const large = (width === 0 && height === 0) || (width >= least && height >= least)
      return large
        ? []
        : [`${control.textContent.trim().slice(0, 40)} ${width.toFixed(0)} × ${height.toFixed(0)}`]
    })
  })
}

/**
 * How what has the focus is marked, each way once: by its own ring, by that of the box round a field, or by the frame of a
 * part of the drawing. One way, or a person has to learn several.
 */
async function rings(page: Page): Promise<string[]> {
  await page.keyboard.press('Tab') // from now on the focus is shown
  return page.evaluate(() => {
    const found = new Map<string, string>()
    for (const one of document.querySelectorAll<HTMLElement>(
      'button, input, select, textarea, summary, [tabindex]',
    )) {
      if (one.tabIndex < 0 || one.getClientRects().length === 0) continue
      one.focus({ preventScroll: true })
      if (document.activeElement !== one) continue
      const frame = one.querySelector('.ground')
      const marked = [one, one.closest('.control')].find(
        (box) => box !== null && getComputedStyle(box).outlineStyle !== 'none',
      )
      const style = getComputedStyle(marked ?? one)
      const ring = marked
        ? `${style.outlineStyle} ${style.outlineWidth} ${style.outlineColor}`
        : frame instanceof SVGElement
          ? `solid ${getComputedStyle(frame).strokeWidth} ${getComputedStyle(frame).stroke}`
          : 'none'
      if (!found.has(ring)) found.set(ring, `${ring}: ${one.outerHTML.slice(0, 90)}`)
    }
    return [...found.values()]
  })
}

test('every control is 24 px or more each way, and marked alike where the focus is, in every view', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  for (const name of questions) {
    await question(page, name).click()
    if (name === 'What happened') await page.getByRole('button', { name: 'Look at the demo log' }).click()
    await expect(answer(page).locator('p').first()).toContainText(/\d/)
    expect(await small(page), name).toEqual([])
    expect(await rings(page), name).toEqual([expect.stringMatching(/^solid 2px/)])
  }
})

test('where the system picks the colours, standing and choice are still told', async ({ open }) => {
  const { page } = await open()
  await page.emulateMedia({ forcedColors: 'active' })
  await begin(page)
  const worst = page.locator('button[data-limit]').first()
  await expect(worst).toContainText('over')
  // The bar's own colour would be the paper's; a system colour is put in its place.
  const [bar, paper] = await worst.evaluate((entry) => [
    getComputedStyle(entry.querySelector('rect') ?? entry).fill,
    getComputedStyle(document.body).backgroundColor,
  ])
  expect(bar).not.toBe(paper)
  await worst.click()
  await page.keyboard.press('Escape')
  await expect(worst).toHaveCSS('outline-style', 'solid')
})

/** Rows of the form that stand whole within its box. */
const rowsInSight = (page: Page) =>
  page.locator('[data-region="fields"] .scroll').evaluate((box) => {
    const room = box.getBoundingClientRect()
    return [...box.querySelectorAll('.frame')].filter((row) => {
      const { top, bottom } = row.getBoundingClientRect()
      return top >= room.top && bottom <= room.bottom
    }).length
  })

test('the form shows nine rows and more, each as tall, with few stops, and beside the answer', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  for (const part of ['pack', 'motor', 'track', 'vehicle', 'ground', 'service']) {
    await showPart(page, part)
    const heights = await page
      .locator('[data-region="fields"] .frame:not(.stacked)')
      .evaluateAll((rows) => rows.map((row) => Math.round(row.getBoundingClientRect().height)))
    expect(heights.length).toBeGreaterThan(1)
    expect([...new Set(heights)], part).toHaveLength(1)
  }
  await showPart(page, 'motor')
  expect(await rowsInSight(page)).toBeGreaterThanOrEqual(9)

  const stops = page.locator('[data-field="motor.resistanceMilliohm"]').locator('input, select, button')
  const stopsNow = () =>
    stops.evaluateAll((all) => (all as HTMLElement[]).filter(({ tabIndex }) => tabIndex >= 0).length)
  expect(await stopsNow()).toBe(2)
  const mark = page.getByRole('button', { name: /^Winding resistance: where it comes from, and other forms/ })
  await mark.focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('combobox', { name: 'Where Winding resistance comes from' })).toBeFocused()
  expect(await stopsNow()).toBe(3)
  await page.keyboard.press('Escape')
  await expect(mark).toBeFocused()

  await page.setViewportSize({ width: 1024, height: 700 })
  await expect(page.getByRole('button', { name: 'Close' })).toBeVisible()
  const [fields, shown] = [
    await page.locator('[data-region="fields"]').boundingBox(),
    await answer(page).boundingBox(),
  ]
  expect((fields?.x ?? NaN) + (fields?.width ?? NaN)).toBeLessThanOrEqual(shown?.x ?? NaN)
})

/** What readers are told from now on, each region's words once. */
const listenToRegions = (page: Page) =>
  page.evaluate(() => {
    const told: string[] = []
    const last = new Map<Element, string>()
    Object.assign(window, { told })
    const note = (node: Node | null) => {
      const region = (node instanceof Element ? node : (node?.parentElement ?? null))?.closest(
        '[role=status], [role=alert], [aria-live=polite], [aria-live=assertive], output:not([aria-live=off])',
      )
      const words = region?.textContent.trim() ?? ''
      if (!region || words === '' || words === last.get(region)) return
      last.set(region, words)
      told.push(words)
    }
    new MutationObserver((records) => records.forEach(({ target }) => note(target))).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
    })
  })
const toldIn = (page: Page) => page.evaluate(() => (window as unknown as { told: string[] }).told)

test('a change is told in one polite sentence once the typing rests; a word leads to what it means', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'motor')
  const kv = page.locator('[data-entry="motor.kvRpmPerVolt"]')
  await page.waitForTimeout(1200) // the page has told itself what it opened with
  await listenToRegions(page)
  await kv.fill('')
  await kv.pressSequentially('812', { delay: 60 })
  await expect.poll(() => toldIn(page)).not.toEqual([])
  await page.waitForTimeout(1500)
  expect(await toldIn(page)).toEqual([expect.stringMatching(/^Top speed .* over\. Worst limit: .*\.$/)])
  await kv.pressSequentially('x7', { delay: 60 })
  await expect.poll(() => toldIn(page)).toHaveLength(2)
  expect((await toldIn(page))[1]).toContain('not understood')
  await kv.press('Escape')

  await page.getByRole('button', { name: 'Free-run current: where it comes from' }).focus()
  const help = page.getByRole('complementary', { name: 'About this entry' })
  await showPart(page, 'track')
  await page.locator('[data-entry="track.sprocketTeeth"]').focus()
  const word = help.getByRole('button', { name: /: what it means$/ }).first()
  const asked = (await word.textContent()) ?? ''
  await word.click()
  const current = page.getByRole('dialog', { name: 'Words' }).locator('[aria-current]')
  await expect(current).toBeFocused()
  await expect(current).toBeInViewport()
  await expect(current).toContainText(new RegExp(asked, 'i'))
  await page.keyboard.press('Escape')
  await expect(word).toBeFocused()
})
