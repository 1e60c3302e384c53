import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Io } from './io.ts'
import { toEngine } from '../../shared-engine/units/convert.ts'

/** ms between two words about how far it is. */
const pace = 200

/**
 * Does work slice by slice until it is done or Ctrl-C is pressed, with a line of progress where a person watches.
 *
 * @param work does a slice, states how far it is, and says whether it is done
 */
export async function untilStopped(
  io: Io,
  work: (progress: (done: number, total: number, unit: string) => void) => boolean,
): Promise<void> {
  let stopped = false
  const stop = () => {
    stopped = true
  }
  const begun = performance.now()
  let last = begun
  const progress = (done: number, total: number, unit: string) => {
    const now = performance.now()
    if (now - last < pace) return
    last = now
    io.progress?.(progressText(done, total, toEngine(now - begun, 'time', 'ms'), unit))
  }
  process.once('SIGINT', stop)
  try {
    do await nextTurn()
    while (!stopped && !work(progress))
  } finally {
    process.off('SIGINT', stop)
    io.progress?.('')
  }
}

/** How far work is, on one line. */
export function progressText(done: number, total: number, seconds: number, unit = ''): string {
  const left = done === 0 ? '' : `, ${Math.ceil((seconds * (total - done)) / done)} s left`
  return `${done.toLocaleString('en')} of ${total.toLocaleString('en')}${unit}${left} (Ctrl-C stops)`
}
