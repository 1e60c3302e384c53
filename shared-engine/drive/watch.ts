import { airGasConstant, zeroCelsius } from '../constants.ts'
import { boilingPoint } from '../heat/boiling.ts'
import type { LimitId } from '../limits/id.ts'
import type { Machine } from '../machine/parts.ts'
import { bracketedRoot } from '../numeric/root.ts'
import type { DriveModel } from './model.ts'
import type { PeakName, Reading } from './reading.ts'

/** A bound that a drive may pass; named like the ledger's limit of the same bound. */
interface Watch {
  readonly id: LimitId
  readonly channel: PeakName
  readonly allowed: number
  /** A lowest value, not a highest. */
  readonly minimum: boolean
}

/** A watch, and when the drive first passed it. */
export interface Watched extends Watch {
  /** s; null where it is kept throughout. */
  readonly passedAt: number | null
}

/** The bounds that this machine's entries name. */
function watchesOf({ machine, heat }: DriveModel): Watch[] {
  const most = (id: LimitId, channel: PeakName, allowed: number | null): Watch[] =>
    allowed === null ? [] : [{ id, channel, allowed, minimum: false }]
  const { motor, controller, pack } = machine
  const electrical =
    controller.maxElectricalRpm === null ? null : controller.maxElectricalRpm / motor.polePairs
  return [
    ...most('motor.temperature', 'winding', heat.winding === null ? null : motor.maxTemperature),
    ...most(
      'controller.temperature',
      'controller',
      heat.controller === null ? null : controller.maxTemperature,
    ),
    ...most('motor.loaded-rpm', 'motorRpm', motor.ratedMaxRpm),
    ...most('controller.electrical-rpm', 'motorRpm', electrical),
    ...most('motor.current-burst', 'motorAmps', motor.burstAmps),
    ...most('controller.current-burst', 'motorAmps', controller.burstAmps),
    ...most('pack.current-burst', 'packAmps', pack.burstAmps),
    { id: 'pack.floor-voltage', channel: 'packVolts', allowed: pack.floorVolts, minimum: true },
    ...most('pack.temperature', 'pack', pack.maxTemperature),
    ...(machine.cooling === null
      ? []
      : [
          {
            id: 'cooling.freezing',
            channel: 'coolant',
            allowed: machine.cooling.freezes,
            minimum: true,
          } as const,
        ]),
    ...most('cooling.boiling', 'coolant', machine.cooling === null ? null : boilingOf(machine)),
  ]
}

/** °C at which the coolant boils under the air's pressure and the cap's. *Source:* `docs/model.md` §7. */
function boilingOf({ cooling, ground }: Machine): number {
  const pressure = ground.airDensity * airGasConstant * (ground.airTemperature + zeroCelsius)
  return boilingPoint(pressure + (cooling?.capPressure ?? 0), cooling?.boilingRise ?? 0)
}

/** Looks along a drive for the first time that each bound is passed. */
export class Watcher {
  readonly #watches: readonly Watch[]
  readonly #passedAt: (number | null)[]

  constructor(model: DriveModel) {
    this.#watches = watchesOf(model)
    this.#passedAt = this.#watches.map(() => null)
  }

  /**
   * Looks at the end of a stretch of time that was kept before.
   *
   * @param reading at `to`
   * @param readingAt at a time between; called only where a bound is passed for the first time
   */
  look(
    from: number,
    to: number,
    reading: Readonly<Reading>,
    readingAt: (time: number) => Readonly<Reading>,
  ): void {
    for (let at = 0; at < this.#watches.length; at += 1) {
      const watch = this.#watches[at] as Watch
      if (this.#passedAt[at] !== null || !(excess(watch, reading) > 0)) continue
      const between = (time: number) => excess(watch, readingAt(time))
      this.#passedAt[at] = from < to ? (bracketedRoot(between, from, to) ?? to) : to
    }
  }

  result(): Watched[] {
    return this.#watches.map((watch, at) => ({ ...watch, passedAt: this.#passedAt[at] ?? null }))
  }
}

function excess({ channel, allowed, minimum }: Watch, reading: Readonly<Reading>): number {
  return minimum ? allowed - reading[channel] : reading[channel] - allowed
}
