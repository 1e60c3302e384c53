import { pattern as patternRows } from '../entries/parts/pattern.ts'
import { defaultPattern } from '../reference/heat.ts'
import type { Build } from '../entries/schema.ts'
import { siOf } from './si.ts'

type StoredPattern = NonNullable<Build['service']['pattern']>
type StoredRow = StoredPattern['rows'][number]

/** One row of a drive pattern in SI; `null`: that of the build. */
export interface PatternRowPart {
  /** s. */
  readonly seconds: number
  readonly kind: 'throttle' | 'speed' | 'topShare' | 'brake'
  /** Throttle or brake 0 to 1, speed m/s, share of the top speed. */
  readonly value: number
  readonly grade: number | null
  readonly load: number | null
  readonly tow: number | null
  readonly resistanceShare: number
  readonly gripShare: number
  readonly turnShare: number
}

/** What the machine is driven through. */
export interface PatternPart {
  readonly name: string | null
  readonly rows: readonly PatternRowPart[]
}

const rowIn = siOf(patternRows.entries.rows.item.entries)

/** A drive pattern in SI; a rule of the build sees to it that every row asks for one thing. */
export function patternPartOf(stored: StoredPattern | undefined): PatternPart {
  if (stored === undefined) return ownPattern
  const { name, rows } = stored
  return { name: name ?? null, rows: rows.map(rowPartOf) }
}

function rowPartOf(row: StoredRow): PatternRowPart {
  const si = rowIn(row)
  const asked = (
    [
      ['throttle', si('throttlePercent')],
      ['speed', si('speedKmh')],
      ['topShare', si('speedPercent')],
      ['brake', si('brakePercent')],
    ] as const
  ).find(([, value]) => value !== null)
  return {
    seconds: si('seconds'),
    kind: asked?.[0] ?? 'throttle',
    value: asked?.[1] ?? 0,
    grade: si('gradePercent'),
    load: si('loadKg'),
    tow: si('towForceN'),
    resistanceShare: si('resistancePercent'),
    gripShare: si('gripPercent'),
    turnShare: si('turnPercent'),
  }
}

/** The pattern of a build that has none. */
const ownPattern: PatternPart = {
  name: defaultPattern.name,
  rows: defaultPattern.rows.map((row) =>
    rowPartOf({ resistancePercent: 100, gripPercent: 100, turnPercent: 0, ...row }),
  ),
}
