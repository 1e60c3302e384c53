import path from 'node:path'
import { hrtime } from 'node:process'
import type { Page } from 'playwright'
import { keptAs, runsOf } from './measure.ts'
import { opened, place, root, whereShown } from './opened.ts'

// A drive of ten minutes in the real window (or Chromium, said so): from a row as it is typed to the answer that follows, the
// pause in which further keys are waited for (150 ms) with it.

const file = path.join(root, 'examples', 'quick-sled-puller.build.json')
const changes = 12

async function rowsRedrawn(page: Page): Promise<number[]> {
  await page.getByRole('tab', { name: 'How hot, how long' }).click()
  const block = page.getByRole('region', { name: 'Over a drive' })
  await block.getByLabel('Drive', { exact: true }).selectOption('Hut round')
  const said = block.locator('p').first()
  await said.filter({ hasText: 'Hut round takes' }).waitFor({ timeout: 60_000 })
  await block.getByText('The pattern’s 8 rows').click()
  const field = page.locator('[data-column="seconds"]').nth(7)
  const times: number[] = []
  for (let run = 0; run < changes; run += 1) {
    const before = await said.innerText()
    const start = hrtime.bigint()
    await field.fill(`${50 + 10 * run} s`)
    await page.waitForFunction(
      (old) => {
        const now = document.querySelector<HTMLElement>('[data-drive="answer"]')?.closest('p')?.innerText
        return now !== undefined && now !== old
      },
      before,
      { polling: 'raf', timeout: 60_000 },
    )
    times.push(Number(hrtime.bigint() - start) / 1e6)
  }
  return times
}

async function measured(data: string): Promise<void> {
  const { page, close } = await opened(data, file)
  const times = await rowsRedrawn(page)
  const kept = keptAs(`A row of ten minutes’ drive to its answer, ${place}`, runsOf(times.slice(2)), 'ms', 0)
  console.log(`a row of a drive of ten minutes, typed, to its answer in the ${place}: ${kept}`)
  await close()
}

await whereShown(measured)
