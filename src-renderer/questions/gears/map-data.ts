import type { Candidates } from '../../../shared-engine/draw/plots/candidate-map.ts'
import type { Found } from './search.svelte.ts'

/** Marks drawn at most: more would neither be told apart nor painted within a frame. */
const mostMarks = 1500
const mostWhileRunning = 400

/** The map, and which candidate each of its marks is. */
export interface CandidateMarks extends Candidates {
  readonly indices: readonly number[]
}

/**
 * What the map of candidates shows: one mark for each cell of candidates, thinned evenly where there are too many, and
 * the table's rows always, the front's among them joined.
 */
export function mapData({ plan, outcome, end }: Found, looked: number | null): CandidateMarks {
  const [across, up] = plan.map
  const { map, rows } = outcome
  const every = Math.max(1, Math.ceil(map.index.length / (end === null ? mostWhileRunning : mostMarks)))
  const marks = Array.from(map.index.keys())
    .filter((place) => place % every === 0)
    .map((place) => ({
      index: map.index[place] ?? -1,
      x: map.x[place] ?? 0,
      y: map.y[place] ?? 0,
      holds: map.holds[place] === 1,
    }))
  const measured = rows.map((row) => {
    const value = (name: string): number | null =>
      name === 'worstMargin'
        ? row.margin
        : (plan.aims
            .map(({ measure }, at) => (measure.name === name ? (row.aims[at] ?? null) : null))
            .find((one) => one !== null) ??
          (row.figures as Readonly<Record<string, number | null>>)[name] ??
          null)
    return { index: row.index, x: value(across.name), y: value(up.name), holds: true }
  })
  const own = measured.filter(
    (mark): mark is typeof mark & { x: number; y: number } => mark.x !== null && mark.y !== null,
  )
  const all = [...marks, ...own]
  const front = plan.aims.length < 2 ? [] : own.map((_, at) => marks.length + at)
  const chosen = all.findLastIndex((mark) => mark.index === looked)
  return {
    x: { label: across.label, kind: across.kind },
    y: { label: up.label, kind: up.kind },
    xs: all.map((mark) => mark.x),
    ys: all.map((mark) => mark.y),
    holds: all.map((mark) => mark.holds),
    indices: all.map((mark) => mark.index),
    front: front.toSorted((one, other) => (all[one]?.x ?? 0) - (all[other]?.x ?? 0)),
    chosen: chosen < 0 ? null : chosen,
    tried: outcome.looked,
  }
}
