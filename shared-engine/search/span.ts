import { evaluate } from '../cases/evaluate.ts'
import { Evaluation } from '../cases/evaluation.ts'
import { Ledger, worstMargin } from '../limits/ledger.ts'
import { measureLedger } from '../limits/measure.ts'
import { Candidates } from './candidates.ts'
import type { MapSpan } from './map.ts'
import type { SearchPlan } from './space.ts'

/** Candidates looked at to find out where the map begins and ends. */
const looks = 600
/** Share of the span left free on every side. */
const room = 0.02
/** Multiples of the golden ratio spread over a range as evenly as can be, and in step with no axis. */
const golden = (Math.sqrt(5) - 1) / 2

/**
 * Where the candidates of a plan lie on its map, from an even sample of them. The same plan gives the same span on every
 * thread.
 */
export function spanOf(plan: SearchPlan): MapSpan {
  const candidates = new Candidates(plan)
  const e = new Evaluation()
  const ledger = new Ledger()
  const low: [number, number] = [Infinity, Infinity]
  const high: [number, number] = [-Infinity, -Infinity]
  const count = Math.min(looks, plan.total)
  for (let look = 0; look < count; look += 1) {
    const index = plan.total <= looks ? look : Math.floor(((look * golden) % 1) * plan.total)
    if (candidates.set(index) >= 0) continue
    evaluate(e, candidates.machine)
    measureLedger(ledger, e, candidates.machine)
    for (const axis of [0, 1] as const) {
      const value = plan.map[axis].value(e, candidates.machine, worstMargin(ledger))
      if (!Number.isFinite(value)) continue
      low[axis] = Math.min(low[axis], value)
      high[axis] = Math.max(high[axis], value)
    }
  }
  for (const axis of [0, 1] as const) {
    if (!(high[axis] >= low[axis])) [low[axis], high[axis]] = [0, 1]
    const free = room * (high[axis] - low[axis])
    low[axis] -= free
    high[axis] += free
  }
  return { low, high }
}
