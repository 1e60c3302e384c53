/** Keys that move a crosshair; Shift goes ten stops at a time. */
const moves: Readonly<Record<string, number | 'first' | 'last'>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
  Home: 'first',
  End: 'last',
}

interface StepKey {
  readonly key: string
  readonly shiftKey: boolean
}

/** Index of the stop nearest to a value. */
export function nearestStop(stops: readonly number[], value: number): number {
  let best = 0
  stops.forEach((stop, index) => {
    if (Math.abs(stop - value) < Math.abs((stops[best] ?? 0) - value)) best = index
  })
  return best
}

/**
 * The stop that a key leads to, seen from `at`; null where the key moves nothing.
 *
 * From between two stops, the first step goes to the next stop in its direction, not past it.
 */
export function steppedTo(
  stops: readonly number[],
  at: number | null,
  { key, shiftKey }: StepKey,
): number | null {
  const move = moves[key]
  if (move === undefined || stops.length === 0) return null
  const last = stops.length - 1
  if (move === 'first' || at === null) return stops[move === 'last' ? last : 0] ?? null
  if (move === 'last') return stops[last] ?? null
  const steps = shiftKey ? 10 * move : move
  const near = nearestStop(stops, at)
  const offset = (stops[near] ?? 0) - at
  const alreadyThere = Math.abs(steps) === 1 && offset * steps > 1e-9 * Math.abs(at)
  const index = Math.max(0, Math.min(last, alreadyThere ? near : near + steps))
  return stops[index] ?? null
}
