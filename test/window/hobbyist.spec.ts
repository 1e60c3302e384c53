import type { Page } from '@playwright/test'
import { begin, limits, openMark, region } from './journey.ts'
import { expect, test } from './launch/open.ts'

// A hobbyist's machine (demo) by what its builder knows. The script does only what a person could see: it presses keys that
// the menu names, types into fields by their names, and reads the screen. Every such act is counted.

/** Presses, choices and fields typed into. */
const actions = { count: 0 }

async function typeInto(page: Page, name: string, text: string): Promise<void> {
  actions.count += 1
  await page.getByRole('textbox', { name, exact: true }).fill(text)
}

test('a newcomer enters a machine in at most fifteen actions and has the answer on one screen', async ({
  open,
}) => {
  actions.count = 0
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+n')
  actions.count += 1

  const form = region(page, 'Guided start')
  await expect(form).toBeVisible()
  // Nothing is entered yet: nothing on the right accuses anybody of it, and the drawing is faint.
  await expect(limits(page).getByTestId('soft-limits')).toContainText('rest on assumed numbers')
  await expect(page.locator('.faint')).not.toHaveCount(0)

  await typeInto(page, 'Motor: Kv', '2650')
  await typeInto(page, 'Pack: cells in series', '5')
  await typeInto(page, 'First reduction', '12/58')
  await typeInto(page, 'Then, if any', '16/36')
  await typeInto(page, 'Sprocket: teeth', '10')
  await typeInto(page, 'Track: pitch', '16')
  await typeInto(page, 'Machine, all-up', '6.2')

  const answer = region(page, 'What it will do')
  const headline = answer.locator('p').first()
  // Ratio 12/58 · 16/36, 10 teeth of 16 mm: 0.147 m of track for ten turns (by hand: 160 mm · 12/58 · 16/36 = 14.71 mm a turn).
  // Five cells: 18.5 V nominal to 21 V full, 49,000 to 55,650 rpm unloaded at 20 °C: 43.3 to 49.1 km/h less slip.
  const speed = Number(/[\d.]+/.exec(await headline.innerText())?.[0])
  expect(speed).toBeGreaterThan(38)
  expect(speed).toBeLessThan(49.2)
  // Whether it over-revs unloaded, hot and cold, and by whose number.
  await expect(answer.getByText(/With the track off the ground/)).toContainText(/rpm that are assumed/)
  await typeInto(page, 'Highest rpm allowed', '50000')
  const warning = answer.getByText(/With the track off the ground/)
  await expect(warning).toContainText('50,000 rpm that its maker allows')
  // Unloaded, full and cold it turns with Kv times volts, 55,650, less what the free-run current drops.
  await expect(warning).toContainText(/cold \(20.°C\) 5[45],\d00/)
  await expect(warning).toContainText(/A throttle cap of (8\d|9[0-5])\.?\d*.% keeps it within/)
  // What holds the answer back, and what it rests on.
  await expect(headline).toContainText('limited by')
  await expect(answer.getByTestId('state-line')).toContainText('short grass, level, assumed')
  await expect(answer.getByTestId('state-line')).toContainText('air drag by an assumed frontal area')
  await expect(answer.getByTestId('rests-on')).toContainText(/Rests on \d+ assumed numbers/)
  await expect(limits(page).getByTestId('waiting')).toContainText(/\d+ limits wait for an entry/)

  // The drawing says the same speed, as roughly.
  await expect(page.locator('[data-part="ground"] text').first()).toHaveText(
    new RegExp(`^${/[\d.]+/.exec(await headline.innerText())?.[0] ?? 'none'}(?![\\d.])`),
  )

  // All of it on one screen: nothing has to be scrolled to.
  for (const size of [
    { width: 1280, height: 775 }, // a window of 1280 × 800 less its menu
    { width: 1024, height: 700 },
    { width: 1920, height: 1080 },
  ]) {
    await page.setViewportSize(size)
    for (const part of [headline, warning, answer.getByTestId('rests-on'), form])
      await expect(part, `at ${size.width}`).toBeInViewport({ ratio: 1 })
  }
  // A window that is high enough shows why as well.
  await expect(answer.getByRole('application', { name: /^Thrust and resistance/ })).toBeInViewport({
    ratio: 1,
  })
  await answer.getByRole('button', { name: 'Use as the throttle cap' }).click()
  actions.count += 1
  await expect(answer.getByTestId('state-line')).toContainText('throttle at most')
  expect(actions.count).toBeLessThanOrEqual(15)
})

test('what is left open is estimated anew, what was typed stays, and emptied it is open again', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+n')
  const weight = page.getByRole('textbox', { name: 'Its weight, or 36 x 50' })
  await expect(weight).toHaveValue('')
  await expect(weight).toHaveAttribute('placeholder', '0.3')
  await page.getByRole('textbox', { name: 'Machine, all-up' }).fill('12')
  await expect(weight).toHaveAttribute('placeholder', '0.6')
  await weight.fill('36 x 50')
  await weight.press('Enter')
  await expect(weight).toHaveValue('0.19')
  await page.getByRole('textbox', { name: 'Machine, all-up' }).fill('14')
  await expect(weight).toHaveValue('0.19')
  await weight.fill('')
  await weight.press('Tab')
  await expect(weight).toHaveAttribute('placeholder', '0.7')

  // In the ordinary fields the estimate says what it is made of, and a typed number loses the mark.
  await page.getByRole('button', { name: 'All fields and questions' }).click()
  await page.getByRole('combobox', { name: 'Part' }).selectOption('motor')
  const resistance = page.locator('[data-entry="motor.resistanceMilliohm"]')
  await expect(resistance).toHaveClass(/assumed/)
  await resistance.focus()
  await expect(page.getByRole('complementary', { name: 'About this entry' })).toContainText(
    'Assumed from the speed constant and mass of the motor; may be off by a factor of 2',
  )
  await resistance.fill('9')
  await openMark(page, 'Winding resistance')
  await expect(page.getByRole('combobox', { name: 'Where Winding resistance comes from' })).toHaveValue('')
})

test('where the numbers come from is asked once for all of them', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+n')
  const ask = page.getByRole('group', { name: 'Where these numbers come from' })
  await expect(ask).toHaveCount(0)
  for (const [name, text] of [
    ['Motor: Kv', '2650'],
    ['Pack: cells in series', '5'],
    ['Capacity', '5000'],
    ['Track: pitch', '16'],
  ] as const)
    await page.getByRole('textbox', { name }).fill(text)
  await ask.getByRole('button', { name: 'from labels' }).click()
  await expect(ask).toHaveCount(0)
  await page.getByRole('button', { name: 'All fields and questions' }).click()
  await page.getByRole('combobox', { name: 'Part' }).selectOption('motor')
  await openMark(page, 'Speed constant Kv')
  const origin = page.getByRole('combobox', { name: 'Where Speed constant Kv comes from' })
  await expect(origin).toHaveValue('stated')
  await page.keyboard.press('Control+z')
  await expect(origin).toHaveValue('')
})
