import type { Page } from '@playwright/test'
import { expect, test } from './launch/open.ts'

/** Directives are violated where something forbidden is tried in the page: these at least, in the end. */
async function expectViolated(page: Page, attempt: () => unknown, ...directives: string[]): Promise<void> {
  await page.evaluate(() => {
    const found: string[] = []
    Object.assign(globalThis, { found })
    document.addEventListener('securitypolicyviolation', (event) => found.push(event.effectiveDirective))
  })
  await page.evaluate(attempt)
  const found = () => page.evaluate(() => (globalThis as unknown as { found: string[] }).found)
  await expect.poll(found).toEqual(expect.arrayContaining(directives))
}

test('an inline script does not run', async ({ open }) => {
  const { page } = await open()
  const attempt = () => {
    const script = document.createElement('script')
    script.textContent = 'globalThis.ran = true'
    document.body.append(script)
  }
  await expectViolated(page, attempt, 'script-src-elem')
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
  const attempt = () => {
    const place = document.createElement('div')
    document.body.append(place)
    place.innerHTML = '<p id="styled" style="color: red">x</p><iframe src="https://example.org/"></iframe>'
  }
  await expectViolated(page, attempt, 'style-src-attr', 'frame-src')
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
