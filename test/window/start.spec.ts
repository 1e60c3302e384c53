import { expect, test } from './launch/open.ts'

test.use({ ownProgram: true })

test('the page starts without an error, a violation of its policy or a request elsewhere', async ({
  open,
}) => {
  const { page } = await open()
  const troubles: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text())
  })
  page.on('pageerror', (error) => troubles.push(error.message))
  page.on('request', (request) => {
    const { protocol, host } = new URL(page.url())
    if (!request.url().startsWith(`${protocol}//${host}/`) && !/^(data|blob):/.test(request.url()))
      troubles.push(request.url())
  })
  await page.reload()
  await expect(page.locator('h1').first()).toBeAttached()
  expect(troubles).toEqual([])
})
