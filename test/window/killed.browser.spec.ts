import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { chromium, type Page } from '@playwright/test'
import { servePage } from '../../src-main/serve/serve.ts'
import { begin, entry, region, savedWords, showPart } from './journey.ts'
import { chromiumPath, root, rootFlags } from './launch/computer.ts'
import { expect, test } from './launch/open.ts'

/** Longer than unsaved work may stay unkept: 2 s. */
const keptAfter = 2000

/** A whole browser of this test's own, which can be killed as a crash kills it. */
async function browserOn(profile: string, address: string) {
  const words = [...rootFlags, '--headless=new', '--remote-debugging-port=0', '--no-first-run']
  const program = chromiumPath() ?? chromium.executablePath()
  const child = spawn(program, [...words, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const browser = await chromium.connectOverCDP(await doorOf(child))
  const page = await (browser.contexts()[0] ?? (await browser.newContext())).newPage()
  await page.goto(address)
  const kill = async () => {
    const ended = once(child, 'exit')
    process.kill(-(child.pid ?? 0), 'SIGKILL')
    await ended
  }
  return { page, kill }
}

function doorOf(child: ChildProcess): Promise<string> {
  let said = ''
  return new Promise((found) => {
    child.stderr?.on('data', (data) => {
      said += String(data)
      const door = /DevTools listening on (ws:\S+)/.exec(said)?.[1]
      if (door !== undefined) found(door)
    })
  })
}

async function change(page: Page, mass: string): Promise<void> {
  await entry(page, 'vehicle.massKg').fill(mass)
  await expect(savedWords(page)).toContainText('Not saved')
}

test('a browser that is killed loses no more than the last two seconds', async ({ folder }) => {
  const served = await servePage(path.join(root, 'dist/page'), null, 0)
  const profile = path.join(folder, 'profile')
  const first = await browserOn(profile, served.address)
  await begin(first.page)
  await showPart(first.page, 'vehicle')
  // Typing on and on: a browser writes its simple storage from memory at intervals that grow with use.
  for (let mass = 31; mass <= 40; mass++) {
    await change(first.page, String(mass))
    await first.page.waitForTimeout(800)
  }
  await change(first.page, '41')
  await first.page.waitForTimeout(keptAfter)
  await first.kill()

  const second = await browserOn(profile, served.address)
  const offer = region(second.page, 'Recovered work')
  await expect(offer).toContainText('was not saved')
  await offer.getByRole('button', { name: 'Recover it' }).click()
  await showPart(second.page, 'vehicle')
  await expect(entry(second.page, 'vehicle.massKg')).toHaveValue('41')
  await second.kill()
  await served.close()
})
