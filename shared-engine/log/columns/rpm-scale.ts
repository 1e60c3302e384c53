import { rpmScalesOf, type ChannelId, type RpmScale } from '../../reference/columns.ts'
import type { LogData } from '../data.ts'
import type { LogModel } from '../model.ts'
import { medianOfOwn, rankOfOwn } from '../order-statistics.ts'

/** How a log's rpm is read. */
export interface RpmReading {
  /** The column that it comes from. */
  readonly source: ChannelId
  /** What the numbers are: `motor`, `electrical`, `sprocket` and others of the table; `given` by a person. */
  readonly meaning: string
  /** Motor rpm over logged rpm. */
  readonly factor: number
  /** Rpm over what the motor would turn unloaded at the logged volts and duty, with that factor; null without enough rows. */
  readonly evidence: number | null
  /** What the heading says it is. */
  readonly declared: string
  /** Every meaning that the evidence allows. */
  readonly fits: readonly string[]
}

/** An rpm reading, and what has to be said of it. */
export interface JudgedRpm {
  readonly reading: RpmReading
  /** The heading's word does not fit the volts, another meaning does. */
  readonly changed: boolean
  /** Nothing fits. */
  readonly odd: boolean
}

const declaredBy: Readonly<Partial<Record<ChannelId, string>>> = {
  rpm: 'motor',
  erpm: 'electrical',
  wheelRpm: 'sprocket',
}

/** What an rpm over Kv·V·δ has to lie in, with the duty known and without. *Source:* common practice, no source. */
const bounds = {
  withDuty: { fits: [0.45, 1.1], stands: [0.33, 1.1] },
  without: { fits: [0.35, 1.1], stands: [0.25, 1.1] },
} as const

/**
 * Finds what a column of rpm counts, by what the motor can turn at the logged volts and duty.
 *
 * q = n/(Kv V δ): an unloaded motor turns nearly 1 of it, a loaded one less. The heading's word stands unless q is out of
 * bounds by far; then the meaning whose q is nearest to 0.9, in ratio.
 *
 * @param unitTimes what brings the column's numbers to rpm
 * @param given a person's factor, which stands
 * *Source:* Drela, First-Order DC Electric Motor Model, for the ratio; bounds and scales: common practice, no source.
 */
export function judgeRpm(
  data: LogData,
  model: LogModel,
  source: ChannelId,
  unitTimes: number,
  given: number | undefined,
): JudgedRpm {
  const { machine } = model
  const scales = rpmScalesOf(machine.motor.polePairs, machine.train.ratio)
  const declared = declaredBy[source] ?? 'motor'
  const own = declaredScale(declared, machine.motor.polePairs, machine.train.ratio)
  const { ratio, withDuty } = evidenceOf(data, model, unitTimes)
  const { fits, stands } = withDuty ? bounds.withDuty : bounds.without
  const allowed = scales.filter(({ factor }) => isIn(ratio * factor, fits))
  const reading = (meaning: string, factor: number): RpmReading => ({
    source,
    meaning,
    factor,
    evidence: Number.isNaN(ratio) ? null : ratio * factor,
    declared,
    fits: allowed.map((scale) => scale.meaning),
  })
  if (given !== undefined) return { reading: reading('given', given), changed: false, odd: false }
  if (Number.isNaN(ratio) || isIn(ratio * own.factor, stands)) {
    return { reading: reading(own.meaning, own.factor), changed: false, odd: false }
  }
  const distance = ({ factor }: RpmScale) => Math.abs(Math.log((ratio * factor) / 0.9))
  const [nearest] = [...allowed].sort((one, other) => distance(one) - distance(other))
  if (nearest === undefined) return { reading: reading(own.meaning, own.factor), changed: false, odd: true }
  return { reading: reading(nearest.meaning, nearest.factor), changed: true, odd: false }
}

const isIn = (value: number, [least, most]: readonly [number, number]) => value >= least && value <= most

function declaredScale(declared: string, polePairs: number, ratio: number): RpmScale {
  const factor = declared === 'electrical' ? 1 / polePairs : declared === 'sprocket' ? ratio : 1
  return { meaning: declared, factor }
}

/** Rows that are too few to tell. */
const fewest = 10

/** Logged rpm over Kv·V·δ; NaN without enough rows. */
function evidenceOf(
  { channels, timeline }: LogData,
  { rpmPerVolt }: LogModel,
  unitTimes: number,
): { readonly ratio: number; readonly withDuty: boolean } {
  const rpm = channels.get('rpm')?.values ?? new Float64Array()
  const volts = channels.get('volts')?.values
  const duty = (channels.get('duty') ?? channels.get('throttle'))?.values
  let most = 0
  for (const value of rpm) if (Number.isFinite(value) && value * unitTimes > most) most = value * unitTimes
  const ratios = new Float64Array(timeline.count)
  let count = 0
  let lastVolts = NaN
  let lastDuty = duty === undefined ? 1 : NaN
  for (let row = 0; row < timeline.count; row += 1) {
    const seen = volts?.[row] ?? NaN
    if (Number.isFinite(seen)) lastVolts = seen
    const set = duty?.[row] ?? NaN
    if (Number.isFinite(set)) lastDuty = set
    const logged = (rpm[row] ?? NaN) * unitTimes
    if (!Number.isFinite(logged) || logged < 0.05 * most || logged <= 0) continue
    if (!(lastVolts > 0) || !(duty === undefined || lastDuty >= 0.5)) continue
    ratios[count] = logged / (rpmPerVolt * lastVolts * lastDuty)
    count += 1
  }
  const withDuty = duty !== undefined
  if (count < fewest) return { ratio: NaN, withDuty }
  const found = ratios.subarray(0, count)
  return { ratio: withDuty ? medianOfOwn(found) : rankOfOwn(found, 0.98), withDuty }
}
