import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Page } from '@playwright/test'
import { readStoredBuild } from '../../shared-engine/entries/read.ts'
import { randomStream } from '../../shared-engine/numeric/random.ts'
import { seedsOf } from '../fuzz/spoil.ts'
import { entry, region, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

// The real program, killed while a person types and saves: the file can always be read, and of what was typed no more
// than the last moments are lost. `npm run endure` does a thousand.

const kills = Number(process.env['PITCHLINE_APP_KILLS'] ?? 1)
/** ms within which unsaved work is kept, and what a busy machine may take for it on top. */
const keptWithin = 2000
const grace = 1500

/** The file is open, and the mass in sight. */
async function showMass(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Newt')
  await showPart(page, 'vehicle')
}

for (const seed of seedsOf(kills)) {
  test(`killed while it is typed in and saved, ${seed}`, async ({ open, folder }) => {
    const file = path.join(folder, 'crawler.build.json')
    await writeFile(file, await readFile('examples/culvert-crawler.build.json'))
    const random = randomStream(seed, 17)
    const { page, electron } = await open({ file })
    await showMass(page)
    const mass = entry(page, 'vehicle.massKg')
    const typed: { readonly mass: number; readonly at: number }[] = []
    const until = Date.now() + 2500 + 2500 * random()
    for (let next = 60; Date.now() < until; next += 1) {
      await mass.fill(String(next))
      await mass.press('Enter')
      typed.push({ mass: next, at: Date.now() })
      if (random() < 0.2) await page.keyboard.press('Control+s')
    }
    electron?.process().kill('SIGKILL')
    const killedAt = Date.now()

    const read = readStoredBuild(await readFile(file))
    if (!read.ok) throw new Error(`the file cannot be read: ${JSON.stringify(read.mistakes)}`)
    const again = await open({ file })
    const offer = region(again.page, 'Recovered work')
    await showMass(again.page)
    const kept = entry(again.page, 'vehicle.massKg')
    await expect(kept).toHaveValue(/\d/)
    if (await offer.isVisible()) await offer.getByRole('button', { name: 'Recover it' }).click()
    const found = Number.parseFloat(await kept.inputValue())
    // The first number that is not there any more was typed this long before the end.
    const lost = typed.find(({ mass }) => mass > found)
    expect(lost === undefined ? 0 : killedAt - lost.at).toBeLessThan(keptWithin + grace)
  })
}
