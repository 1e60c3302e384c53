import { answer, begin, question, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

test('what to order stands beside the reduction, and where the motor is at its best under the curves', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  await showPart(page, 'stage.2')
  // 24 and 64 teeth of 12.7 mm, 240 mm apart: 2 · 240/12.7 + 44 + (40/2π)² · 12.7/240 = 83.9, so 84 teeth.
  await expect(page.getByTestId('order')).toContainText('84 teeth')
  await question(page, 'How fast').click()
  await expect(answer(page).getByTestId('best-points')).toHaveText(
    /most shaft power [\d.,]+\sk?W at [\d,]+\srpm, best efficiency [\d.]+\s% at [\d,]+\srpm/,
  )
})
