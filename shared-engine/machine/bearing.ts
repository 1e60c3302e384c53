import { bearing as bearingRows } from '../entries/parts/bearing.ts'
import type { Build } from '../entries/schema.ts'
import { siOf } from './si.ts'

type StoredBearing = NonNullable<NonNullable<Build['track']['shaft']>['bearing']>

/** A rolling bearing of a shaft. */
export interface BearingPart {
  readonly kind: 'ball' | 'roller'
  /** Dynamic load rating, N. */
  readonly dynamic: number
  /** m. */
  readonly bore: number | null
  readonly outer: number | null
}

const bearingIn = siOf(bearingRows.entries)

/** A bearing in SI. */
export function bearingPartOf(bearing: StoredBearing): BearingPart {
  const si = bearingIn(bearing)
  return { kind: bearing.kind, dynamic: si('dynamicN'), bore: si('boreMm'), outer: si('outerMm') }
}
