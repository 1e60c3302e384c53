import { isDecisive, limitGroups, type LimitGroup } from '../limits/group.ts'
import { entryAt } from '../entries/edit.ts'
import type { Machine } from '../machine/parts.ts'
import type { StoredBuild } from '../entries/schema.ts'
import type { Limit } from '../limits/limit.ts'
import { limitNamed, limitsOf } from '../limits/table.ts'
import type { Mistake } from '../mistakes/mistake.ts'
import { shown } from '../mistakes/shown.ts'
import { measureOf, quantityOf, type Measure } from './space-measure.ts'
import type { StoredBound, StoredSpace } from './space-schema.ts'

/** Something that a candidate has to hold. */
export type Hold =
  /** A limit's margin is at least this. A limit that the candidate's ledger leaves out asks nothing. */
  | { readonly type: 'margin'; readonly limit: Limit; readonly least: number }
  /** A figure exists and is at least, or at most, this. */
  | { readonly type: 'atLeast' | 'atMost'; readonly measure: Measure; readonly bound: number }
  /** A figure that is aimed for exists. */
  | { readonly type: 'exists'; readonly measure: Measure }

/** The limit that says whether a machine gets going; one that does not is no candidate. */
const start = 'vehicle.start'

const mistake = (code: Mistake['code'], path: string, value: string, allowed: string): Mistake => ({
  code,
  path,
  value: value === '' ? '' : shown(value),
  allowed,
  kept: '',
})

/** `stage.*` and the like as an expression; a star stands for any characters. */
function expressionOf(pattern: string): RegExp {
  const parts = pattern.split('*').map((part) => part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'))
  return new RegExp(`^${parts.join('.*')}$`)
}

const groupNamed = (word: string): LimitGroup | undefined => limitGroups.find((group) => group === word)

/**
 * Whether a pattern means a limit: a star alone means those of ordinary use, a mishap has to be asked for; the name of a
 * group means all of it.
 */
function fittingOf(pattern: string): (limit: Limit) => boolean {
  const named = groupNamed(pattern)
  if (named !== undefined) return ({ group }) => group === named
  if (pattern === '*') return ({ group }) => isDecisive(group)
  const expression = expressionOf(pattern)
  return ({ id }) => expression.test(id)
}

/**
 * The limits that a space holds, each with the least margin of the most particular pattern that fits it: the one with
 * the most letters of its own, of equal ones the last.
 */
export function marginHoldsOf(
  stored: StoredBuild,
  machine: Machine,
  space: StoredSpace,
  mistakes: Mistake[],
): Hold[] {
  const margins = Object.entries(space.hold?.margins ?? {})
  const limits = limitsOf(machine)
  for (const [pattern] of margins) reportPattern(pattern, stored, limits, space, mistakes)
  const patterns = margins
    .map(([pattern, least]) => ({
      fits: fittingOf(pattern),
      own: pattern.replaceAll('*', '').length,
      least,
    }))
    .sort((one, other) => one.own - other.own)
  return limits.flatMap((limit): Hold[] => {
    const asked = patterns.findLast(({ fits }) => fits(limit))?.least ?? null
    // The least positive number: at a margin of exactly 0 there is no equilibrium.
    const least = limit.id === start ? Math.max(asked ?? 0, Number.MIN_VALUE) : asked
    return least === null ? [] : [{ type: 'margin', limit, least }]
  })
}

function reportPattern(
  pattern: string,
  stored: StoredBuild,
  limits: readonly Limit[],
  space: StoredSpace,
  mistakes: Mistake[],
): void {
  if (groupNamed(pattern) !== undefined) return
  const at = `hold.margins.${pattern}`
  const expression = expressionOf(pattern)
  const fitting = limits.filter((limit) => expression.test(limit.id))
  if (fitting.length === 0) {
    const known = limitNamed(pattern) !== undefined
    const allowed = `* for all, or of ${limits.map((limit) => limit.id).join(', ')}`
    mistakes.push(mistake(known ? 'no-such-limit' : 'unknown-subject', at, pattern, allowed))
    return
  }
  if (pattern.includes('*')) return
  // Asked for by name, and yet it could never be in the ledger: holding it would be an empty promise.
  const varied = Object.hasOwn(space.vary, 'motor')
  const missing = fitting
    .flatMap((limit) => limit.needs)
    .filter((path) => entryAt(stored, path) === undefined && !(varied && path.startsWith('motor.')))
  if (missing.length > 0)
    mistakes.push(mistake('no-such-limit', at, pattern, `with ${missing.join(', ')} in the build`))
}

/** The bounds on figures that a space asks for. */
export function boundHoldsOf(space: StoredSpace, mistakes: Mistake[]): Hold[] {
  return (space.hold?.figures ?? []).flatMap((stored, place) =>
    boundsOf(stored, `hold.figures.${place}`, mistakes),
  )
}

function boundsOf(stored: StoredBound, path: string, mistakes: Mistake[]): Hold[] {
  const measure = measureOf(stored, path)
  if (!measure.ok) {
    mistakes.push(...measure.mistakes)
    return []
  }
  if (stored.atLeast === undefined && stored.atMost === undefined) {
    mistakes.push(mistake('no-bound', path, '', '"atLeast", "atMost" or both'))
  }
  return (['atLeast', 'atMost'] as const).flatMap((type): Hold[] => {
    const typed = stored[type]
    if (typed === undefined) return []
    const bound = quantityOf(typed, measure.value.kind, `${path}.${type}`)
    if (bound.ok) return [{ type, measure: measure.value, bound: bound.value }]
    mistakes.push(...bound.mistakes)
    return []
  })
}
