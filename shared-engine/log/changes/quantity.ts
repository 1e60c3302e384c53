import type { QuantityKind } from '../../units/kinds.ts'
import type { Measure } from './stretch.ts'

/** A condition of a comparison; its cells' width in the measure's unit, null for sixths of what both runs reach. */
interface Condition {
  readonly measure: Measure
  readonly width: number | null
}

/** Something of which two runs are compared. */
export interface Compared {
  readonly id: ChangeId
  readonly label: string
  readonly kind: QuantityKind
  readonly of: Measure
  /** Has to be alike, and has to be known in both runs. */
  readonly at: Measure
  /** Has to be alike where both know it. */
  readonly also: readonly Condition[]
  /** What a line takes out inside a cell too, for want of what a build says of it. */
  readonly lines: readonly Measure[]
  /** Stretches at a steady speed alone; what is left of a change of speed is taken into account. */
  readonly steady: boolean
  /** s of a stretch. */
  readonly seconds: number
}

export type ChangeId =
  | 'pack-amps'
  | 'consumption'
  | 'motor-amps'
  | 'speed-at-duty'
  | 'speed-at-throttle'
  | 'pack-ohms'
  | 'motor-warming'
  | 'controller-warming'

const temperature: Condition = { measure: 'motorC', width: 10 }
const charge: Condition = { measure: 'charge', width: 0.1 }
const short = 4
const long = 20

/** What two runs are compared in, each only where both logged it. Widths and lengths: common practice, no source. */
export const compared: readonly Compared[] = [
  {
    id: 'pack-amps',
    label: 'Pack current at the same speed',
    kind: 'amps',
    of: 'packAmps',
    at: 'speed',
    also: [temperature, charge],
    lines: [],
    steady: true,
    seconds: short,
  },
  {
    id: 'consumption',
    label: 'Energy per kilometre at the same speed',
    kind: 'wattHoursPerKilometre',
    of: 'consumption',
    at: 'speed',
    also: [temperature, charge],
    lines: [],
    steady: true,
    seconds: short,
  },
  {
    id: 'motor-amps',
    label: 'Current of one motor at the same speed',
    kind: 'amps',
    of: 'motorAmps',
    at: 'speed',
    also: [temperature, charge],
    lines: [],
    steady: true,
    seconds: short,
  },
  {
    id: 'speed-at-duty',
    label: 'Speed at the same volts on the motor, by the duty',
    kind: 'speed',
    of: 'speed',
    at: 'dutyVolts',
    also: [temperature],
    lines: [],
    steady: true,
    seconds: short,
  },
  {
    id: 'speed-at-throttle',
    label: 'Speed at the same volts on the motor, by the throttle',
    kind: 'speed',
    of: 'speed',
    at: 'throttleVolts',
    also: [temperature],
    lines: [],
    steady: true,
    seconds: short,
  },
  {
    id: 'motor-warming',
    label: 'Warming of the motor in a minute at the same current',
    kind: 'temperatureDifference',
    of: 'motorWarming',
    at: 'heatAmps',
    also: [temperature],
    lines: ['motorC'],
    steady: false,
    seconds: long,
  },
  {
    id: 'controller-warming',
    label: 'Warming of the controller in a minute at the same current',
    kind: 'temperatureDifference',
    of: 'controllerWarming',
    at: 'heatAmps',
    also: [{ measure: 'controllerC', width: 10 }],
    lines: ['controllerC'],
    steady: false,
    seconds: long,
  },
]

/** The resistance of the pack, which is not a mean of stretches but a slope over them. */
export const packOhms = {
  id: 'pack-ohms',
  label: 'Resistance of the pack',
  kind: 'ohms',
  seconds: short,
} as const

const labels = new Map<ChangeId, Pick<Compared, 'label' | 'kind'>>(
  [...compared, packOhms].map((one) => [one.id, one]),
)

/** What a quantity is called, and its kind. */
export function changeWords(id: ChangeId): Pick<Compared, 'label' | 'kind'> {
  return labels.get(id) ?? { label: id, kind: 'none' }
}

/** What conditions are called, and their kinds. */
export const conditionWords: Readonly<
  Partial<Record<Measure, { readonly label: string; readonly kind: QuantityKind }>>
> = {
  speed: { label: 'speed', kind: 'speed' },
  packAmps: { label: 'pack current', kind: 'amps' },
  heatAmps: { label: 'current of one motor', kind: 'amps' },
  dutyVolts: { label: 'duty times pack volts', kind: 'volts' },
  throttleVolts: { label: 'throttle times pack volts', kind: 'volts' },
  motorC: { label: 'motor temperature', kind: 'temperature' },
  controllerC: { label: 'controller temperature', kind: 'temperature' },
  charge: { label: 'charge', kind: 'fraction' },
}
