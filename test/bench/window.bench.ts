import path from 'node:path'
import type { Page } from 'playwright'
import { windowLacks } from '../window/launch/computer.ts'
import { longTasksOf, noteLongTasks } from './long-tasks.ts'
import { keptAs, percentile95, runsOf } from './measure.ts'
import { opened, place, root, whereShown } from './opened.ts'

// In the real window (or Chromium, said so, where there is no runtime): start to first answer; a changed field to its paint,
// with all plots of the view on; frames while a slider is dragged; what held the page up for more than 50 ms meanwhile.

const changes = 60
const file = path.join(root, 'examples', 'quick-sled-puller.build.json')
const inWindow = place === 'window'

/**
 * Milliseconds from the key that steps an entry, as the system stamped it, to the end of the page's own work on the frame
 * that shows what follows. What the compositor takes from there (a few ms, in another process) is not in it.
 */
async function changeToPaint(page: Page, key: string): Promise<number> {
  await page.evaluate(() => {
    const waiting = window as unknown as { painted?: Promise<number> }
    waiting.painted = new Promise((done) => {
      document.addEventListener(
        'keydown',
        ({ timeStamp: start }) => {
          // after the next frame is drawn, a message is handled: its paint is done by then
          requestAnimationFrame(() => {
            const channel = new MessageChannel()
            channel.port1.onmessage = () => done(performance.now() - start)
            channel.port2.postMessage(null)
          })
        },
        { once: true, capture: true },
      )
    })
  })
  await page.locator('[data-entry="motor.kvRpmPerVolt"]').press(key)
  return page.evaluate(() => (window as unknown as { painted: Promise<number> }).painted)
}

/** Milliseconds between frames while the throttle is dragged for two seconds. */
async function framesWhileDragging(page: Page): Promise<number[]> {
  const slider = page.getByRole('slider', { name: /throttle/i })
  const box = await slider.boundingBox()
  if (box === null) throw new Error('no throttle slider on the strip')
  await page.evaluate(() => {
    const kept = window as unknown as { frames: number[]; counting: boolean }
    kept.frames = []
    kept.counting = true
    let last = performance.now()
    const count = (now: number): void => {
      kept.frames.push(now - last)
      last = now
      if (kept.counting) requestAnimationFrame(count)
    }
    requestAnimationFrame(count)
  })
  const y = box.y + box.height / 2
  await page.mouse.move(box.x + box.width - 4, y)
  await page.mouse.down()
  for (let step = 0; step < 120; step += 1) {
    await page.mouse.move(box.x + 10 + (box.width - 20) * (0.5 + 0.45 * Math.sin(step / 8)), y)
  }
  await page.mouse.up()
  return page.evaluate(() => {
    const kept = window as unknown as { frames: number[]; counting: boolean }
    kept.counting = false
    return kept.frames.slice(2)
  })
}

async function measured(data: string): Promise<void> {
  const starts: number[] = []
  for (let run = 0; run < 4; run += 1) {
    const { took, close } = await opened(data, file)
    starts.push(took)
    await close()
  }
  console.log(inWindow ? 'Electron window:' : `Chromium on the served page (${windowLacks()}):`)
  const again = keptAs(`Start to first answer, ${place}`, runsOf(starts.slice(1)), 's')
  console.log(`  start to first answer: cold ${starts[0]?.toFixed(2)} s, then ${again}`)
  const { page, close } = await opened(data, file)
  await noteLongTasks(page)
  for (const name of ['How fast', 'Will it hold', 'How hot, how long']) {
    await page.getByRole('tab', { name }).click()
    await page.getByRole('combobox', { name: 'Part' }).selectOption('motor')
    // What opening the view took is not typing's.
    await longTasksOf(page)
    const times: number[] = []
    for (let run = 0; run < changes; run += 1)
      times.push(await changeToPaint(page, run % 2 === 0 ? 'ArrowUp' : 'ArrowDown'))
    const counted = times.slice(5)
    const most = percentile95(counted).toFixed(0)
    const painted = keptAs(`A changed field to its paint, ${name}, ${place}`, runsOf(counted), 'ms', 0)
    console.log(`  ${name}: a changed field painted in ${painted}, 95 % within ${most} ms`)
    const frames = await framesWhileDragging(page)
    const middle = keptAs(`Frames while dragging, ${name}, ${place}`, runsOf(frames), 'ms', 0)
    console.log(
      `    frames while the throttle is dragged: ${middle}, 95 % within ${percentile95(frames).toFixed(0)} ms`,
    )
    const held = await longTasksOf(page)
    const longest = runsOf([Math.max(0, ...held)])
    console.log(
      `    held up while typing and dragging: ${held.length} tasks over 50 ms, the longest ${keptAs(`Longest task while typing and dragging, ${name}, ${place}`, longest, 'ms', 0)}`,
    )
  }
  await close()
}

await whereShown(measured)
