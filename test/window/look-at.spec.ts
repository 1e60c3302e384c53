import { answer, begin, limits, question, region, savedWords } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('a throttle that is looked at is followed by everything on the screen, says so, and changes nothing until it is taken', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  const throttle = page.getByRole('slider', { name: 'Throttle' })
  const headline = answer(page).locator('p').first()
  await expect(headline).toContainText('53.1')
  await expect(answer(page)).toContainText('Over-rev')
  await throttle.fill('50')

  // The drawing, the headline, the plot and the summary of screen readers say one speed, and no alarm of full throttle stays.
  const mark = page.getByTestId('looked-at')
  await expect(mark).toContainText(/At 50.% throttle.*cap of 100.%/)
  await expect(limits(page)).toContainText(/At 50.% throttle/)
  await expect(region(page, 'Power path')).toContainText(/At 50.% throttle/)
  await expect(answer(page).getByText('Over-rev', { exact: false })).toHaveCount(0)
  const speed = /[\d.]+/.exec(await headline.innerText())?.[0] ?? 'none'
  expect(Number(speed)).toBeLessThan(30)
  await expect(page.locator('[data-part="ground"] text').first()).toContainText(speed)
  await expect(page.getByRole('slider', { name: 'Speed' })).toHaveAttribute(
    'aria-valuetext',
    new RegExp(speed),
  )
  for (const name of ['Will it hold', 'How hot, how long', 'Which gears']) {
    await question(page, name).click()
    await expect(mark).toBeVisible()
  }
  await expect(savedWords(page)).not.toContainText('Not saved')

  await page.getByRole('button', { name: 'Back to 100' }).click()
  await question(page, 'How fast').click()
  await expect(mark).toHaveCount(0)
  await expect(headline).toContainText('53.1')

  // The cap that the warning names is one press away, and one undo.
  await answer(page).getByRole('button', { name: 'Use as the throttle cap' }).click()
  await expect(savedWords(page)).toContainText('Not saved')
  await expect(answer(page).getByText('With the track off the ground', { exact: false })).toContainText(
    'Near over-rev',
  )
  await page.keyboard.press('Control+z')
  await expect(headline).toContainText('53.1')
})

test('where a ground speed has two motor speeds, the page says why', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const note = page.getByTestId('slip-note')
  await expect(note).toHaveCount(0)
  await page.getByRole('slider', { name: 'Speed' }).fill('400')
  const motor =
    /[\d,]+/.exec((await page.locator('[data-part="motor"] text').first().textContent()) ?? '')?.[0] ?? 'none'
  await expect(note).toContainText('track slips')
  await expect(note).toContainText(motor)
})

test('the over-rev warning says both the hot and the cold speed', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const warning = answer(page).getByText('With the track off the ground', { exact: false })
  await expect(warning).toContainText(/hot \(120\s°C\) 32,900.rpm, cold \(20\s°C\) 29,[23]00.rpm/)
})
