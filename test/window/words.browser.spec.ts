import { readFile } from 'node:fs/promises'
import type { Page } from '@playwright/test'
import { readStoredBuildText } from '../../shared-engine/entries/read.ts'
import type { StoredBuild } from '../../shared-engine/entries/schema.ts'
import { writeBuild } from '../../shared-engine/entries/write.ts'
import { atTheEnd } from '../fixtures/build/extreme.ts'
import { oddIn, rawKeyIn } from '../fixtures/text/odd.ts'
import { answer, begin, drop, limits, question, questions } from './journey.ts'
import { expect, test } from './launch/open.ts'

// Every word of every view, also of its tables, names for readers, tips and entries, is free of what is no number and of
// digits that nobody can vouch for. Numbers by themselves are looked at in test/engine/units; here, what stands on the
// page when builds of all sizes meet all of it.

interface Words {
  readonly at: string
  readonly text: string
}

/**
 * What a person or a screen reader is told, once each and with where; full values for copying are kept out, and what was
 * told before.
 */
const wordsOf = (page: Page, within: string): Promise<Words[]> =>
  page.locator(within).evaluate((root) => {
    const here = window as Window & { toldBefore?: Set<string> }
    const before = (here.toldBefore ??= new Set())
    const found: { at: string; text: string }[] = []
    const tell = (at: string, text: string | null) => {
      if (text === null || before.has(`${at} ${text}`)) return
      before.add(`${at} ${text}`)
      if (/\d|NaN|Infinity|undefined|null|object|Invalid|\.[a-z]+[A-Z]/.test(text)) found.push({ at, text })
    }
    const told = ['aria-label', 'aria-valuetext', 'aria-description', 'title', 'placeholder', 'alt', 'label']
    /** How high a place lies is told in metres, however high. */
    const isAltitude = (node: Node) =>
      node.parentElement?.closest('tr')?.querySelector('th')?.textContent.includes('Altitude') === true
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT)
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      if (node instanceof Text) {
        if (!isAltitude(node)) tell(node.parentElement?.tagName ?? '', node.data)
        continue
      }
      if (!(node instanceof Element)) continue
      for (const name of told) tell(name, node.getAttribute(name))
      if (node instanceof HTMLInputElement && node.type !== 'range')
        tell(`entry ${node.dataset['entry'] ?? ''}`, node.value)
    }
    return found
  })

/** Everything odd in all views of the open build, in both systems of units. */
async function oddOf(page: Page): Promise<string[]> {
  const odd = new Set<string>()
  const look = async (where: string, within = 'body') => {
    for (const { at, text } of await wordsOf(page, within))
      for (const one of [...oddIn(text), ...[rawKeyIn(text) ?? []].flat()])
        odd.add(`${where}, ${at}: ${one} in “${text.trim().slice(0, 200)}”`)
  }
  const lookAtAll = async () => {
    for (const name of questions) {
      await question(page, name).click()
      await expect(page.locator('#answer progress')).toHaveCount(0)
      await answer(page)
        .getByRole('toolbar')
        .evaluateAll((bars) =>
          bars.forEach((bar) => bar.querySelector<HTMLElement>('[aria-expanded=false]')?.click()),
        )
      await look(name)
    }
    await question(page, 'Which gears').click() // the quickest to follow the units
    const part = page.getByRole('combobox', { name: 'Part' })
    for (const value of await part
      .locator('option')
      .evaluateAll((all) => all.map((one) => one.getAttribute('value')))) {
      await part.selectOption(value)
      await look(`the fields of ${value}`, '[data-region=fields]')
    }
    await limits(page).getByRole('button').first().click()
    await expect(page.getByRole('button', { name: 'Copy the full value' })).toBeVisible()
    await look('the working of the worst limit')
    await page.keyboard.press('Escape')
  }
  await lookAtAll()
  await page.getByRole('button', { name: /^(Metric|Imperial)$/ }).click()
  await lookAtAll()
  return [...odd]
}

async function demo(name: string): Promise<StoredBuild> {
  const read = readStoredBuildText(await readFile(`examples/${name}.build.json`, 'utf8'))
  if (!read.ok) throw new Error(`${name} is no build`)
  return read.value
}

const demos = ['hut-hauler', 'quick-sled-puller', 'culvert-crawler']

/** Builds of sizes that nobody builds are looked at beside the demos; random ones are in test/page/words.test.ts. */
const builds: Readonly<Record<string, () => Promise<StoredBuild>>> = {
  ...Object.fromEntries(demos.map((name) => [name, () => demo(name)])),
  'hut-hauler at the low ends of its entries': async () => atTheEnd(await demo('hut-hauler'), 'low'),
  'quick-sled-puller at the high ends of its entries': async () =>
    atTheEnd(await demo('quick-sled-puller'), 'high'),
}

for (const [name, build] of Object.entries(builds)) {
  test(`no odd number in any view of ${name}`, async ({ open }) => {
    const { page } = await open()
    await begin(page)
    await drop(page, writeBuild({ ...(await build()), name: 'looked at' }), 'looked-at.build.json')
    await expect(page.locator('h1')).toHaveText('looked at')
    await page.keyboard.press('Alt+k')
    expect(await oddOf(page)).toEqual([])
  })
}
