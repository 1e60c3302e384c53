import { expectAccessible } from './axe.ts'
import { answer, begin, entry, question, region, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('a snapshot beside the changed build: what differs, by how much, and taken back in', async ({
  open,
  shownIn,
}) => {
  const { page } = await open()
  await begin(page)
  await page.keyboard.press('Alt+k')
  await question(page, 'Side by side').click()
  await expect(answer(page)).toContainText('Stoat, the quick sled puller, snapshot 1')
  await expect(region(page, 'Entries that differ')).toContainText('Every entry is the same.')
  await showPart(page, 'track')
  await entry(page, 'track.sprocketTeeth').fill('12')
  await expect(answer(page).locator('p').first()).toContainText('1 entry differs among 2 builds')
  await expect(region(page, 'Entries that differ').getByRole('row')).toHaveText([
    /Entry/,
    /drive sprocket.*12.*14/s,
  ])
  const speed = region(page, 'Figures of the builds').getByRole('row', { name: /^Top speed/ })
  await expect(speed).toContainText(/\+[\d.]+.km\/h, \+[\d.]+.%/)
  await answer(page).getByLabel('Put a demo build beside it').selectOption({ index: 2 })
  // Full, the button meant first looks like any that cannot be pressed, under the pointer too.
  const keep = answer(page).getByRole('button', { name: 'Keep a snapshot' })
  await keep.click()
  await expect(keep).toBeDisabled()
  await keep.hover({ force: true })
  const [first, other] = await answer(page)
    .locator('.bar .action')
    .evaluateAll((all) =>
      all.map((one) => `${getComputedStyle(one).color} on ${getComputedStyle(one).backgroundColor}`),
    )
  expect(first).toBe(other)
  await answer(page)
    .getByRole('button', { name: /^Undo: / })
    .click()
  await expect(keep).toBeEnabled()
  await expect(
    answer(page).getByRole('application', { name: 'Thrust against speed, each build' }),
  ).toBeVisible()
  if (shownIn === 'browser') await expectAccessible(page)
  await answer(page)
    .getByRole('button', { name: /^Take Stoat/ })
    .click()
  await expect(entry(page, 'track.sprocketTeeth')).toHaveValue('14')
  await page.keyboard.press('Control+z')
  await expect(entry(page, 'track.sprocketTeeth')).toHaveValue('12')
  await answer(page)
    .getByRole('button', { name: /^Undo: / })
    .click()
  await answer(page)
    .getByRole('button', { name: /^Undo: / })
    .click()
  await expect(answer(page).locator('p').first()).toContainText('1 build')
})

test('the sprocket varied: a plot for each figure, limits crossed named with where, a wrong end told', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await question(page, 'Side by side').click()
  const plots = answer(page).getByRole('application')
  await expect(plots).toHaveCount(4)
  await expect(answer(page)).toContainText('Drive tooth shear, once is kept from 12')
  await page.locator('[data-sweep="from"]').fill('x')
  await expect(answer(page)).toContainText('From: ')
  await expect(plots).toHaveCount(0)
  await page.locator('[data-sweep="from"]').fill('8')
  await expect(plots).toHaveCount(4)
})
