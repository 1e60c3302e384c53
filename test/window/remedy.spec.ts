import type { Page } from '@playwright/test'
import { answer, begin, entry, limit, question, region, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

const block = (page: Page) => region(page, 'What would hold')
const change = (page: Page, path: string) => page.locator(`[data-remedy="${path}"]`)

async function openHold(page: Page): Promise<void> {
  await begin(page)
  await question(page, 'Will it hold').click()
  await expect(page.locator('[data-remedy]').first()).toBeVisible({ timeout: 20_000 })
  // What breaks first in ordinary use; the worst of all wears out.
  await block(page)
    .getByLabel(/^Bring to 20/)
    .selectOption({ label: 'Gear tooth root, once, stage 1, over' })
  await expect(change(page, 'stages.0.faceWidthMm')).toBeVisible({ timeout: 20_000 })
}

test('the least change is taken into the build and undone by name', async ({ open }) => {
  const { page } = await open()
  await openHold(page)
  await expect(block(page).locator('p').first()).toContainText(/1\.25.mm.*in place of 1.mm, Module/)
  const width = change(page, 'stages.0.faceWidthMm')
  await expect(width).toContainText(/12.mm → 19.mm/)
  await expect(limit(page, /^Gear tooth root, once, stage 1/)).toContainText(/24.% over/)
  await width.getByRole('button', { name: /^Take Face width/ }).click()
  await expect(limit(page, /^Gear tooth root, once, stage 1/)).toContainText(/22.% in hand/)
  await showPart(page, 'stage.1')
  await expect(entry(page, 'stages.0.faceWidthMm')).toHaveValue('19')
  const undo = page.getByRole('button', { name: 'Undo' })
  await undo.hover()
  await expect(page.getByRole('tooltip')).toContainText(/change Reduction 1: Face width to 19/)
  await undo.click()
  await expect(entry(page, 'stages.0.faceWidthMm')).toHaveValue('12')
  await expect(limit(page, /^Gear tooth root, once, stage 1/)).toContainText(/24.% over/)
})

test('another limit is asked for; what cannot be reached says how far it comes, what breaks is named', async ({
  open,
}) => {
  const { page } = await open()
  await openHold(page)
  await expect(block(page)).toContainText('Cannot be reached by one of these alone')
  const driven = change(page, 'stages.0.drivenTeeth')
  await expect(driven).toContainText(/% over/)
  await expect(page.locator('[data-effects="stages.0.drivenTeeth"]')).toContainText('Drive tooth shear, once')
  const asked = block(page).getByLabel(/^Bring to 20/)
  await asked.selectOption({ label: 'Motor rpm, running free at full charge, over' })
  await expect(block(page).locator('p').first()).toContainText(
    /brings Motor rpm, running free at full charge to 2\d.% in hand/,
    {
      timeout: 20_000,
    },
  )
  await asked.selectOption({ label: 'Loop tension, once' })
  await expect(block(page)).toContainText(/Nothing to change: Loop tension, once has 8\d.% in hand/, {
    timeout: 20_000,
  })
})

test('changes of before an edit are not to be taken until they are looked for again', async ({ open }) => {
  const { page } = await open()
  await openHold(page)
  await showPart(page, 'controller')
  await entry(page, 'controller.currentLimitAmps').fill('150')
  await expect(block(page)).toContainText('From before the change.')
  await expect(page.locator('[data-remedy]').first().getByRole('button')).toBeDisabled()
  await expect(page.locator('[data-remedy]').first().getByRole('button')).toBeEnabled({ timeout: 20_000 })
  await expect(change(page, 'controller.currentLimitAmps')).toContainText(/150.A →/)
})

test('a block folds to its answer and is found so again', async ({ open }) => {
  const { page } = await open()
  await openHold(page)
  const heading = block(page).getByRole('button', { name: 'What would hold' })
  await heading.focus()
  await page.keyboard.press('Enter')
  await expect(heading).toHaveAttribute('aria-expanded', 'false')
  await expect(page.locator('[data-remedy]')).toHaveCount(0)
  await expect(block(page).locator('p').first()).toContainText('Module')
  await question(page, 'How fast').click()
  await question(page, 'Will it hold').click()
  await expect(answer(page).getByRole('button', { name: 'What would hold' })).toHaveAttribute(
    'aria-expanded',
    'false',
  )
})
