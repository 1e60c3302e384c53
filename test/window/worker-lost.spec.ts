import { answer, begin, question } from './journey.ts'
import { expect, test } from './launch/open.ts'

declare global {
  interface Window {
    made: Worker[]
  }
}

test('workers that are ended in the middle of a search: it is said, and begun anew', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await question(page, 'Which gears').click()
  // The page makes its threads with the first search: from here on the test has hold of them.
  await page.evaluate(() => {
    const Own = window.Worker
    window.made = []
    window.Worker = class extends Own {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options)
        window.made.push(this)
      }
    }
  })
  for (const [at, path, values] of [
    [1, 'stages.0.drivenTeeth', '40..70'],
    [3, 'stages.1.drivenTeeth', '40..90'],
  ] as const) {
    await answer(page).getByRole('checkbox').nth(at).check()
    await page.locator(`[data-vary="${path}"]`).fill(values)
  }
  await answer(page).getByRole('button', { name: 'Search', exact: true }).click()
  const done = () =>
    answer(page)
      .getByRole('progressbar')
      .evaluate((bar: HTMLProgressElement) => bar.value)
  await expect.poll(done).toBeGreaterThan(0)
  const ended = await page.evaluate(() => {
    const made = window.made.splice(0)
    made.forEach((worker) => worker.terminate())
    return made.length
  })
  const before = await done()
  expect(ended).toBeGreaterThan(0)
  await expect(page.getByText('A thread of the program ended unasked')).toBeVisible()
  await expect(page.getByText('What it worked on was begun anew.')).toBeVisible()
  // The bar stands until the new threads have something: then it shows what they did, from the beginning on.
  await expect.poll(done).not.toBe(before)
  expect(await page.evaluate(() => window.made.length)).toBe(ended)
  await answer(page).getByRole('button', { name: 'Stop' }).click()
  await expect(answer(page)).toContainText(/Stopped after [1-9][\d,]* of 32,783,616/)
})
