import { readFileSync, readdirSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import os from 'node:os'
import path from 'node:path'
import type { CDPSession, Page } from 'playwright'
import { longTasksOf, noteLongTasks } from './long-tasks.ts'
import { madeLog, rows } from './made-log.ts'
import { keptAs, percentile95, runsOf, told } from './measure.ts'
import { opened, place, root, whereShown } from './opened.ts'

// A log of a million rows in the real window: how long from the chosen file to its story, and until all is read and ready to
// be drawn, beside the library's bare parse in a worker of the same page; the page's memory; how long the window is held up; how soon Stop has stopped; frames, and
// the page's own work on each, while a million points are looked at from nearer, further and on.

const build = path.join(root, 'examples', 'hut-hauler.build.json')
const imports = 4
/** Shares of an import after which it is stopped. */
const stoppedAt = [0.05, 0.3, 0.5, 0.7, 0.85, 0.95]
const steps = 120

/** What the bench leaves in the page. */
interface Watched {
  readonly frames: number[]
  counting: boolean
}
type Watching = Window & { watched: Watched }

const chosen = (page: Page) => page.locator('input[data-format="log"]')
const sleep = (ms: number) => new Promise((done) => setTimeout(done, ms))

/** Most memory that a process had at once since it began, or since it was last forgotten; MB. */
function mostMegabytes(pid: number): number {
  const kilobytes = /VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]
  return Number(kilobytes) / 1024
}

/** Processor seconds of a process so far; Linux counts hundredths. */
function processorOf(pid: number): number {
  const cells = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? []
  return (Number(cells[11]) + Number(cells[12])) / 100
}

/** How many workers a process has. */
const workersOf = (pid: number): number =>
  readdirSync(`/proc/${pid}/task`).filter((task) => {
    try {
      return readFileSync(`/proc/${pid}/task/${task}/comm`, 'utf8').startsWith('DedicatedWorker')
    } catch {
      return false // ended in between
    }
  }).length

/** A place for what is noted on the page. */
async function watch(page: Page): Promise<void> {
  await page.evaluate(() => {
    const here = window as unknown as Watching
    here.watched = { frames: [], counting: false }
  })
  await noteLongTasks(page)
}

/** ms from the choice of a file, already handed to the page, until its story is there, and until all of it is. */
async function imported(page: Page, file: string): Promise<{ story: number; whole: number }> {
  const begun = page.evaluate(
    () =>
      new Promise<{ story: number; whole: number }>((done) => {
        const choosing = (event: Event): void => {
          if (!(event.target instanceof HTMLInputElement) || event.target.dataset['format'] !== 'log') return
          document.removeEventListener('change', choosing, true)
          const start = performance.now()
          let seen = false
          let story = NaN
          // Looked at when the page changes: to ask in every frame would be work that is counted as the page's.
          const look = new MutationObserver(() => {
            const reading = document.querySelector('progress[aria-label="Reading"]') !== null
            seen ||= reading
            const which = document.querySelector('[data-log="which"]')?.textContent ?? 'is being read'
            if (seen && Number.isNaN(story) && !which.includes('is being read'))
              story = performance.now() - start
            if (!seen || reading) return
            look.disconnect()
            done({ story, whole: performance.now() - start })
          })
          look.observe(document.body, { childList: true, subtree: true, characterData: true })
        }
        document.addEventListener('change', choosing, true)
      }),
  )
  await chosen(page).setInputFiles(file)
  const took = await begun
  if ((await page.locator('[data-log="answer"]').count()) === 0) throw new Error('the log was not read')
  return took
}

/** ms of the library's bare parse of the same bytes, in a worker of the page that has nothing else to do. */
async function bareParse(page: Page, library: string): Promise<number> {
  return page.evaluate(
    (source) =>
      new Promise<number>((done, fail) => {
        const file = (window as unknown as { bytes: File }).bytes
        const work = `${source}
          onmessage = async ({ data }) => {
            const start = performance.now()
            const text = new TextDecoder().decode(await data.arrayBuffer())
            new self.Papa.Parser({ delimiter: ',', newline: '\\n' }).parse(text, 0, false)
            postMessage(performance.now() - start)
          }`
        const worker = new Worker(URL.createObjectURL(new Blob([work], { type: 'text/javascript' })))
        worker.onerror = ({ message }) => fail(new Error(message))
        worker.onmessage = ({ data }: MessageEvent<number>) => {
          worker.terminate()
          done(data)
        }
        worker.postMessage(file)
      }),
    library,
  )
}

/** Leaves the file within the page, for the bare parse. */
async function hold(page: Page): Promise<void> {
  await page.evaluate(() => {
    document.addEventListener(
      'change',
      ({ target }) => {
        const file = target instanceof HTMLInputElement ? target.files?.[0] : undefined
        if (file !== undefined) (window as unknown as { bytes: File }).bytes = file
      },
      true,
    )
  })
}

/** ms from pressing Stop until the page says so, and until the thread is gone. */
async function stopped(page: Page, pid: number, file: string, after: number) {
  const before = workersOf(pid)
  await chosen(page).setInputFiles(file)
  const stop = page.getByRole('button', { name: 'Stop', exact: true })
  await stop.waitFor()
  await sleep(after)
  // A look that nobody waits for ends with the page.
  const said = page
    .evaluate(
      () =>
        new Promise<number>((done) => {
          const pressed = ({ timeStamp, target }: Event): void => {
            if (!(target instanceof HTMLElement) || target.textContent?.trim() !== 'Stop') return
            document.removeEventListener('click', pressed, true)
            const look = (): void => {
              const status = [...document.querySelectorAll('[role=status]')].some((one) =>
                one.textContent?.includes('Stopped:'),
              )
              if (status) done(performance.now() - timeStamp)
              else requestAnimationFrame(look)
            }
            look()
          }
          document.addEventListener('click', pressed, true)
        }),
    )
    .catch(() => NaN)
  if ((await stop.count()) === 0) return null // it was quicker
  const begun = performance.now()
  try {
    await stop.click({ timeout: 1000 })
  } catch {
    return null // it was told meanwhile
  }
  while (workersOf(pid) > before && performance.now() - begun < 10_000) await sleep(2)
  const gone = performance.now() - begun
  return { said: await said, gone }
}

/** Frames while the wheel turns, and the page's own work (scripts, styles, layout, paint) for each; ms. */
async function framesOf(page: Page, tools: CDPSession, turn: (step: number) => Promise<void>) {
  const busy = async () => {
    const { metrics } = await tools.send('Performance.getMetrics')
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN)
  }
  const before = await busy()
  await page.evaluate(() => {
    const { watched } = window as unknown as Watching
    watched.frames.length = 0
    watched.counting = true
    let last = performance.now()
    const count = (now: number): void => {
      watched.frames.push(now - last)
      last = now
      if (watched.counting) requestAnimationFrame(count)
    }
    requestAnimationFrame(count)
  })
  for (let step = 0; step < steps; step += 1) await turn(step)
  const frames = await page.evaluate(() => {
    const { watched } = window as unknown as Watching
    watched.counting = false
    return watched.frames.slice(2)
  })
  return { frames, own: ((await busy()) - before) / frames.length }
}

async function measured(folder: string): Promise<void> {
  const file = path.join(folder, 'run.csv')
  writeFileSync(file, madeLog())
  const library = readFileSync(createRequire(import.meta.url).resolve('papaparse'), 'utf8')
  const { page, process: pid, close } = await opened(path.join(folder, 'data'), build, true)
  const card = page.getByRole('button', { name: 'Got it' })
  if (await card.isVisible()) await card.click()
  await page.keyboard.press('Alt+5')
  await watch(page)
  await hold(page)
  const idle = mostMegabytes(pid)
  const [took, whole, bare, processor, bareProcessor]: number[][] = [[], [], [], [], []]
  let held: number[] = []
  let memory = NaN
  for (let run = 0; run < imports; run += 1) {
    const before = processorOf(pid)
    const found = await imported(page, file)
    took?.push(found.story / 1000)
    whole?.push(found.whole / 1000)
    processor?.push(processorOf(pid) - before)
    await sleep(1500) // parts below the first come one after the other
    // What the first one needed: what the bare parse keeps would hide it later.
    if (run === 0) memory = mostMegabytes(pid)
    held = [...held, ...(await longTasksOf(page))]
    const then = processorOf(pid)
    bare?.push((await bareParse(page, library)) / 1000)
    bareProcessor?.push(processorOf(pid) - then)
    await longTasksOf(page)
  }
  const [story, all, parse] = [took, whole, bare].map((one) => runsOf(one ?? []))
  if (story === undefined || all === undefined || parse === undefined) return
  console.log(`log of ${rows.toLocaleString('en')} rows of 8 columns in the ${place}`)
  console.log(
    `  file chosen to story told     ${keptAs(`Log, a million rows: chosen to story, ${place}`, story, 's')}`,
  )
  console.log(
    `  file chosen to all ready      ${keptAs(`Log, a million rows: chosen to told, ${place}`, all, 's')}`,
  )
  console.log(`  bare parse in a worker        ${told(parse, 's')}`)
  const ratioOf = (one: number[] | undefined, other: number[] | undefined) =>
    runsOf((one ?? []).map((value, at) => value / (other?.[at] ?? NaN)))
  const ratios = ratioOf(took, bare)
  console.log(
    `  story over bare parse         ${keptAs(`Log, a million rows: chosen to story over bare parse, ${place}`, ratios, 'times')}`,
  )
  const allRatios = ratioOf(whole, bare)
  console.log(
    `  all ready over bare parse     ${keptAs(`Log, a million rows: chosen to told over bare parse, ${place}`, allRatios, 'times')}`,
  )
  // What other programs take of the processors does not show in this one.
  const own = ratioOf(processor, bareProcessor)
  console.log(
    `  processor of the page         ${told(runsOf(processor ?? []), 's')}, bare parse ${told(runsOf(bareProcessor ?? []), 's')}: ${keptAs(`Log, a million rows: processor of the page over bare parse, ${place}`, own, 'times')}`,
  )
  console.log(
    `  programs that want a processor ${os.loadavg()[0]?.toFixed(1)} on ${os.availableParallelism()}`,
  )
  const most = runsOf([memory])
  console.log(
    `  memory of the page's process  ${keptAs(`Log, a million rows: most memory of the page, ${place}`, most, 'MB', 0)}; ${idle.toFixed(0)} MB before`,
  )
  const longest = runsOf([Math.max(0, ...held)])
  console.log(
    `  held up: ${held.length} tasks over 50 ms, the longest ${keptAs(`Log, a million rows: longest task of the window’s thread, ${place}`, longest, 'ms', 0)}: ${held.map((one) => one.toFixed(0)).join(' ')}`,
  )
  const stops: { said: number; gone: number }[] = []
  for (const share of stoppedAt) {
    const stop = await stopped(page, pid, file, share * 1000 * all.median)
    if (stop !== null) stops.push(stop)
    await sleep(200)
  }
  const said = runsOf(stops.map((one) => one.said))
  const gone = runsOf(stops.map((one) => one.gone))
  console.log(
    `  Stop at ${stops.length} moments: said after ${keptAs(`Log, a million rows: Stop to stopped, ${place}`, said, 'ms', 0)}, thread gone after ${told(gone, 'ms', 0)}`,
  )
  console.log(
    `    tasks over 50 ms meanwhile: ${(await longTasksOf(page)).map((one) => one.toFixed(0)).join(' ') || 'none'}`,
  )
  await imported(page, file)
  await sleep(2000)
  await longTasksOf(page)
  const tools = await page.context().newCDPSession(page)
  await tools.send('Performance.enable')
  const plot = page.getByRole('application', { name: 'Channels over time' })
  await plot.scrollIntoViewIfNeeded()
  const box = await plot.boundingBox()
  if (box === null) throw new Error('no plot of the channels')
  await page.mouse.move(box.x + box.width / 2, box.y + 60)
  await page.keyboard.down('Control')
  // Nearer to a few hundred samples and back, so that every width is seen.
  await tell('zoomed by wheel', page, tools, async (step) => {
    await page.mouse.wheel(0, Math.floor(step / 40) % 2 === 0 ? -100 : 100)
    await frame(page)
  })
  await page.keyboard.up('Control')
  await plot.focus()
  for (let nearer = 0; nearer < 3; nearer += 1) await page.keyboard.press('+')
  await tell('moved along by keys', page, tools, async (step) => {
    await page.keyboard.press(Math.floor(step / 12) % 2 === 0 ? 'PageDown' : 'PageUp')
    await frame(page)
  })
  console.log(
    `    tasks over 50 ms meanwhile: ${(await longTasksOf(page)).map((one) => one.toFixed(0)).join(' ') || 'none'}`,
  )
  await close()
}

/** Waits for the next frame, so that each is asked for one thing. */
const frame = (page: Page) =>
  page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => done())))

async function tell(
  what: string,
  page: Page,
  tools: CDPSession,
  turn: (step: number) => Promise<void>,
): Promise<void> {
  const { frames, own } = await framesOf(page, tools, turn)
  const middle = keptAs(`Log, a million points ${what}: frames, ${place}`, runsOf(frames), 'ms', 1)
  const work = keptAs(`Log, a million points ${what}: own work for a frame, ${place}`, runsOf([own]), 'ms', 1)
  console.log(
    `  a million points ${what}: frames ${middle}, 95 % within ${percentile95(frames).toFixed(1)} ms; own work ${work} a frame`,
  )
}

await whereShown(measured)
