import type { Page } from '@playwright/test'
import { answer, begin, entry, limit, openMark, question, questions, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** All that may scroll: the document only where the page is one column. */
const scrollers =
  '.answer, .limits, .working, .fields .scroll, .help, .power-path, .messages ul, dialog, textarea, input, .scroll, .tex, .katex-display'

/** Boxes that hold more than they show and could be scrolled to it, without being among those that are to. */
function othersThatScroll(page: Page): Promise<string[]> {
  return page.evaluate((named) => {
    const longer = (box: Element) =>
      box.scrollHeight > box.clientHeight + 1 || box.scrollWidth > box.clientWidth + 1
    return [...document.querySelectorAll('html, body, #app, #app > *, .page, .page > *, main > *')]
      .filter((box) => longer(box) && !box.matches(named))
      .filter((box) => ['auto', 'scroll', 'hidden', 'visible'].includes(getComputedStyle(box).overflowY))
      .filter((box) => box.matches('html, body') || getComputedStyle(box).overflowY !== 'visible')
      .map((box) => `${box.tagName}.${box.className}: ${box.scrollHeight} in ${box.clientHeight}`)
  }, scrollers)
}

/** Boxes within the answer that would take the wheel from it: what scrolls stands in what scrolls. */
const wheelCatchers = (page: Page): Promise<string[]> =>
  answer(page)
    .locator('*')
    .evaluateAll((all) =>
      all
        .filter((box) => box.scrollHeight > box.clientHeight + 1 && !box.matches('textarea, select'))
        .filter((box) => ['auto', 'scroll'].includes(getComputedStyle(box).overflowY))
        .map((box) => `${box.tagName}.${box.className}: ${box.scrollHeight} in ${box.clientHeight}`),
    )

/** Jumps to everything on the page in turn, as the focus and links do; answers where the title is then. */
function titleAfterJumps(page: Page): Promise<number> {
  return page.evaluate(() => {
    for (const one of document.querySelectorAll('#app *')) one.scrollIntoView({ block: 'start' })
    return document.querySelector('[data-region="title"]')?.getBoundingClientRect().top ?? NaN
  })
}

for (const size of [
  { width: 1280, height: 775 },
  { width: 1024, height: 640 },
]) {
  test(`nothing scrolls but what is to, at ${size.width} × ${size.height}`, async ({ open }) => {
    const { page } = await open()
    await page.setViewportSize(size)
    await begin(page)
    const all = page.getByRole('button', { name: /^All \d+ limits/ })
    if (await all.isVisible()) await all.click()
    await limit(page, /Drive tooth shear, once/).click()
    await expect(page.locator('.working .katex').first()).toBeVisible()
    for (const name of questions) {
      await question(page, name).click()
      if (name === 'What happened') await page.getByRole('button', { name: 'Look at the demo log' }).click()
      await expect(answer(page).locator('p').first()).toContainText(/\d/)
      // With the table of every plot open.
      await answer(page)
        .getByRole('toolbar')
        .evaluateAll((bars) => bars.forEach((bar) => bar.querySelector('button')?.click()))
      expect(await othersThatScroll(page), name).toEqual([])
      expect(await wheelCatchers(page), name).toEqual([])
    }
    expect(await titleAfterJumps(page)).toBe(0)
    // However long its name is, whether a build is saved is told whole, and no command leaves the window.
    const title = page.locator('[data-region="title"]')
    await title
      .locator('h1')
      .evaluate((one) => (one.textContent = 'A long name of a build that goes on. '.repeat(4)))
    const cut = await title
      .locator('[data-testid=saved], nav button')
      .evaluateAll((all) =>
        all
          .filter(
            (one) => one.scrollWidth > one.clientWidth + 1 || one.getBoundingClientRect().right > innerWidth,
          )
          .map((one) => one.textContent),
      )
    expect(cut).toEqual([])
    await page.mouse.move(size.width / 2, 20)
    await page.mouse.wheel(0, 600)
    await expect(page.locator('[data-region="title"]')).toBeInViewport({ ratio: 1 })
    expect(await page.evaluate(() => document.scrollingElement?.scrollTop)).toBe(0)
  })
}

/** Whether what has the focus is an entry whose whole field stands within the fields, on the screen. */
async function expectFieldInSight(page: Page): Promise<void> {
  await expect(page.locator('[data-entry]:focus')).toHaveCount(1)
  const hidden = await page.locator('[data-entry]:focus').evaluate((input) => {
    const field = (input.closest('[data-field]') ?? input).getBoundingClientRect()
    const room = (input.closest('.scroll') ?? document.body).getBoundingClientRect()
    const [top, bottom] = [Math.max(0, room.top), Math.min(window.innerHeight, room.bottom)]
    return field.top >= top - 1 && field.bottom <= bottom + 1
      ? ''
      : `${field.top}–${field.bottom} of ${top}–${bottom}`
  })
  expect(hidden).toBe('')
}

test('a symbol that is an entry leads to its field, whatever part is shown', async ({ open }) => {
  const { page } = await open()
  await page.setViewportSize({ width: 1280, height: 775 })
  await begin(page)
  await limit(page, /Drive tooth shear, once/).click()
  const links = page.locator('.working').getByRole('button', { name: /go to its field/ })
  await expect(links.first()).toBeVisible()
  const names = await links.allTextContents()
  expect(names).toContainEqual(expect.stringContaining('Strength that is left'))
  for (const [place] of names.entries()) {
    await showPart(page, 'pack')
    await links.nth(place).click()
    await expectFieldInSight(page)
  }
})

test('an entry that is found by its name is in view with the cursor in it', async ({ open }) => {
  const { page } = await open()
  await page.setViewportSize({ width: 1280, height: 775 })
  await begin(page)
  await page.keyboard.press('Control+f')
  await page.keyboard.type('strength that')
  await page.keyboard.press('Enter')
  await expect(page.locator('[data-entry]:focus')).toHaveCount(1)
  await expectFieldInSight(page)

  // So is one whose text was not taken, by the message, and one that is undone.
  const far = entry(page, 'track.knockdownPercent')
  await far.fill('12 V')
  await showPart(page, 'pack')
  await page.getByRole('alert').getByRole('button', { name: 'Go to Strength that is left' }).click()
  await expect(far).toBeFocused()
  await expectFieldInSight(page)
  await far.fill('39')
  await far.press('Enter')
  await showPart(page, 'pack')
  await page.keyboard.press('Control+z')
  await expect(far).toBeInViewport({ ratio: 1 })
})

test('zoomed to twice the size, a limit that is chosen opens its working in view', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await page.setViewportSize({ width: 640, height: 400 })
  // Layouts that answer each other are an error to the page, which would say that something went wrong.
  await expect(page.locator('.power-path .turn')).toHaveCSS('position', 'static')
  await expect(page.getByRole('alert').filter({ hasText: /\S/ })).toHaveCount(0)
  await page.getByRole('button', { name: /^All \d+ limits/ }).click()
  await limit(page, /Drive tooth shear, once/).click()
  const heading = page.locator('#working-title')
  await expect(heading).toBeFocused()
  await expect(page.locator('.working .katex').first()).toBeVisible()
  await expect(heading).toBeInViewport({ ratio: 1 })
})

test('no number is cut off in its field', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  for (const size of [
    { width: 1280, height: 800 },
    { width: 1024, height: 768 },
  ]) {
    await page.setViewportSize(size)
    if (size.width === 1024) {
      // What stands in for a number is slanted, and leans out of its box: a field cuts what does, unseen by any width.
      await page.keyboard.press('Alt+n')
      await page.getByRole('button', { name: 'All fields and questions' }).click()
    }
    for (const part of ['pack', 'controller', 'motor', 'track', 'vehicle', 'ground', 'service']) {
      await showPart(page, part)
      const cut = await page.locator('[data-region="fields"] input[data-entry]').evaluateAll((inputs) =>
        (inputs as HTMLInputElement[])
          .filter((input) => {
            const told = getComputedStyle(input, input.value === '' ? '::placeholder' : null)
            const leans = told.fontStyle === 'italic' && Number.parseFloat(told.paddingRight) < 2
            return (
              input.scrollWidth > input.clientWidth ||
              leans ||
              (told.fontStyle === 'italic' && input.value !== '')
            )
          })
          .map((input) => `${input.dataset['entry'] ?? ''}: ${input.value || input.placeholder}`),
      )
      expect(cut, part).toEqual([])
    }
  }
})

test('what a person enters is not called a guess any more', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+n')
  await showPart(page, 'motor')
  await openMark(page, 'Speed constant Kv')
  const origin = page.getByRole('combobox', { name: 'Where Speed constant Kv comes from' })
  await expect(origin).toHaveValue('assumed')
  await entry(page, 'motor.kvRpmPerVolt').fill('900')
  await expect(origin).toHaveValue('')
  await page.keyboard.press('Control+z')
  await expect(origin).toHaveValue('assumed')
})

test('a limit that rests on a number nobody entered is not told as the maker’s', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+n')
  await page.getByRole('textbox', { name: 'First reduction', exact: true }).fill('12/58')
  await page.getByRole('textbox', { name: 'Then, if any', exact: true }).fill('16/36')
  await showPart(page, 'motor')
  await entry(page, 'motor.kvRpmPerVolt').fill('4000')
  const warning = answer(page).getByText(/With the track off the ground/)
  await expect(warning).toContainText('rpm that are assumed')
  // So are those that other questions tell: in another ink, each with the entry that decides it.
  await question(page, 'Will it hold').click()
  await expect(answer(page).getByTestId('hold-rests')).toContainText('It stands so by an assumed')
  const accused = answer(page).locator('tr', { has: page.locator('.standing.over') })
  await expect(accused.first()).toContainText('by an assumed')
  for (const name of ['Will it hold', 'How hot, how long', 'Side by side']) {
    await question(page, name).click()
    await expect(answer(page).locator('.standing.over').first()).toBeVisible()
    await expect(answer(page).locator('.standing.over:not(.soft)'), name).toHaveCount(0)
  }
  await question(page, 'How fast').click()
  await entry(page, 'motor.ratedMaxRpm').fill('40000')
  await expect(warning).toContainText('40,000 rpm that its maker allows')
})
