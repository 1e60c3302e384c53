import type { Held } from '../../state/following.svelte.ts'

/**
 * Holds work whose job is loaded when it is first asked for: the window starts without it. Dropped before it is there, it
 * never begins.
 *
 * @param start begins the job once it is loaded
 * @param stopped hears of a stop before that
 */
export function heldLater<Loaded>(
  load: Promise<Loaded>,
  start: (loaded: Loaded) => Held,
  stopped: () => void,
): Held {
  let running: Held | null = null
  let dropped = false
  void load.then((loaded) => {
    if (!dropped) running = start(loaded)
  })
  return {
    stop: () => {
      if (running !== null) return running.stop()
      dropped = true
      stopped()
    },
    drop: () => {
      dropped = true
      running?.drop()
    },
  }
}
