import type { Prepared } from '../fit/prepare.ts'
import type { Machine } from '../machine/parts.ts'
import { byAmps } from './by-amps.ts'
import { byDuty } from './by-duty.ts'
import { byHeat } from './by-heat.ts'
import type { Comparison } from './quantity.ts'

/** What of a run can be predicted, by what it has logged. */
interface Comparisons {
  /** What speed and current are predicted from; null: the log has neither duty nor current. */
  readonly drivenBy: 'duty' | 'amps' | null
  readonly driven: Comparison | null
  readonly heated: Comparison | null
}

/** The ways to predict a run that its channels allow. */
export function comparisonsOf(prepared: Prepared, machine: Machine): Comparisons {
  const has = (name: 'duty' | 'packVolts' | 'motorAmps' | 'motorRpm' | 'motorCelsius') =>
    prepared.noise.has(name)
  const heated = has('motorRpm') && has('motorAmps') && has('motorCelsius') ? byHeat(prepared, machine) : null
  if (has('motorRpm') && has('duty') && has('packVolts'))
    return { drivenBy: 'duty', driven: byDuty(prepared, machine, feedsBack(prepared)), heated }
  if (has('motorRpm') && has('motorAmps'))
    return { drivenBy: 'amps', driven: byAmps(prepared, machine), heated }
  return { drivenBy: null, driven: null, heated }
}

/** Whether the motors of a run give current back: clearly below nothing at times. */
function feedsBack({ tracks, mostAmps }: Prepared): boolean {
  const least = tracks.reduce(
    (lowest, { amps }) => amps.reduce((sofar, value) => (value < sofar ? value : sofar), lowest),
    0,
  )
  return least < -0.05 * mostAmps
}
