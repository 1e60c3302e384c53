import type { Machine } from '../machine/parts.ts'
import { bracketedRoot } from '../numeric/root.ts'
import { DrivePoint } from './point.ts'
import { sampleAt, type Channel, type PlacedSample, type DriveSample } from './series.ts'
import type { DriveSetting } from './setting.ts'
import type { LimitId } from '../limits/id.ts'

/** A bound that a drive may pass; named like the ledger's limit of the same bound. */
interface Watch {
  readonly id: LimitId
  readonly channel: Channel
  readonly allowed: number
  /** A lowest value, not a highest. */
  readonly minimum: boolean
}

/** A watch, and when the drive first passed it. */
export interface Watched extends Watch {
  /** s; null where it is kept throughout. */
  readonly passedAt: number | null
}

/** The largest value of a drive, or the smallest, and its moment. */
export interface Peak {
  readonly channel: Channel
  readonly value: number
  readonly seconds: number
}

/** The bounds that this machine's entries name. */
function watchesOf({ machine, followsWinding, followsController }: DriveSetting): Watch[] {
  const most = (id: LimitId, channel: Channel, allowed: number | null): Watch[] =>
    allowed === null ? [] : [{ id, channel, allowed, minimum: false }]
  const { motor, controller, pack }: Machine = machine
  const electrical =
    controller.maxElectricalRpm === null ? null : controller.maxElectricalRpm / motor.polePairs
  return [
    ...most('motor.temperature', 'winding', followsWinding ? motor.maxTemperature : null),
    ...most('controller.temperature', 'controller', followsController ? controller.maxTemperature : null),
    ...most('motor.loaded-rpm', 'motorRpm', motor.ratedMaxRpm),
    ...most('controller.electrical-rpm', 'motorRpm', electrical),
    ...most('motor.current-burst', 'motorAmps', motor.burstAmps),
    ...most('controller.current-burst', 'motorAmps', controller.burstAmps),
    ...most('pack.current-burst', 'packAmps', pack.burstAmps),
    { id: 'pack.floor-voltage', channel: 'packVolts', allowed: pack.floorVolts, minimum: true },
  ]
}

/** When each bound was first passed: at a sample, and then closer between it and the one before. */
export function watched(setting: DriveSetting, samples: readonly PlacedSample[]): Watched[] {
  const point = new DrivePoint()
  return watchesOf(setting).map((watch) => {
    const excess = (sample: DriveSample) =>
      watch.minimum ? watch.allowed - sample[watch.channel] : sample[watch.channel] - watch.allowed
    const first = samples.findIndex(({ sample }) => excess(sample) > 0)
    const after = samples[first]
    if (after === undefined) return { ...watch, passedAt: null }
    const before = samples[first - 1]
    const here = after.sample.seconds
    if (before === undefined || before.stretch !== after.stretch) return { ...watch, passedAt: here }
    const { run } = after.stretch
    const between = (time: number) => excess(sampleAt(point, setting, after.stretch, time, run.at(time)))
    return { ...watch, passedAt: bracketedRoot(between, before.sample.seconds, here) ?? here }
  })
}

const highest: readonly Channel[] = [
  'speed',
  'motorRpm',
  'motorAmps',
  'packAmps',
  'winding',
  'controller',
  'coolant',
  'thrust',
  'slip',
]

/** Highest values of a drive with their moments, and the lowest volts. */
export function peaksOf(samples: readonly DriveSample[]): Peak[] {
  const extreme = (channel: Channel, sign: 1 | -1): Peak[] => {
    let best = samples[0]
    for (const sample of samples) {
      if (best === undefined || sign * sample[channel] > sign * best[channel]) best = sample
    }
    return best === undefined ? [] : [{ channel, value: best[channel], seconds: best.seconds }]
  }
  return [...highest.flatMap((channel) => extreme(channel, 1)), ...extreme('packVolts', -1)]
}
