import type { Build } from '../entries/schema.ts'
import { sagPiecesOf } from '../fit/blocks/sag.ts'
import type { FitAnswer } from '../fit/answer.ts'
import { inLoggedSegments, type FitLog } from '../fit/log.ts'
import { preparedOf, type Prepared } from '../fit/prepare.ts'
import { machineOf } from '../machine/machine.ts'
import type { Machine } from '../machine/parts.ts'
import { buildSetter } from '../uncertainty/build.ts'
import { formatText } from '../units/display.ts'
import type { QuantityKind, UnitSystem } from '../units/kinds.ts'
import { rpmOf } from '../units/rpm.ts'
import { comparisonsOf } from './comparisons.ts'
import { Motion } from './motion.ts'
import type { Comparison, QuantityId } from './quantity.ts'
import { averaged } from './run.ts'
import { quantityWords } from './sentences.ts'

/** A channel that a build predicts. */
export type FittedChannelId = 'rpm' | 'groundSpeed' | 'packVolts' | 'amps' | 'temperature'

export const fittedChannelWords: Readonly<
  Record<FittedChannelId, { readonly label: string; readonly kind: QuantityKind }>
> = {
  rpm: { label: 'Motor rpm', kind: 'rpm' },
  groundSpeed: quantityWords.groundSpeed,
  packVolts: { label: 'Pack volts', kind: 'volts' },
  amps: quantityWords.amps,
  temperature: quantityWords.temperature,
}

/** A channel as it was measured, as the build predicted it, and as it does with what a fit offers taken. */
export interface FittedChannel {
  readonly id: FittedChannelId
  /** Of each sample: segment from 0, and s in it. */
  readonly segments: readonly number[]
  readonly seconds: readonly number[]
  /** rpm, m/s, V, A or °C. */
  readonly measured: Float64Array
  /** Null: the build lacks an entry that it takes. */
  readonly before: Float64Array | null
  readonly after: Float64Array
}

/** Less of a share than this, and the fit has left a channel as it was. */
const leastMove = 0.01

/** Past this times the error before, a fit is said to have made a prediction worse. */
const muchWorse = 1.2

/** A build with everything that a fit offers taken; null where it offers nothing. */
function fittedBuild(build: Build, { entries }: FitAnswer): Build | null {
  const offered = entries.flatMap(({ path, value }) => (value === null ? [] : [{ path, value }]))
  const setter = buildSetter(
    build,
    offered.map(({ path }) => path),
  )
  return offered.length === 0 ? null : setter(Float64Array.from(offered, ({ value }) => value))
}

/**
 * The channels of a run as a build predicts them before and after a fit: speed and current from what drove it, pack volts
 * from the current, temperature from both, each by the model that *Validate* uses.
 *
 * Nothing where the fit offers nothing. Of a long log means are compared.
 */
export function channelsOfFit(build: Build, log: FitLog, answer: FitAnswer): readonly FittedChannel[] {
  const fitted = fittedBuild(build, answer)
  if (fitted === null) return []
  const [before, after] = [machineOf(build), machineOf(fitted)]
  const prepared = preparedOf(averaged(log), before)
  const { driven, heated } = comparisonsOf(prepared, before)
  const found = [
    ...(driven === null ? [] : channelsOf(driven, before, after)),
    ...(heated === null ? onlyAfter(prepared, after) : channelsOf(heated, before, after)),
    ...sagChannels(build, prepared, before, after),
  ]
  const order = Object.keys(fittedChannelWords)
  return found
    .filter(({ measured }) => measured.length > 1)
    .map(inLoggedSegments(log))
    .toSorted((one, other) => order.indexOf(one.id) - order.indexOf(other.id))
}

const channelOf: Readonly<Record<QuantityId, FittedChannelId>> = {
  speed: 'rpm',
  groundSpeed: 'groundSpeed',
  amps: 'amps',
  temperature: 'temperature',
}

function channelsOf(comparison: Comparison, before: Machine, after: Machine): readonly FittedChannel[] {
  const [first, last] = [comparison.predictedBy(before), comparison.predictedBy(after)]
  const { motorPerBelt } = new Motion(before, false)
  return comparison.series.map(({ id, segments, seconds, measured }, at) => {
    // Speeds by the rpm are compared as the belt's by the build's own wheels: back to what was logged.
    const shown = (values: Float64Array = new Float64Array()) =>
      id === 'speed' ? values.map((belt) => rpmOf(belt * motorPerBelt)) : values
    const [own, fitted] = [shown(first[at]), shown(last[at])]
    return { id: channelOf[id], segments, seconds, measured: shown(measured), before: own, after: fitted }
  })
}

/** A temperature that the build could not predict before the fit. */
function onlyAfter(prepared: Prepared, after: Machine): readonly FittedChannel[] {
  const { heated } = comparisonsOf(prepared, after)
  return heated === null
    ? []
    : channelsOf(heated, after, after).map((channel) => ({ ...channel, before: null }))
}

/**
 * V_oc(charge) − I R_b, means over seconds. How full the pack was is not what is asked: the level of each segment is laid
 * through what was measured.
 */
function sagChannels(
  build: Build,
  prepared: Prepared,
  before: Machine,
  after: Machine,
): readonly FittedChannel[] {
  if (!prepared.noise.has('packVolts') || !prepared.noise.has('packAmps')) return []
  const pieces = sagPiecesOf(prepared, before, build.pack.chemistry)
  const all = pieces.flatMap(({ segment, seconds }) => seconds.map((second) => ({ segment, second })))
  const predictedBy = ({ pack }: Machine) => {
    const plain = all.map(({ second }) => second.open - second.amps * pack.resistance)
    const levels = new Map<number, { sum: number; count: number }>()
    all.forEach(({ segment, second }, at) => {
      const { sum, count } = levels.get(segment) ?? { sum: 0, count: 0 }
      levels.set(segment, { sum: sum + second.volts - (plain[at] ?? NaN), count: count + 1 })
    })
    return Float64Array.from(all, ({ segment }, at) => {
      const { sum, count } = levels.get(segment) ?? { sum: 0, count: 1 }
      return (plain[at] ?? NaN) + sum / count
    })
  }
  return [
    {
      id: 'packVolts',
      segments: all.map(({ segment }) => segment),
      seconds: all.map(({ second }) => second.seconds),
      measured: Float64Array.from(all, ({ second }) => second.volts),
      before: predictedBy(before),
      after: predictedBy(after),
    },
  ]
}

/** Root of the mean square of predicted less measured. */
export function errorOf(predicted: Float64Array, measured: Float64Array): number {
  const squares = predicted.reduce((sum, value, at) => sum + (value - (measured[at] ?? NaN)) ** 2, 0)
  return Math.sqrt(squares / measured.length)
}

/** Whether a fit has moved the prediction of a channel by what can be seen. */
export function isMoved({ before, after, measured }: FittedChannel): boolean {
  if (before === null) return true
  const was = errorOf(before, measured)
  return errorOf(after, before) > leastMove * was
}

/** How far a channel's prediction was off, and is, in a sentence. */
export function fittedSentence(channel: FittedChannel, system: UnitSystem): string {
  const { id, before, after, measured } = channel
  const { label, kind } = fittedChannelWords[id]
  const text = (predicted: Float64Array) =>
    formatText(errorOf(predicted, measured), kind === 'temperature' ? 'temperatureDifference' : kind, system)
  if (before === null) return `${label}: off by ${text(after)}; the build could not predict it before.`
  if (!isMoved(channel)) return `${label}: off by ${text(before)}, before and after.`
  const worse = errorOf(after, measured) > muchWorse * errorOf(before, measured)
  const end = worse ? ', which is worse: take these values only once you know why' : ''
  return `${label}: off by ${text(before)} before, ${text(after)} after${end}.`
}
