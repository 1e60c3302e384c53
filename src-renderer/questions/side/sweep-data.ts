import {
  completeBuild,
  entryInForce,
  figureOf,
  fieldOf,
  type StoredBuild,
} from '../../../shared-engine/index.ts'
import { entryLabelOf } from '../../../shared-engine/compare/compare.ts'
import type { Sweep } from '../../../shared-engine/sweep/sweep.ts'
import type { Sweep as DrawnSweep } from '../../../shared-engine/draw/plots/small-multiples.ts'
import { toEngine } from '../../../shared-engine/units/convert.ts'

/** Numbers of a build that can be varied, with their labels, by part. */
export function sweepEntries(stored: StoredBuild): readonly { path: string; label: string }[] {
  return leavesOf(completeBuild(stored), '')
    .filter((path) => {
      const field = fieldOf(path)
      return (
        field !== undefined &&
        field.kind !== 'text' &&
        field.choices === undefined &&
        field.high !== undefined
      )
    })
    .map((path) => ({ path, label: entryLabelOf(path) }))
}

function leavesOf(value: unknown, path: string): string[] {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    path === '' && (key === 'tolerances' || key === 'version')
      ? []
      : leavesOf(inner, path === '' ? key : `${path}.${key}`),
  )
}

/** Ends to begin with, round what is in force, in the bench unit. */
export function startingEnds(stored: StoredBuild, path: string): { from: number; to: number } {
  const field = fieldOf(path)
  const now = Number(entryInForce(stored, path) ?? field?.low ?? 0)
  const { low = -Infinity, high = Infinity } = field ?? {}
  const reach = field?.whole === true ? 4 : Number(Math.max(Math.abs(now) * 0.3, 1e-3).toPrecision(1))
  const round = (value: number) => Number(value.toPrecision(6))
  return { from: Math.max(low, round(now - reach)), to: Math.min(high, round(now + reach)) }
}

/** A sweep as its plots take it: SI, limits crossed at their place. */
export function drawnSweep(sweep: Sweep): DrawnSweep {
  const { field, points, today } = sweep
  const si = (value: number) => toEngine(value, field.kind)
  const [first, last] = [points[0]?.value ?? 0, points.at(-1)?.value ?? 0]
  const inside = today !== null && today.value >= first && today.value <= last
  return {
    x: { label: sweep.label, kind: field.kind },
    xs: points.map((point) => si(point.value)),
    today: inside ? si(today.value) : null,
    figures: sweep.measures.map((measure, at) => ({
      name: measure.name,
      label: figureOf(measure.name)?.label ?? measure.label,
      kind: measure.kind,
      ys: points.map((point) => point.figures[at] ?? null),
      today: inside ? (today.figures[at] ?? null) : null,
      crossings: sweep.crossings.map(({ value, label, id, goesOver }, place) => ({
        at: si(value),
        label: String(place + 1),
        means: `${label} ${goesOver ? 'over' : 'kept'} from here`,
        limit: id,
      })),
    })),
  }
}
