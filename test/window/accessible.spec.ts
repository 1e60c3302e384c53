import { expectAccessible, troublesOf } from './axe.ts'
import { begin, limit, limits, question, region, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('every view is free of what axe finds, its colours in the light and in the dark', async ({
  open,
  shownIn,
}) => {
  test.skip(shownIn === 'window', 'the same page: axe has read it in Chromium, and takes half a minute')
  const { page } = await open()
  // What a first start has more than any other.
  await test.step('the start', () => expectAccessible(page, '.messages'))
  await begin(page)
  await test.step('the whole window', () => expectAccessible(page))
  // What stands round the answer is the same for each question; the first was read with the whole window.
  for (const name of ['Which gears', 'Will it hold', 'How hot, how long', 'What happened', 'Side by side']) {
    await question(page, name).click()
    await test.step(name, () => expectAccessible(page, '#answer'))
  }
  await question(page, 'How fast').click()
  await limits(page).getByRole('button').first().click()
  await expect(page.getByRole('button', { name: 'Copy the full value' })).toBeVisible()
  await test.step('a working', () => expectAccessible(page, 'dialog, #answer'))
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Shortcuts' }).click()
  await test.step('the shortcuts', () => expectAccessible(page, 'dialog'))
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Build', exact: true }).click()
  await test.step('the menu', () => expectAccessible(page, 'header'))
})

test('the guided start is free of what axe finds at each of its steps, its colours in the light and in the dark', async ({
  open,
  shownIn,
}) => {
  test.skip(shownIn === 'window', 'the same page: axe reads it in Chromium')
  const { page } = await open()
  await page.setViewportSize({ width: 1280, height: 1000 }) // high enough for the plot under the answer
  await begin(page)
  await page.keyboard.press('Alt+n')
  const form = region(page, 'Guided start')
  const type = (name: string, text: string) => form.getByRole('textbox', { name, exact: true }).fill(text)
  await expect(page.getByRole('application', { name: /^Thrust and resistance/ })).toBeVisible()
  await test.step('all assumed', () => expectAccessible(page, '.start, .limits'))
  await form.getByRole('combobox', { name: 'What it is' }).selectOption({ index: 2 })
  await type('Motor: Kv', '2650')
  await type('First reduction', '12/')
  await type('Pack: cells in series', '99')
  await expect(form.getByText(/^Allowed|^Teeth as driver/)).toHaveCount(2)
  await test.step('two that cannot be taken', () => expectAccessible(page, '.start'))
  await type('First reduction', '12/58')
  await type('Then, if any', '16/36')
  await type('Pack: cells in series', '5')
  await type('Sprocket: teeth', '10')
  await type('Track: pitch', '16')
  await type('Machine, all-up', '6.2')
  await type('Highest rpm allowed', '50000')
  await expect(page.getByRole('group', { name: 'Where these numbers come from' })).toBeVisible()
  await test.step('entered, and asked where from', () => expectAccessible(page, '.start'))
})

test('the fields of every part are free of what axe finds, a wrong entry among them', async ({
  open,
  shownIn,
}) => {
  test.skip(shownIn === 'window', 'the same page: axe has read it in Chromium, and takes a minute')
  const { page } = await open()
  await begin(page)
  const parts = page.getByRole('combobox', { name: 'Part' })
  for (const option of await parts.getByRole('option').all()) {
    const part = (await option.getAttribute('value')) ?? ''
    await showPart(page, part)
    const number = page.locator('[data-entry][inputmode]').first()
    if (await number.isVisible()) await number.fill('abc')
    expect(await troublesOf(page, '.fields'), part).toEqual([])
    if (await number.isVisible()) await number.press('Escape')
  }
})

test('the main task is done with the keyboard alone', async ({ open }) => {
  const { page } = await open()
  const press = async (...keys: string[]) => {
    for (const key of keys) await page.keyboard.press(key)
  }
  await page.getByRole('button', { name: 'Got it' }).focus()
  await press('Enter')
  // To the drawing, along it to the track, and into its fields.
  await page.locator('[data-part="pack"]').focus()
  for (let step = 0; step < 9; step += 1) {
    if ((await page.locator(':focus').getAttribute('data-part')) === 'track') break
    await press('ArrowRight')
  }
  await press('Enter')
  await expect(page.getByRole('combobox', { name: 'Part' })).toHaveValue('track')
  await press('F6')
  await expect(page.getByRole('combobox', { name: 'Part' })).toBeFocused()
  await press('Tab')
  const teeth = page.locator('[data-entry="track.sprocketTeeth"]')
  await expect(teeth).toBeFocused()
  const before = await teeth.inputValue()
  await press('ArrowDown', 'Enter')
  await expect(teeth).toHaveValue(String(Number(before) - 1))
  await expect(teeth).toBeInViewport()
  await press('Alt+3')
  await expect(question(page, 'Will it hold')).toHaveAttribute('aria-selected', 'true')
  await press('F6', 'ArrowRight')
  await expect(question(page, 'How hot, how long')).toBeFocused()
  // A limit, its working, and back to where it was opened from.
  await limit(page, /Motor rpm, running free/).focus()
  await press('Enter')
  await expect(page.getByRole('heading', { name: 'Motor rpm, running free at full charge' })).toBeFocused()
  await press('Escape')
  await expect(limit(page, /Motor rpm, running free/)).toBeFocused()
  await press('Control+z')
  await expect(teeth).toHaveValue(before)
  await press('F1')
  await expect(page.getByRole('dialog', { name: 'Shortcuts' })).toBeVisible()
  await press('Escape')
  await expect(limit(page, /Motor rpm, running free/)).toBeFocused()
})

for (const [width, height, scale] of [
  [1024, 640, 1],
  [640, 400, 2],
] as const) {
  test(`nothing is lost at ${width} × ${height}${scale === 2 ? ', 1280 × 800 zoomed to 200 %' : ''}`, async ({
    open,
    shownIn,
  }) => {
    test.skip(shownIn === 'window', 'the size of a page is set in a browser')
    const { page } = await open()
    await page.setViewportSize({ width, height })
    await begin(page)
    const spill = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    )
    expect(spill).toBeLessThanOrEqual(0)
    await showPart(page, 'motor')
    await page.locator('[data-entry="motor.kvRpmPerVolt"]').fill('800')
    await page
      .getByRole('region', { name: 'Fields of a part' })
      .getByRole('button', { name: 'Close' })
      .click()
    await question(page, 'Will it hold').click()
    await expect(limits(page).getByRole('button').first()).toBeVisible()
  })
}
