import AxeBuilder from '@axe-core/playwright'
import { begin, entry } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('an entry, a limit and a figure are gone to by the first letters of their names', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const find = page.getByRole('dialog', { name: /^Find/ })
  const go = async (letters: string) => {
    await page.keyboard.press('Control+f')
    await expect(find.getByRole('combobox')).toBeFocused()
    await page.keyboard.type(letters)
  }
  await go('driven reduction 2')
  await expect(find.getByRole('option')).toHaveCount(
    await find.getByRole('option', { name: /Reduction 2/ }).count(),
  )
  const { violations } = await new AxeBuilder({ page }).include('dialog').setLegacyMode().analyze()
  expect(violations.map(({ id }) => id)).toEqual([])
  await page.keyboard.press('Enter')
  await expect(find).toHaveCount(0)
  await expect(entry(page, 'stages.1.drivenTeeth')).toBeFocused()
  await go('tooth shear')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Drive tooth shear, once' })).toBeFocused()
  await expect(page.locator('button[data-limit="track.tooth-shear"]')).toHaveAttribute('aria-pressed', 'true')
  await go('zebra')
  await expect(find).toContainText('Nothing of that name in this build.')
  await page.keyboard.press('Escape')
  await expect(find).toHaveCount(0)
})
