import { readFile } from 'node:fs/promises'
import path from 'node:path'
import type { ElectronApplication, Page } from '@playwright/test'
import {
  check,
  readBuildText,
  withEntry,
  completeBuild,
  readStoredBuildText,
} from '../../shared-engine/index.ts'
import { worstRow } from '../../shared-engine/limits/worst.ts'
import { answer, begin, limits, overInUse, question, willSaveAs } from './journey.ts'
import { expect, test } from './launch/open.ts'

const search = (page: Page) => answer(page).getByRole('button', { name: 'Search', exact: true })
const candidates = (page: Page) => answer(page).locator('[data-candidate]')
const vary = (page: Page, entry: string) => page.locator(`[data-vary="${entry}"]`)
const part = (page: Page, name: string) => page.locator(`[data-part="${name}"]`)

/** A drawer of few parts, so that a search takes a moment: 3 × 3 × 5 × 2 = 90 combinations. */
const drawer = {
  'stages.0.driverTeeth': '20-24 step 2',
  'stages.1.driverTeeth': '20, 22..23',
  'track.sprocketTeeth': '14 to 18',
  'controller.throttleCapPercent': '60, 70',
}

async function openDrawer(page: Page, typed: Readonly<Record<string, string>> = drawer): Promise<void> {
  await begin(page)
  await question(page, 'Which gears').click()
  for (const [entry, values] of Object.entries(typed)) await vary(page, entry).fill(values)
}

async function searchIt(page: Page): Promise<void> {
  await search(page).click()
  await expect(answer(page).locator('p').first()).toContainText(/candidates hold/, { timeout: 30_000 })
  await expect(search(page)).toBeVisible()
}

/** Cells of a line, as RFC 4180 quotes them; none here has a quotation mark in it. */
const cellsOf = (line: string): string[] =>
  [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/g)].map(([, quoted, plain]) => quoted ?? plain ?? '')

/** The table that goes along as CSV, each row by its column names. */
async function tableOf(
  page: Page,
  electron: ElectronApplication | null,
  folder: string,
): Promise<readonly Readonly<Record<string, string>>[]> {
  const file = path.join(folder, 'gears.csv')
  const button = answer(page).getByRole('button', { name: 'Table as CSV' })
  if (electron === null) {
    const download = page.waitForEvent('download')
    await button.click()
    await (await download).saveAs(file)
  } else {
    await willSaveAs(electron, file)
    await button.click()
    await expect.poll(() => readFile(file, 'utf8').catch(() => '')).not.toBe('')
  }
  const [heading = '', ...lines] = (await readFile(file, 'utf8')).trim().split(/\r?\n/)
  const names = cellsOf(heading)
  return lines.map((line) => Object.fromEntries(cellsOf(line).map((cell, at) => [names[at] ?? '', cell])))
}

function stoat() {
  const text = readFile(new URL('../../examples/quick-sled-puller.build.json', import.meta.url), 'utf8')
  return text.then((read) => {
    const stored = readStoredBuildText(read)
    if (!stored.ok || !readBuildText(read).ok) throw new Error('the demo cannot be read')
    return stored.value
  })
}

test('ranges with steps and lists are typed as a builder writes them, and teeth owned go by their name', async ({
  open,
}) => {
  const { page } = await open()
  await openDrawer(page)
  await expect(answer(page).locator('p').first()).toContainText('90 combinations')
  await vary(page, 'stages.0.driverTeeth').fill('9-24')
  await expect(answer(page).locator('p').first()).toContainText('480 combinations') // 16 × 3 × 5 × 2
  await answer(page).getByText('Teeth I own').click()
  await answer(page)
    .getByLabel(/^Lists of teeth owned/)
    .fill('pinions: 12, 15, 18\nsprockets: 8..9')
  await vary(page, 'stages.0.driverTeeth').fill('pinions')
  await vary(page, 'track.sprocketTeeth').fill('sprockets')
  await expect(answer(page).locator('p').first()).toContainText('36 combinations') // 3 × 3 × 2 × 2
  await vary(page, 'track.sprocketTeeth').fill('24-9')
  await expect(vary(page, 'track.sprocketTeeth')).toHaveAttribute('aria-invalid', 'true')
  await expect(search(page)).toBeDisabled()
})

test('the table goes along as CSV, every figure as the check of that build gives it', async ({
  open,
  folder,
}) => {
  const { page, electron } = await open()
  await openDrawer(page)
  await searchIt(page)
  const rows = await tableOf(page, electron, folder)
  const all = answer(page).getByRole('button', { name: /^All \d+ rows$/ })
  if (await all.isVisible()) await all.click()
  expect(rows.length).toBe(await candidates(page).count())
  const stored = await stoat()
  for (const row of rows.slice(0, 3)) {
    const build = Object.keys(drawer).reduce(
      (built, entry) => withEntry(built, entry, Number(row[entry])),
      stored,
    )
    const { figures, limits: ledger } = check(completeBuild(build))
    // 1e-9 of the value: the search's contract; written with all its digits.
    for (const [name, value] of Object.entries(figures)) {
      if (value === null) expect(row[name], name).toBe('')
      else expect(Math.abs(Number(row[name]) - value), name).toBeLessThanOrEqual(1e-9 * Math.abs(value))
    }
    expect(Number(row['worstMargin'])).toBeCloseTo(worstRow(ledger)?.margin ?? NaN, 9)
  }
})

test('with 20 % in hand asked for, no row has less, and fewer hold than with nothing over', async ({
  open,
  folder,
}) => {
  const { page, electron } = await open()
  // Slow enough that some keep a fifth of every limit: the throttle low, the first wheels nearly alike.
  await openDrawer(page, {
    'stages.0.driverTeeth': '30-50 step 10',
    'stages.1.driverTeeth': '12, 16, 20',
    'track.sprocketTeeth': '14-18 step 2',
    'controller.throttleCapPercent': '15, 20',
  })
  await page.locator('[data-bound="0"]').fill('6 km/h')
  await searchIt(page)
  const holding = async () =>
    Number.parseInt((await answer(page).locator('p').first().textContent()) ?? '', 10)
  const nothingOver = await holding()
  await answer(page)
    .getByRole('button', { name: /^What is asked/ })
    .click()
  await answer(page).getByLabel('Every limit').selectOption('20 % in hand')
  await search(page).click()
  await expect(answer(page).getByRole('button', { name: /^What is asked/ })).toContainText('20 % in hand')
  await expect(search(page)).toBeVisible({ timeout: 30_000 })
  const line = answer(page).locator('p').first()
  await expect(line).toContainText(/hold/)
  const kept = /None/.test((await line.textContent()) ?? '') ? 0 : await holding()
  expect(kept).toBeLessThan(nothingOver)
  expect(kept).toBeGreaterThan(0)
  const rows = await tableOf(page, electron, folder)
  const stored = await stoat()
  for (const row of rows.slice(0, 5)) {
    const build = Object.keys(drawer).reduce(
      (built, entry) => withEntry(built, entry, Number(row[entry])),
      stored,
    )
    // What wears out is left open in a new search.
    const held = check(completeBuild(build)).limits.filter(({ group }) => group === 'holds')
    for (const { id, margin } of held) expect(margin, id).toBeGreaterThanOrEqual(0.2 - 1e-9)
  }
})

test('two aims: a table in which none beats another in both, and its line on the map', async ({
  open,
  folder,
}) => {
  const { page, electron } = await open()
  await openDrawer(page)
  await answer(page).getByRole('button', { name: 'Add a second aim' }).click()
  await searchIt(page)
  await expect(answer(page).locator('p').first()).toContainText(
    'cannot be bettered in one aim without loss in the other',
  )
  const rows = await tableOf(page, electron, folder)
  expect(rows.length).toBeGreaterThan(1)
  const found = rows.map((row) => ({ load: Number(row['toothForceN']), speed: Number(row['topSpeedMps']) }))
  // The front comes first, as many rows as it has points; what follows a short one are the next best.
  const points = Number(
    /([\d,]+) of them cannot/.exec(await answer(page).locator('p').first().innerText())?.[1],
  )
  expect(points).toBeGreaterThan(0)
  for (const one of found.slice(0, points))
    expect(
      found.filter(
        (other) =>
          other.load <= one.load &&
          other.speed >= one.speed &&
          (other.load < one.load || other.speed > one.speed),
      ),
    ).toEqual([])
  const map = answer(page).getByRole('application', { name: /of each candidate/ })
  await expect(map).toContainText('Best of both')
  await map.focus()
  await answer(page)
    .getByRole('button', { name: /^Table of .* of each candidate/ })
    .click()
  const data = page.getByRole('region', { name: /^Data: .* of each candidate/ })
  await expect(data.getByRole('columnheader', { name: /Best of both/ })).toBeVisible()
})

test('a row under the pointer is drawn in the whole window, and leaving it brings the build back', async ({
  open,
}) => {
  const { page } = await open()
  await openDrawer(page)
  const names = () =>
    Promise.all(
      ['stage.1', 'stage.2', 'track', 'controller'].map((name) =>
        part(page, name).getAttribute('aria-label'),
      ),
    )
  const before = { names: await names(), ledger: await limits(page).textContent() }
  await searchIt(page)
  await candidates(page).first().hover()
  await expect(page.getByTestId('preview')).toHaveText('Preview, not taken')
  const pinion = (await candidates(page).first().locator('td').nth(1).textContent())?.trim() ?? ''
  await expect(part(page, 'stage.1')).toHaveAttribute('aria-label', new RegExp(`${pinion} driving`))
  // On a display that is shared, another program's window may take the pointer away: it is put back.
  const underPointer = async () => {
    await candidates(page).first().hover()
    return { over: await overInUse(page), isOther: (await names()).join() !== before.names.join() }
  }
  await expect.poll(underPointer).toEqual({ over: 0, isOther: true })
  await page.locator('h1').hover()
  await expect(page.getByTestId('preview')).toHaveCount(0)
  await expect.poll(names).toEqual(before.names)
  expect(await limits(page).textContent()).toBe(before.ledger)
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
})
