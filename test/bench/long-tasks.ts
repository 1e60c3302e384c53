import type { Page } from 'playwright'

type Noting = Window & { longTasks?: number[] }

/** From now on every task of the page's own thread that takes more than 50 ms is noted. *Source:* W3C, Long Tasks API. */
export async function noteLongTasks(page: Page): Promise<void> {
  await page.evaluate(() => {
    const noted: number[] = []
    const here = window as unknown as Noting
    here.longTasks = noted
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) noted.push(duration)
    }).observe({ entryTypes: ['longtask'] })
  })
}

/** Those noted since it was last asked, ms each. */
export const longTasksOf = (page: Page): Promise<number[]> =>
  page.evaluate(() => (window as unknown as Noting).longTasks?.splice(0) ?? [])
