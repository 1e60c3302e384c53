import type { Page } from '@playwright/test'
import { answer, begin, candidatesIn, question, showPart } from './journey.ts'
import { expect, test } from './launch/open.ts'

/** Pairs of words of the drawing that lie over each other by more than a dot; of lines, by more than what no letter fills. */
function wordsOverWords(page: Page, scale = 1): Promise<string[]> {
  return page.evaluate((blank) => {
    const all = [
      ...document.querySelectorAll('.power-path text, .power-path > .turn, .power-path .words button'),
    ]
      .map((one) => ({ words: (one.textContent ?? '').trim(), box: one.getBoundingClientRect() }))
      .filter(({ words, box }) => words !== '' && box.width > 0)
    return all.flatMap((one, at) =>
      all
        .slice(at + 1)
        .filter(
          ({ box }) =>
            Math.min(one.box.right, box.right) - Math.max(one.box.left, box.left) > 1 &&
            Math.min(one.box.bottom, box.bottom) - Math.max(one.box.top, box.top) > blank,
        )
        .map(({ words }) => `“${one.words}” and “${words}”`),
    )
  }, 5 * scale)
}

/** Words at the row's end that lie over the machine's body. */
const wordsOverMachine = (page: Page): Promise<string[]> =>
  page.locator('.power-path').evaluate((path) => {
    const body = path
      .querySelector('[data-part="vehicle"] rect, [data-part="track"] rect')
      ?.getBoundingClientRect()
    if (body === undefined) return ['no machine']
    return [...path.querySelectorAll('.words button')]
      .map((word) => ({ words: word.textContent, box: word.getBoundingClientRect() }))
      .filter(
        ({ box }) =>
          box.left < body.right && box.right > body.left && box.top < body.bottom && box.bottom > body.top,
      )
      .map(({ words }) => words)
  })

test('no words of the drawing lie over others, at any size', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  for (const build of ['the demo', 'a new build']) {
    for (const size of [
      { width: 1280, height: 800 },
      { width: 1024, height: 640 },
      { width: 640, height: 400 },
    ]) {
      await page.setViewportSize(size)
      expect(await wordsOverWords(page), `${build}, ${size.width} × ${size.height}`).toEqual([])
    }
    await page.setViewportSize({ width: 1280, height: 800 })
    await page.keyboard.press('Alt+n')
  }
  // With more reductions the row is closer: the words of what is not drawn keep clear of the machine.
  await page.setViewportSize({ width: 1024, height: 700 })
  await showPart(page, 'stage.1')
  for (let count = 2; count <= 5; count += 1) {
    await page.getByRole('button', { name: 'Add a reduction after it' }).click()
    expect(await wordsOverMachine(page), `${count} reductions`).toEqual([])
  }
})

test('Take is in sight in every row, however many entries are varied', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await question(page, 'Which gears').click()
  const boxes = answer(page).locator('input[type=checkbox]')
  for (const box of await boxes.all()) {
    if ((await boxes.and(page.locator(':checked')).count()) < 5) await box.check()
  }
  await answer(page).getByRole('button', { name: 'Search', exact: true }).click()
  await expect(candidatesIn(page).first()).toBeVisible()
  // Rows come and go while it looks: asked of whichever is first then.
  const sight = () =>
    page.evaluate(() => {
      const take = [...document.querySelectorAll('[data-candidate] .take button')][0]
      const room = take?.closest('.scroll')
      if (take === undefined || !room) return 'no row'
      const [words, box] = [take.getBoundingClientRect(), room.getBoundingClientRect()]
      const inSight = words.left >= box.left && words.right <= box.right + 1 && room.scrollLeft === 0
      return `${inSight ? 'in sight' : 'cut off'}, table ${room.scrollWidth > room.clientWidth ? 'wider' : 'no wider'}`
    })
  await expect.poll(sight).toBe('in sight, table wider')
})

/** Controls whose words stand out from their ground by less than 4.5 to 1 (WCAG 2.2, 1.4.3). */
const unreadable = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const numbers = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number)
    // Relative luminance and contrast as WCAG 2.2 defines them.
    const luminance = (colour: string) => {
      const [r = 0, g = 0, b = 0] = numbers(colour).map((one) => {
        const share = one / 255
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
      })
      return 0.2126 * r + 0.7152 * g + 0.0722 * b
    }
    const groundOf = (from: Element): string => {
      for (let at: Element | null = from; at !== null; at = at.parentElement) {
        const ground = getComputedStyle(at).backgroundColor
        if ((numbers(ground)[3] ?? 1) > 0) return ground
      }
      return 'rgb(255, 255, 255)'
    }
    return [...document.querySelectorAll<HTMLButtonElement>('button, select, [role=tab]')]
      .filter((one) => one.getClientRects().length > 0 && one.textContent.trim() !== '' && !one.disabled)
      .flatMap((one) => {
        const [light = 0, dark = 0] = [luminance(getComputedStyle(one).color), luminance(groundOf(one))].sort(
          (a, b) => b - a,
        )
        const contrast = (light + 0.05) / (dark + 0.05)
        return contrast >= 4.5 ? [] : [`${one.textContent.trim().slice(0, 30)}: ${contrast.toFixed(1)}`]
      })
  })

test('where the system picks the colours, every button can be read and one tab is marked', async ({
  open,
}) => {
  const { page } = await open()
  await page.emulateMedia({ forcedColors: 'active' })
  expect(await unreadable(page), 'the start').toEqual([])
  await begin(page)
  for (const name of ['Which gears', 'Will it hold', 'How hot, how long', 'What happened', 'Side by side']) {
    await question(page, name).click()
    expect(await unreadable(page), name).toEqual([])
  }
  const lines = await page
    .getByRole('tab')
    .evaluateAll((tabs) => tabs.map((tab) => getComputedStyle(tab).borderBottomColor))
  expect(lines.filter((line) => line === lines.at(-1))).toHaveLength(1)
  await page.keyboard.press('Alt+n')
  expect(await unreadable(page), 'a new build').toEqual([])
})

test('the cursor of a plot runs through none of its words, wherever it stands', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  const through = () =>
    page.evaluate(() => {
      const lines = [...document.querySelectorAll('#answer svg.scene line.cursor')]
      return lines.flatMap((line) => {
        const at = Number(line.getAttribute('x1'))
        const picture = line.closest('svg')
        const words = [...(picture?.querySelectorAll('g text') ?? [])] as SVGTextElement[]
        return words.flatMap((one) => {
          const { x, width, y } = one.getBBox()
          const [top, bottom] = [Number(line.getAttribute('y1')), Number(line.getAttribute('y2'))]
          if (at < x || at > x + width || y < top || y > bottom) return []
          // Painted later than the line, with a rim of paper: the line ends at the words.
          const later = (line.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0
          const rimmed = one.getAttribute('paint-order') === 'stroke'
          return later && rimmed ? [] : [one.textContent]
        })
      })
    })
  await expect(page.locator('#answer line.cursor').first()).toBeAttached()
  const speed = page.getByRole('slider', { name: 'Speed' })
  for (const share of [0.2, 0.5, 0.8, 1]) {
    await speed.evaluate((slider: HTMLInputElement, part) => {
      slider.value = String(Number(slider.min) + part * (Number(slider.max) - Number(slider.min)))
      slider.dispatchEvent(new Event('input', { bubbles: true }))
    }, share)
    expect(await through(), `at ${share} of the way`).toEqual([])
  }
})

test('a candidate is chosen on the map by the keys, shown everywhere, and taken', async ({ open }) => {
  const { page } = await open()
  await begin(page)
  await question(page, 'Which gears').click()
  await answer(page).getByRole('button', { name: 'Search', exact: true }).click()
  await expect(answer(page).getByRole('button', { name: 'Table as CSV' })).toBeVisible({ timeout: 60_000 })
  await answer(page)
    .getByRole('application', { name: /of each candidate$/ })
    .focus()
  await page.keyboard.press('ArrowRight')
  const chosen = answer(page).getByText(/^Chosen on the map: /)
  await expect(chosen).toBeVisible()
  await expect(page.getByTestId('preview')).toBeVisible()
  const words = (await chosen.innerText()).replace('Chosen on the map: ', '').replace(/\.$/, '')
  await page.keyboard.press('Enter')
  await expect(chosen).toHaveCount(0)
  await expect(page.getByRole('button', { name: /^Undo: take gearing/ })).toContainText(words.slice(0, 12))
})

test('letters grow with the size that a person asks for, in plots and in the drawing too, and nothing is lost', async ({
  open,
}) => {
  const { page } = await open()
  await begin(page)
  const sizes = () =>
    page.evaluate(() => {
      const scene = document.querySelector<SVGSVGElement>('#answer svg.scene')
      const width = scene?.getBoundingClientRect().width ?? NaN
      const path = document.querySelector<SVGSVGElement>('.power-path svg.scene')
      const text = document.querySelector('#answer .sentence, #answer p')
      return {
        plot: width / (scene?.viewBox.baseVal.width ?? NaN),
        drawing: path === null ? NaN : path.getBoundingClientRect().width / path.viewBox.baseVal.width,
        words: Number.parseFloat(text === null ? '' : getComputedStyle(text).fontSize),
        spill: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      }
    })
  const usual = await sizes()
  // As a browser does whose person asks for 20 px in place of 16.
  // What is begun with stays with a page that tests share: what it looks for is taken away with the storage.
  await page.addInitScript(() => {
    const enlarge = () => {
      const size = localStorage.getItem('letters')
      if (size !== null && document.documentElement !== null) document.documentElement.style.fontSize = size
    }
    enlarge()
    document.addEventListener('readystatechange', enlarge)
  })
  await page.evaluate(() => localStorage.setItem('letters', '20px'))
  await page.reload()
  await expect(page.locator('#answer svg.scene g text').first()).toBeVisible()
  const large = await sizes()
  expect(large.words / usual.words).toBeCloseTo(1.25, 2)
  expect(large.plot / usual.plot).toBeCloseTo(1.25, 2)
  expect(large.drawing / usual.drawing).toBeCloseTo(1.25, 2)
  expect(await wordsOverWords(page, 1.25)).toEqual([])
  expect(large.spill).toBeLessThanOrEqual(0)
  const plot = await page.locator('#answer svg.scene').first().boundingBox()
  const room = await answer(page).boundingBox()
  expect((plot?.x ?? NaN) + (plot?.width ?? NaN)).toBeLessThanOrEqual((room?.x ?? NaN) + (room?.width ?? NaN))
})
