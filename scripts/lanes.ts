import { availableParallelism } from 'node:os'

/**
 * Does all of the tasks, as many at a time as there are cores; the results are in the tasks' order.
 *
 * @param more at a time, where some of them wait more than they compute
 */
export async function sideBySide<Result>(
  tasks: readonly (() => Promise<Result>)[],
  more = 0,
): Promise<Result[]> {
  const waiting = [...tasks.entries()]
  const results: Result[] = []
  const lane = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [at, task] = next
      results[at] = await task()
    }
  }
  await Promise.all(Array.from({ length: Math.max(1, availableParallelism()) + more }, lane))
  return results
}
