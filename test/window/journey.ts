import type { ElectronApplication, Locator, Page } from '@playwright/test'

/** Words that a person reads on the page, as what they point at. */
export const region = (page: Page, name: string): Locator => page.getByRole('region', { name })
export const limits = (page: Page): Locator => region(page, 'Limits')
export const limit = (page: Page, name: string | RegExp): Locator =>
  limits(page).getByRole('button', { name })
/** All of them, in their order. */
export const questions = [
  'How fast',
  'Which gears',
  'Will it hold',
  'How hot, how long',
  'What happened',
  'Side by side',
] as const
export const question = (page: Page, name: string): Locator => page.getByRole('tab', { name })
export const answer = (page: Page): Locator => page.getByRole('tabpanel')
export const entry = (page: Page, path: string): Locator => page.locator(`[data-entry="${path}"]`)
export const savedWords = (page: Page): Locator => page.getByTestId('saved')

/**
 * A button by what stands on it, for the steps that nearly every test takes: to find one by its role and name, names are
 * worked out for all buttons of the page, which takes ten times as long. Roles and names are what other lines ask for.
 */
const buttonSaying = (page: Page, words: string | RegExp): Locator =>
  page.locator('button', { hasText: words })

/** Reads the first-run card and puts it away. */
export async function begin(page: Page): Promise<void> {
  await buttonSaying(page, 'Got it').click()
}

/** Shows a part's fields by the list of parts, which is there at every size. */
export async function showPart(page: Page, part: string): Promise<void> {
  const all = buttonSaying(page, 'All fields and questions')
  if (await all.isVisible()) await all.click()
  const parts = page.locator('select[aria-label="Part"]')
  const fields = buttonSaying(page, /^\s*Fields\s*$/)
  // Right after the start neither may be there yet.
  await parts.or(fields).filter({ visible: true }).first().waitFor()
  if (!(await parts.isVisible())) await fields.click()
  await parts.selectOption(part)
}

/** Opens what stands behind an entry's mark: where it comes from, and its other forms. */
export async function openMark(page: Page, label: string): Promise<void> {
  await page.getByRole('button', { name: `${label}: where it comes from` }).click()
}

/** Answers the system's dialog of the desktop window with a file. */
export async function willSaveAs(electron: ElectronApplication, file: string): Promise<void> {
  await electron.evaluate(({ dialog }, filePath) => {
    dialog.showSaveDialog = () => Promise.resolve({ canceled: false, filePath })
  }, file)
}

/** Rows of the table of candidates. */
export const candidatesIn = (page: Page): Locator => answer(page).locator('[data-candidate]')

/** Lets go of a file over the page, as the browser tells it. */
export async function drop(page: Page, text: string, name: string): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ({ text, name }) => {
      const data = new DataTransfer()
      data.items.add(new File([text], name, { type: 'application/json' }))
      return data
    },
    { text, name },
  )
  await page.dispatchEvent('body', 'drop', { dataTransfer })
  await dataTransfer.dispose()
}

/** Limits of ordinary use that are over, as the ledger shows them. */
export function overInUse(page: Page): Promise<number> {
  return limits(page)
    .locator('li')
    .evaluateAll((rows) => {
      let group = ''
      return rows.filter((row) => {
        group = row.querySelector('h3')?.textContent ?? group
        return group.startsWith('Holds') && /% over/.test(row.textContent ?? '')
      }).length
    })
}
