import table from './columns.json' with { type: 'json' }
import { assertTable } from './table.ts'
import { z } from './zod.ts'

export const channelIds = [
  'time',
  'date',
  'erpm',
  'rpm',
  'wheelRpm',
  'volts',
  'cellVolts',
  'amps',
  'motorAmps',
  'throttle',
  'duty',
  'speed',
  'motorC',
  'controllerC',
  'coolantC',
  'charge',
  'energy',
  'event',
  'altitude',
  'accel',
] as const
/** What a column of a log can mean. */
export type ChannelId = (typeof channelIds)[number]

const logUnitKinds = [
  'time',
  'rpm',
  'volt',
  'amp',
  'part',
  'speed',
  'temp',
  'charge',
  'energy',
  'length',
  'accel',
] as const
/** Kinds of the units that a log's headings use. */
type LogUnitKind = (typeof logUnitKinds)[number]

const factor = z.union([z.number().positive(), z.string().min(1)])
const words = z.array(z.string().min(1))

const columnTableSchema = z.strictObject({
  about: z.string().min(10),
  missing: z.array(z.string()),
  units: z.record(z.enum(logUnitKinds), z.record(z.string(), factor)),
  words: z.record(z.string(), words),
  channels: z.array(
    z.strictObject({
      id: z.enum(channelIds),
      kind: z.enum(logUnitKinds).nullable(),
      any: z.array(words),
      not: words,
    }),
  ),
  implied: z.partialRecord(z.enum(logUnitKinds), z.string()),
  rpmScales: z.record(z.string(), z.string()),
})

const read = assertTable('columns', columnTableSchema, table)

/** A unit of a heading: value in the channel's own unit = (written − zero) · times. */
export interface LogUnit {
  /** As the table has it, lower case. */
  readonly key: string
  readonly kind: LogUnitKind
  readonly times: number
  readonly zero: number
}

/** What a number of the file is in its channel's own unit; without a unit, itself. */
export function inChannelUnit(written: number, unit: LogUnit | null | undefined): number {
  return unit === null || unit === undefined ? written : (written - unit.zero) * unit.times
}

/** Zero of the Celsius scale in kelvin, and the Fahrenheit scale. *Source:* SI Brochure; NIST SP 811, appendix B. */
const scales: Readonly<Record<string, { readonly times: number; readonly zero: number }>> = {
  F: { times: 5 / 9, zero: 32 },
  K: { times: 1, zero: 273.15 },
}

function unitOf(kind: LogUnitKind, key: string, size: number | string): LogUnit {
  if (typeof size === 'number') return { key, kind, times: size, zero: 0 }
  const scale = scales[size]
  if (scale !== undefined) return { key, kind, ...scale }
  const [above = '1', below = '1'] = size.split('/')
  return { key, kind, times: Number(above) / Number(below), zero: 0 }
}

/** Every unit by its key. Channels are in s, rpm, V, A, parts of 1, m/s, °C, A·s, J, m and m/s². */
export const logUnits: ReadonlyMap<string, LogUnit> = new Map(
  logUnitKinds.flatMap((kind) =>
    Object.entries(read.units[kind]).map(([key, size]) => [key, unitOf(kind, key, size)] as const),
  ),
)

/** What stands in a cell for "no value", lower case. */
export const missingWords: ReadonlySet<string> = new Set(read.missing)

/** Classes of each word of a heading. */
export const classesOfWord: ReadonlyMap<string, readonly string[]> = classesByWord()

function classesByWord(): ReadonlyMap<string, readonly string[]> {
  const classes = new Map<string, string[]>()
  for (const [name, list] of Object.entries(read.words)) {
    for (const word of list) classes.set(word, [...(classes.get(word) ?? []), name])
  }
  return classes
}

/** By which words a channel is known, in the order of the table. */
export interface ChannelRow {
  readonly id: ChannelId
  readonly kind: LogUnitKind | null
  readonly any: readonly (readonly string[])[]
  readonly not: readonly string[]
}

export const channelRows: readonly ChannelRow[] = read.channels

/** The class of words that a unit of a kind stands for. */
export function impliedClassOf(kind: LogUnitKind): string | undefined {
  return read.implied[kind]
}

/** A meaning of an rpm column and its factor to the motor's rpm, by pole pairs p and overall ratio G. */
export interface RpmScale {
  readonly meaning: string
  readonly factor: number
}

/**
 * The scales in which recorders write an rpm; of equal factors the first alone.
 *
 * @param polePairs p
 * @param ratio G, motor turns per sprocket turn
 * *Source:* electrical rpm = rpm · pole pairs by definition; tenths, hundredths and counts per pole: common practice, no
 * source.
 */
export function rpmScalesOf(polePairs: number, ratio: number): readonly RpmScale[] {
  const scales: RpmScale[] = []
  for (const [meaning, formula] of Object.entries(read.rpmScales)) {
    const value = factorOf(formula, polePairs, ratio)
    if (!scales.some((scale) => scale.factor === value)) scales.push({ meaning, factor: value })
  }
  return scales
}

/** A product of numbers and symbols, with at most one division: `100/p`, `p G`. */
function factorOf(formula: string, polePairs: number, ratio: number): number {
  const product = (text: string) =>
    text
      .trim()
      .split(/\s+/)
      .map((part) => (part === 'p' ? polePairs : part === 'G' ? ratio : Number(part)))
      .reduce((one, other) => one * other, 1)
  const [above = '1', below = '1'] = formula.split('/')
  return product(above) / product(below)
}
