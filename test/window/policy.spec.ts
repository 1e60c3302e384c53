import type { Page } from '@playwright/test'
import { expect, test } from './launch/open.ts'

/** Directives violated while something forbidden is tried in the page. */
async function violations(page: Page, attempt: () => unknown): Promise<string[]> {
  await page.evaluate(() => {
    const found: string[] = []
    Object.assign(globalThis, { found })
    document.addEventListener('securitypolicyviolation', (event) => found.push(event.effectiveDirective))
  })
  await page.evaluate(attempt)
  await page.waitForTimeout(300)
  return page.evaluate(() => (globalThis as unknown as { found: string[] }).found)
}

test('an inline script does not run', async ({ open }) => {
  const { page } = await open()
  const found = await violations(page, () => {
    const script = document.createElement('script')
    script.textContent = 'globalThis.ran = true'
    document.body.append(script)
  })
  expect(found).toContain('script-src-elem')
  expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false)
})

test('nothing is fetched, from elsewhere or from where the page came from', async ({ open }) => {
  const { page } = await open()
  for (const address of ['https://example.org/', page.url()]) {
    const got = await page.evaluate(
      (to) =>
        fetch(to).then(
          () => 'got',
          () => 'refused',
        ),
      address,
    )
    expect(got, address).toBe('refused')
  }
})

test('text is not evaluated, a frame of another site not shown, a style attribute in markup not applied', async ({
  open,
}) => {
  const { page } = await open()
  const found = await violations(page, () => {
    const place = document.createElement('div')
    document.body.append(place)
    place.innerHTML = '<p id="styled" style="color: red">x</p><iframe src="https://example.org/"></iframe>'
  })
  expect(found).toEqual(expect.arrayContaining(['style-src-attr', 'frame-src']))
  // Playwright's own evaluation is outside the policy; a timer's text is inside it.
  const evaluated = await page.evaluate(() => {
    try {
      setTimeout('globalThis.evaluated = true', 0)
    } catch {
      return false
    }
    return new Promise((done) => setTimeout(() => done('evaluated' in globalThis), 200))
  })
  expect(evaluated).toBe(false)
})
