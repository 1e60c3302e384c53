import type { Machine } from '../machine/parts.ts'
import type { Evaluation } from '../cases/evaluation.ts'
import { figureOf, figureTable } from '../figures/table.ts'
import { failed, succeeded, type Mistake, type Result } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import { readEntry } from '../units/entry.ts'
import type { QuantityKind } from '../units/kinds.ts'
import { kindUnits } from '../units/table.ts'
import { secondsToSpeed } from './seconds-to.ts'
import type { SpaceQuantity, StoredMeasure } from './space-schema.ts'

/** What a search can aim for, hold in bounds or draw its map over: a figure of `check`, or one of its own. */
export interface Measure {
  /** The figure's name; `secondsTo` with its speed (`secondsTo 8.3`). */
  readonly name: string
  readonly label: string
  readonly kind: QuantityKind
  /** Whether only jams decide it. */
  readonly ofMishaps: boolean
  /**
   * NaN where it does not exist.
   * @param worst the ledger's worst margin
   */
  value(e: Evaluation, machine: Machine, worst: number): number
}

/** The ledger's worst margin: how much is in hand, whatever the limit. −Infinity, one that can't be formed, is none. */
const worstMarginMeasure: Measure = {
  name: 'worstMargin',
  label: 'Worst margin',
  kind: 'fraction',
  ofMishaps: false,
  value: (_e, _machine, worst) => worst,
}

/** Names that a space may use, for sentences. */
const named = `worstMargin, secondsTo, or a figure of check such as ${figureTable
  .slice(0, 4)
  .map((figure) => figure.name)
  .join(', ')}`

const mistake = (code: Mistake['code'], path: string, value: unknown, allowed: string): Mistake => ({
  code,
  path,
  value: value === undefined ? '' : shown(value),
  allowed,
  kept: '',
})

/**
 * A quantity of a space in the engine's unit of its kind: a plain number is in it already, a text brings its unit.
 *
 * @example quantityOf('36 km/h', 'speed', 'aim.speed') // { ok: true, value: 10 }
 */
export function quantityOf(typed: SpaceQuantity, kind: QuantityKind, path: string): Result<number> {
  if (typeof typed === 'number') return succeeded(typed)
  const read = readEntry(typed, kind, { unit: kindUnits[kind].engine, path })
  if (read.ok) return succeeded(read.value.value)
  // The reader speaks of the field that is typed into; in a file the place has to be named.
  const allowed = read.mistakes[0]?.allowed ?? ''
  return failed([mistake('quantity-not-understood', path, typed, allowed)])
}

/** The measure that a space names, or what is wrong with the name or its speed. */
export function measureOf(stored: StoredMeasure, path: string): Result<Measure> {
  if (stored.figure === 'secondsTo') return secondsToMeasure(stored, path)
  if (stored.speed !== undefined) {
    return failed([
      mistake('unknown-space-key', `${path}.speed`, undefined, 'only with "figure": "secondsTo"'),
    ])
  }
  if (stored.figure === 'worstMargin') return succeeded(worstMarginMeasure)
  const figure = figureOf(stored.figure)
  if (figure === undefined)
    return failed([mistake('unknown-subject', `${path}.figure`, stored.figure, named)])
  const { name, label, kind, ofMishaps } = figure
  return succeeded({ name, label, kind, ofMishaps, value: (e, machine) => figure.value(e, machine) })
}

function secondsToMeasure({ speed }: StoredMeasure, path: string): Result<Measure> {
  const at = `${path}.speed`
  const asked = 'the speed to reach, such as "30 km/h"'
  if (speed === undefined) return failed([mistake('missing', at, undefined, asked)])
  const read = quantityOf(speed, 'speed', at)
  if (!read.ok) return read
  const metresPerSecond = read.value
  if (!(metresPerSecond > 0)) return failed([mistake('out-of-range', at, speed, `above 0: ${asked}`)])
  return succeeded({
    name: `secondsTo ${metresPerSecond}`,
    label: 'Time from rest to a speed',
    kind: 'time',
    ofMishaps: false,
    value: (e, machine) => secondsToSpeed(e, machine, metresPerSecond),
  })
}
