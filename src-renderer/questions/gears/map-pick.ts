import { pixelAlong } from '../../../shared-engine/draw/readout.ts'
import type { Point, Scene } from '../../../shared-engine/draw/scene.ts'
import type { CandidateMarks } from './map-data.ts'

/** Furthest that a press may miss a mark, px: half of a target that a finger meets. */
const reach = 14

/** The candidate whose mark is pressed: the nearest, one that holds before one that does not; null where there is none. */
export function markAt({ plot }: Scene, marks: CandidateMarks, at: Point): number | null {
  const panel = plot?.panels[0]
  if (plot === null || panel === undefined) return null
  const { frame, y } = panel
  const far = ({ x: across, y: up }: Point) => Math.hypot(across - at.x, up - at.y)
  const near = marks.indices.flatMap((index, place) => {
    const miss = far({
      x: pixelAlong(plot.x, marks.xs[place] ?? NaN, frame.x0, frame.x1),
      y: pixelAlong(y, marks.ys[place] ?? NaN, frame.y0, frame.y1),
    })
    return miss <= reach ? [{ index, miss: miss + (marks.holds[place] === true ? 0 : reach) }] : []
  })
  return near.sort((one, other) => one.miss - other.miss)[0]?.index ?? null
}

/**
 * The candidate that a key leads to, along x among those that hold; null where the key does not step, or nothing holds.
 *
 * @param from the candidate that is chosen; null before the first
 */
export function nextMark(marks: CandidateMarks, from: number | null, key: string): number | null {
  const held = marks.indices
    .map((index, place) => ({
      index,
      x: marks.xs[place] ?? 0,
      y: marks.ys[place] ?? 0,
      holds: marks.holds[place],
    }))
    .filter(({ holds }) => holds === true)
    .sort((one, other) => one.x - other.x || one.y - other.y || one.index - other.index)
    .map(({ index }) => index)
  const line = [...new Set(held)]
  const here = from === null ? -1 : line.indexOf(from)
  const last = line.length - 1
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: Math.min(last, here + 1),
    ArrowLeft: Math.max(0, here < 0 ? last : here - 1),
    Home: 0,
    End: last,
  }
  const next = steps[key]
  return next === undefined ? null : (line[next] ?? null)
}
