import { tolerancedEntriesOf } from '../uncertainty/entries.ts'
import { machinesOf } from '../fit/model.ts'
import { standardUncertaintyOf } from '../measure/readings.ts'
import { keysOf, valueAt } from '../entries/path.ts'
import type { Build } from '../entries/schema.ts'
import type { Machine } from '../machine/parts.ts'
import type { Comparison } from './quantity.ts'

/** What one entry's uncertainty does to a prediction: it moved up by one standard uncertainty. */
export interface Response {
  readonly path: string
  /** What the build has. */
  readonly value: number
  /** One standard uncertainty, in the entry's bench unit. */
  readonly step: number
  /** Change of each sample, series by series. */
  readonly changes: readonly Float64Array[]
}

/** Parts of a machine that a run hangs on; an entry that leaves them as they are needs no second look. */
const readByARun = ({
  motor,
  controller,
  train,
  track,
  vehicle,
  ground,
  cooling,
  pack,
  accessories,
  service,
}: Machine) =>
  JSON.stringify([
    motor,
    controller.resistance,
    controller.currentLimit,
    train,
    [track.radius, track.count, track.loopMass, track.internalDrag, track.internalDragPerSpeed],
    vehicle,
    ground,
    cooling,
    [pack.openVolts, pack.resistance],
    accessories.power,
    [service.windingTemperature],
  ])

/** Standard uncertainties of a build's entries by path: its tolerances, else what their origins leave open. */
export function uncertaintiesOf(build: Build): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  for (const { path, nominal, plusMinus, shape } of tolerancedEntriesOf(build).entries)
    found.set(path, standardUncertaintyOf(nominal, { plusMinus, shape }))
  return found
}

/**
 * What the uncertainty of each entry does to a comparison, one entry at a time.
 *
 * *Source:* ISO/IEC Guide 98-3 (JCGM 100:2008), 5.1.3 note 2: u_i(y) as the change for a step of u(x_i).
 */
export function responsesOf(
  build: Build,
  comparison: Comparison,
  nominal: readonly Float64Array[],
  steps: ReadonlyMap<string, number>,
): readonly Response[] {
  const plain = readByARun(machinesOf(build, [])([]))
  return [...steps].flatMap(([path, step]): Response[] => {
    const value = valueAt(build, keysOf(path))
    if (typeof value !== 'number' || !(step > 0)) return []
    const moved = machinesOf(build, [path])([value + step])
    if (readByARun(moved) === plain) return []
    const changes = comparison
      .predictedBy(moved)
      .map((one, at) => one.map((predicted, sample) => predicted - (nominal[at]?.[sample] ?? NaN)))
    return changes.some((one) => one.some((change) => change !== 0)) ? [{ path, value, step, changes }] : []
  })
}
