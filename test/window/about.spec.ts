import { execFileSync } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { modelVersion } from '../../shared-engine/constants.ts'
import { begin } from './journey.ts'
import { root } from './launch/computer.ts'
import { expect, test } from './launch/open.ts'

test.use({ ownProgram: true })

const git = (...words: string[]) => execFileSync('git', words, { cwd: root, encoding: 'utf8' }).trim()

/** Whether what stands after "Commit" names one of our commits, or says that there is no history. */
function isCommit(told: string): boolean {
  if (told === 'none: built from a copy without history') return true
  const [, commit] = /^([0-9a-f]{7,40})(?:, with changes)?$/.exec(told) ?? []
  return commit !== undefined && git('cat-file', '-t', commit) === 'commit'
}

test('About tells the version, the commit, the model and all licences, with the network away', async ({
  open,
  shownIn,
}) => {
  const { page, electron } = await open()
  // The served page comes from this machine: it may ask that, and nobody else. The window's protocol needs no network.
  await electron?.evaluate(({ session }) => session.defaultSession.enableNetworkEmulation({ offline: true }))
  const asked = new Set<string>()
  page.on('request', (request) => asked.add(new URL(request.url()).host))
  await begin(page)
  await page.getByRole('button', { name: 'Build', exact: true }).click()
  await page.getByRole('menuitem', { name: /About Pitchline/ }).click()
  const about = page.getByRole('dialog', { name: 'About Pitchline' })
  const { version } = JSON.parse(await readFile('package.json', 'utf8')) as { version: string }
  const told = async (name: string) =>
    (await about
      .locator('dl > div')
      .filter({ has: page.getByText(name, { exact: true }) })
      .locator('dd')
      .textContent()) ?? ''
  expect(await told('Version')).toBe(version)
  expect(isCommit(await told('Commit'))).toBe(true)
  expect(await told('Model version')).toMatch(new RegExp(`^${modelVersion}:`))
  expect(await told('Runs on')).toMatch(shownIn === 'window' ? /^Electron \d+.*Chromium \d+/ : /^Chrome \d+/)
  await about.getByText('Made with, and its licences').click()
  const texts = about.getByRole('region', { name: 'Texts of the licences' })
  await expect(texts.getByRole('heading').first()).toHaveText('Pitchline')
  await expect(texts).toContainText('Permission is hereby granted, free of charge')
  await expect(texts).toContainText('SIL OPEN FONT LICENSE')
  await expect(texts).toContainText('Permission to use, copy, modify, and/or distribute') // ISC, of d3
  expect([...asked]).toEqual([new URL(page.url()).host])
  await page.keyboard.press('Escape')
  await expect(about).toHaveCount(0)
})
