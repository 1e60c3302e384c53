import { readFileSync, rmSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { AxeBuilder } from '@axe-core/playwright'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { chromium } from 'playwright'
import type { Browser, Page } from 'playwright'
import { build, preview } from 'vite'
import type { PreviewServer } from 'vite'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { fromEngine } from '../../shared-engine/units/convert.ts'
import { thrustAgainstSpeed } from '../../shared-engine/draw/plots/thrust-against-speed.ts'
import { rulesOfColour } from '../window/axe-rules.ts'
import { browserLacks, chromiumPath } from '../window/launch/computer.ts'
import { speedStates, topState } from './demo-data.ts'

/** How drawings behave on a page, in a real browser and under the strict content policy of the product. */
const root = fileURLToPath(new URL('./live/', import.meta.url))
let folder = ''
let server: PreviewServer
let browser: Browser
let page: Page
const trouble: string[] = []

const lacks = browserLacks()
if (lacks !== null) console.warn(`Left out: drawings on a page, because ${lacks}.`)

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'drawings-'))
  const common = { root, configFile: false, logLevel: 'error' } as const
  await build({
    ...common,
    plugins: [svelte()],
    build: { outDir: folder, emptyOutDir: true, target: 'chrome114' },
  })
  server = await preview({ ...common, build: { outDir: folder }, preview: { host: '127.0.0.1', port: 0 } })
  browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox'] })
  const context = await browser.newContext({ viewport: { width: 1280, height: 1200 } })
  page = await context.newPage()
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') trouble.push(message.text())
  })
  page.on('pageerror', (error) => trouble.push(error.message))
  await page.goto(server.resolvedUrls?.local[0] ?? '')
  await page.waitForSelector('svg[role=application] path', { state: 'attached' })
}, 180_000)

afterAll(async () => {
  await browser?.close()
  await server?.close()
  rmSync(folder, { recursive: true, force: true })
})

/** All look at one page: no cursor and no pointer is left on it. Nothing may be refused by the policy, nothing thrown. */
afterEach(async () => {
  await page.keyboard.press('Escape')
  await page.mouse.move(0, 0)
  await page.emulateMedia({ colorScheme: null, reducedMotion: null })
  expect(trouble.splice(0)).toEqual([])
})

/** Narrow no-break spaces as plain ones. */
const plain = (text: string | null): string => (text ?? '').replace(/\u202f/g, ' ')

const plot = (title: string) => page.getByRole('application', { name: title })
const thrust = 'Thrust and resistance over ground speed'

describe.skipIf(lacks !== null)('a plot on the page', () => {
  it.each(['light', 'dark'] as const)(
    'has no fault that axe finds, nor has the power path, in the %s theme',
    async (colorScheme) => {
      await page.emulateMedia({ colorScheme })
      const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'], preload: false })
      // In the dark what a colour scheme may change; the rest is the same.
      const { violations } = await (colorScheme === 'dark' ? axe.withRules(rulesOfColour) : axe).analyze()
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
    },
  )

  it('is one tab stop, stepped by arrows, Home and End, let go by Escape, and says its values politely', async () => {
    const figure = page.locator('figure', { has: plot(thrust) })
    const spoken = figure.getByRole('status')
    await plot(thrust).focus()
    await page.keyboard.press('Home')
    expect(plain(await spoken.textContent())).toBe(
      'Ground speed 0 km/h: Grip 420 N, Motor alone 640 N, Resistance 34.0 N, Thrust 420 N.',
    )
    await page.keyboard.press('ArrowRight')
    const second = fromEngine(speedStates[1]?.groundSpeed ?? 0, 'speed', 'km/h')
    expect(await spoken.textContent()).toContain(second.toPrecision(3))
    expect(Number(await page.getByLabel('Ground speed', { exact: true }).textContent())).toBeCloseTo(
      speedStates[1]?.groundSpeed ?? 0,
      9,
    )
    await page.keyboard.press('End')
    expect(Number(await page.getByLabel('Ground speed', { exact: true }).textContent())).toBeCloseTo(
      speedStates.at(-1)?.groundSpeed ?? 0,
      9,
    )
    await page.keyboard.press('Escape')
    expect(await page.getByLabel('Ground speed', { exact: true }).textContent()).toBe('')
    expect(await figure.locator('[tabindex="0"]').count()).toBe(2)
  })

  it('shares its cursor with every plot that has one like it, and with no other', async () => {
    await plot(thrust).focus()
    await page.keyboard.press('Home')
    for (let step = 0; step < 40; step++) await page.keyboard.press('ArrowRight')
    const with_ = async (title: string) =>
      page
        .locator('figure', { has: plot(title) })
        .locator('.crosshair')
        .count()
    expect(await with_('Current, power and efficiency over ground speed')).toBe(1)
    expect(await with_('The run from rest')).toBe(1)
    expect(await with_('Tooth shear over throttle')).toBe(0)
  })

  it('is moved by pressing and dragging; the pointer alone only reads', async () => {
    const box = await plot(thrust).boundingBox()
    if (box === null) throw new Error('no box')
    await page.mouse.move(box.x + 300, box.y + 120)
    expect(await page.getByLabel('Ground speed', { exact: true }).textContent()).toBe('')
    expect(await page.locator('.crosshair').count()).toBe(1)
    await page.mouse.down()
    await page.mouse.move(box.x + 400, box.y + 120)
    await page.mouse.up()
    expect(Number(await page.getByLabel('Ground speed', { exact: true }).textContent())).toBeGreaterThan(8)
  })

  it('shows as a table what it plots', async () => {
    const figure = page.locator('figure', { has: plot(thrust) })
    await figure.hover()
    await figure.getByRole('button', { name: /^Table/ }).click()
    const rows = await figure.locator('tbody tr').allTextContents()
    const scene = thrustAgainstSpeed(
      { states: speedStates, top: topState },
      { system: 'metric', size: { width: 600, height: 260 } },
    )
    expect(rows.length).toBe(scene.plot?.stops.length)
    const cells = await figure.locator('tbody tr').nth(60).locator('td').allTextContents()
    const state = speedStates[60]
    // 1e-4: the table shows five figures.
    const [speed = NaN, grip = NaN, , resistance = NaN] = cells.map((cell) => Number(cell.replace(',', '')))
    expect(Math.abs(speed / fromEngine(state?.groundSpeed ?? NaN, 'speed', 'km/h') - 1)).toBeLessThan(1e-4)
    expect(grip).toBe(420)
    expect(Math.abs(resistance / (state?.resistance ?? NaN) - 1)).toBeLessThan(1e-4)
  })

  it('outlines the place of a chosen limit', async () => {
    expect(await page.locator('rect.place').count()).toBe(0)
    await page.getByRole('button', { name: 'Choose tooth shear' }).click()
    expect(await page.locator('rect.place').count()).toBe(1)
    expect(await page.locator('[data-limit="track.tooth-shear"].chosen').count()).toBeGreaterThan(1)
  })

  it('goes along as PNG, SVG and CSV', async () => {
    const figure = page.locator('figure', { has: plot(thrust) })
    const starts = { PNG: '\x89PNG', SVG: '<svg xmlns', CSV: 'Ground speed (km/h),Grip (N)' }
    for (const [word, start] of Object.entries(starts)) {
      await figure.hover()
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        figure.getByRole('button', { name: new RegExp(`^${word}`) }).click(),
      ])
      expect(download.suggestedFilename()).toBe(`thrust-against-speed.${word.toLowerCase()}`)
      expect(readFileSync(await download.path(), 'latin1').slice(0, start.length)).toBe(start)
    }
  })
})

describe.skipIf(lacks !== null)('the power path on the page', () => {
  it('is a toolbar of one tab stop: arrows go from part to part, Enter opens one', async () => {
    const bar = page.getByRole('toolbar', { name: /^Parts of the machine/ })
    expect(await bar.locator('[tabindex="0"]').count()).toBe(1)
    await bar.locator('[tabindex="0"]').focus()
    await page.keyboard.press('Home')
    for (const part of ['controller', 'motor', 'stage.1', 'stage.2']) {
      await page.keyboard.press('ArrowRight')
      expect(await page.evaluate(() => document.activeElement?.getAttribute('data-part'))).toBe(part)
    }
    await page.keyboard.press('Enter')
    expect(await page.getByLabel('Part', { exact: true }).textContent()).toBe('stage.2')
    expect(await bar.locator('[tabindex="0"]').count()).toBe(1)
    await page.keyboard.press('End')
    await page.keyboard.press('ArrowRight')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('data-part'))).toBe('pack')
  })

  it('names a part with its figures and its worst limit, shown as shape and word', async () => {
    const stage = page.locator('[data-part="stage.1"]')
    expect(plain(await stage.getAttribute('aria-label'))).toMatch(
      /^Reduction 1: gear wheels, 9 driving 31 teeth.* rpm, .* N·m; .* over$/,
    )
    expect(await stage.locator('.sign path:not(.bar)').count()).toBe(1)
    expect(await stage.locator('.sign text').textContent()).toBe('over')
  })

  it('turns its wheels in true ratio, and stops', async () => {
    const angle = (id: string) =>
      page
        .locator(`[id$="-${id}"]`)
        .evaluate((wheel) => Number(/rotate\((.*)\)/.exec(wheel.getAttribute('transform') ?? '')?.[1] ?? 0))
    await page.locator('[data-part="motor"]').waitFor()
    const before = { driver: await angle('stage.1.driver'), driven: await angle('stage.1.driven') }
    await page.getByRole('button', { name: 'Turn wheels' }).click()
    await page.waitForTimeout(400)
    await page.getByRole('button', { name: 'Stop wheels' }).click()
    const turned = {
      driver: (await angle('stage.1.driver')) - before.driver,
      driven: (await angle('stage.1.driven')) - before.driven,
    }
    expect(Math.abs(turned.driver)).toBeGreaterThan(1)
    // 0.02°: angles are written to two decimals.
    expect(Math.abs((turned.driver / -31) * 9 - turned.driven)).toBeLessThan(0.02)
    const still = await angle('stage.1.driver')
    await page.waitForTimeout(100)
    expect(await angle('stage.1.driver')).toBe(still)
  })

  it('offers no turning where reduced motion is asked for', async () => {
    await page.getByRole('button', { name: 'Turn wheels' }).click()
    await page.emulateMedia({ reducedMotion: 'reduce' })
    const button = page.getByRole('button', { name: /^(Turn|Stop) wheels$/ })
    await button.waitFor({ state: 'detached' })
    expect(await button.count()).toBe(0)
    const transforms = () =>
      page.evaluate(() =>
        [...document.querySelectorAll('[id$=".rotor"]')].map((wheel) => wheel.getAttribute('transform')),
      )
    const still = await transforms()
    await page.waitForTimeout(150)
    expect(await transforms()).toEqual(still)
  })
})
