import type { PatternRowPart } from '../machine/parts.ts'
import { fromEngine } from '../units/convert.ts'
import { type askKeys, patternFormat, patternVersion, rowEntries, type RowKey } from './read.ts'
import type { Pattern } from './drive.ts'

/** A number without the rounding that units leave behind. */
const clean = (value: number) => Number(value.toPrecision(12))

const askKeyOf = {
  throttle: 'throttlePercent',
  speed: 'speedKmh',
  topShare: 'speedPercent',
  brake: 'brakePercent',
} as const satisfies Record<PatternRowPart['kind'], (typeof askKeys)[number]>

/** A row as its file holds it: bench units, and nothing that is as it would be anyway. */
type StoredPatternRow = Readonly<Partial<Record<RowKey, number>>>

/** A row as its file holds it. */
function storedRowOf(row: PatternRowPart): StoredPatternRow {
  const held = (key: RowKey, value: number | null) =>
    value === null
      ? {}
      : { [key]: clean(fromEngine(value, rowEntries[key].kind, unitIn[rowEntries[key].kind])) }
  const unless = (key: 'resistancePercent' | 'gripPercent' | 'turnPercent', value: number) => {
    const stored = held(key, value)
    return stored[key] === rowEntries[key].default ? {} : stored
  }
  return {
    ...held('seconds', row.seconds),
    ...held(askKeyOf[row.kind], row.value),
    ...held('gradePercent', row.grade),
    ...held('loadKg', row.load),
    ...held('towForceN', row.tow),
    ...unless('resistancePercent', row.resistanceShare),
    ...unless('gripPercent', row.gripShare),
    ...unless('turnPercent', row.turnShare),
  }
}

/** Units that files hold, by kind. */
const unitIn = { time: 's', fraction: '%', roadSpeed: 'km/h', mass: 'kg', force: 'N' } as const

/** A pattern as its file holds it; the reader says whether it may be. */
export function storedPatternOf({ name, notes, rows }: Pattern) {
  return {
    format: patternFormat,
    version: patternVersion,
    name,
    ...(notes === '' ? {} : { notes }),
    rows: rows.map(storedRowOf),
  }
}

/** A row that asks for something and leaves all else as the build has it. */
export function plainRow(
  kind: PatternRowPart['kind'],
  value: number,
  seconds: number,
  grade: number | null = null,
): PatternRowPart {
  return {
    seconds,
    kind,
    value,
    grade,
    load: null,
    tow: null,
    resistanceShare: 1,
    gripShare: 1,
    turnShare: 0,
  }
}

/** A pattern driven several times over. */
export function repeated(pattern: Pattern, times: number): Pattern {
  const rows = Array.from({ length: Math.max(1, Math.round(times)) }, () => pattern.rows).flat()
  return { ...pattern, name: times > 1 ? `${pattern.name}, ${times} times` : pattern.name, rows }
}
