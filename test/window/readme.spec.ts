import { readFileSync } from 'node:fs'
import type { Page } from '@playwright/test'
import { answer, begin, entry, limit, limits, question, region, showPart, willSaveAs } from './journey.ts'
import { expect, test } from './launch/open.ts'

// The README's first five minutes, step by step in the window. Its numbers are read from it, so that one edit renews both.

const text = readFileSync('README.md', 'utf8')
const minutes = text
  .slice(text.indexOf('## The first five minutes'), text.indexOf('The same from the command line'))
  .replace(/\s+/g, ' ')

/** What a step says at a place of its wording; a wording that is gone fails here. */
function said(pattern: RegExp): string {
  const found = pattern.exec(minutes)?.[1]
  if (found === undefined) throw new Error(`the README no longer says ${pattern.source}`)
  return found
}

/** Chooses the entry of a list whose words hold the given ones. */
async function chooseByWords(page: Page, path: string, words: string): Promise<void> {
  const list = page.locator(`select[data-entry="${path}"]`)
  const value = await list
    .locator('option')
    .filter({ hasText: words })
    .first()
    .evaluate((option: HTMLOptionElement) => option.value)
  await list.selectOption(value)
}

/** How the limits under a heading stand, in the words beside them. */
function standingsOf(page: Page, heading: string): Promise<string[]> {
  return limits(page)
    .locator('li')
    .evaluateAll((rows, wanted) => {
      let group = ''
      return rows.flatMap((row) => {
        group = row.querySelector('h3')?.textContent ?? group
        const standing = /(over|near|within)\s*$/.exec(row.querySelector('.head')?.textContent ?? '')?.[1]
        return group.startsWith(wanted) ? [standing ?? 'none'] : []
      })
    }, heading)
}

test('the README’s first five minutes are as it says', async ({ open, folder }) => {
  const opened = await open()
  const { page, electron } = opened
  await begin(page)

  // 1. Read the answer.
  await expect(page.locator('h1')).toContainText(said(/The window opens on \*(\w+)\*/))
  const speed = Number(said(/says (\d+) km\/h/))
  const headline = answer(page).locator('[data-working="topSpeedMps"] .value').first()
  expect(Math.round(Number(await headline.innerText()))).toBe(speed)
  const warning = answer(page).getByText(/With the track off the ground/)
  await expect(warning).toContainText(said(/the motor reaches ([\d,]+) rpm/))
  await expect(warning).toContainText(`${said(/past the ([\d,]+) that its maker allows/)} rpm`)
  expect(minutes).toContain('the limits stand in three groups')
  for (const group of ['Holds', 'Lasts', 'In a mishap'])
    expect((await standingsOf(page, group)).length, group).toBeGreaterThan(2)

  // 2. Ask why.
  const why = said(/Choose \*([^*]+)\* in the limits/)
  await limit(page, new RegExp(`^${why}`)).click()
  const working = page.locator('[data-region="working"]')
  await expect(working.getByRole('heading', { name: why })).toBeVisible()
  await expect(working.locator('.katex').first()).toBeAttached()
  await expect(working).toContainText(/Source/)
  await expect(answer(page).locator('.chosen').first()).toBeAttached()
  await working.getByRole('button', { name: 'Strength that is left' }).first().click()
  await expect(entry(page, 'track.knockdownPercent')).toBeFocused()
  await expect(entry(page, 'track.knockdownPercent')).toBeInViewport()
  await working.getByRole('button', { name: 'Close' }).click()

  // 3. Change something.
  await page
    .getByRole('button', { name: new RegExp(`^${said(/Choose \*(Reduction 1)\* in the drawing/)}:`) })
    .click()
  await chooseByWords(page, 'stages.0.drivenMaterial', said(/driven wheel (\S+) steel instead/))
  await expect(entry(page, 'stages.0.driverTeeth')).toHaveValue(said(/driver \d+ teeth instead of (\d+)/))
  await entry(page, 'stages.0.driverTeeth').fill(said(/driver (\d+) teeth instead/))
  await showPart(page, 'track')
  await expect(entry(page, 'track.sprocketTeeth')).toHaveValue(said(/sprocket \d+ teeth instead of (\d+)/))
  await entry(page, 'track.sprocketTeeth').fill(said(/sprocket (\d+) teeth/))
  await chooseByWords(page, 'track.tooth.material', said(/teeth of nylon \((\w+)\)/))
  await entry(page, 'track.tooth.widthMm').fill(said(/and (\d+ mm) wide/))
  await showPart(page, 'pack')
  await entry(page, 'pack.series').fill(said(/Choose the pack: (\d+) cells/))
  expect(minutes).toContain('Nothing breaks in ordinary use any more, and nothing wears out early')
  for (const group of ['Holds', 'Lasts']) {
    await expect.poll(() => standingsOf(page, group), group).not.toContain('over')
    expect((await standingsOf(page, group)).length, group).toBeGreaterThan(2)
  }
  await question(page, 'Will it hold').click()
  const jams = answer(page)
    .locator('[data-mishap]')
    .filter({ hasText: /\bjam\b/ })
  await expect(jams.filter({ hasText: /shear/i })).not.toHaveCount(0)
  await showPart(page, 'stage.2')
  await entry(page, 'stages.1.slipTorqueNm').fill(said(/torque limiter of ([\d.]+) N/))
  await expect(
    answer(page)
      .locator('[data-mishap]')
      .filter({ hasText: /shears|breaks the/ }),
  ).toHaveCount(0)
  await question(page, 'How fast').click()
  await expect(page.getByRole('button', { name: /^Undo: change Reduction 2/ })).toBeEnabled()

  // 4. Read a log's rpm.
  await answer(page).getByRole('textbox', { name: 'A log shows' }).fill('20000')
  await expect(
    answer(page)
      .getByText(/over the ground/)
      .first(),
  ).toContainText(/km\/h/)

  // 5. Let it look for you.
  for (const [name, words] of [
    ['Which gears', 'Search'],
    ['Will it hold', 'How sure each margin is'],
    ['How hot, how long', 'alarm'],
    ['Side by side', 'snapshot'],
  ] as const) {
    expect(minutes).toContain(`*${name}*`)
    await question(page, name).click()
    await expect(answer(page)).toContainText(new RegExp(words, 'i'))
  }

  // 6. Save it.
  if (electron === null) {
    const download = page.waitForEvent('download')
    await page.keyboard.press('Control+s')
    expect((await download).suggestedFilename()).toMatch(/\.build\.json$/)
  } else {
    await willSaveAs(electron, `${folder}/mine.build.json`)
    await page.keyboard.press('Control+s')
    await expect(page.getByTestId('saved')).toContainText('Saved in')
  }

  // 7. Enter your own.
  await page.getByRole('button', { name: 'Build', exact: true }).click()
  await page.getByRole('menuitem', { name: /New build/ }).click()
  const form = region(page, 'Guided start')
  expect(await form.locator('[data-start]').count()).toBeLessThanOrEqual(13)
  await expect(form).toContainText('assumed')
  const answered = region(page, 'What it will do')
  await expect(answered).toContainText('This holds for')
  await expect(answered).toContainText(/Rests on \d+ assumed numbers/)
})
