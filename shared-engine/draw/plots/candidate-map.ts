import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { absentPlot } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

export interface Candidates {
  readonly x: { readonly label: string; readonly kind: QuantityKind }
  readonly y: { readonly label: string; readonly kind: QuantityKind }
  /** SI, one of each for every candidate drawn. */
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  /** Whether it holds everything that is asked. */
  readonly holds: readonly boolean[]
  /** Indices of those that no other beats in both aims, in order of x. */
  readonly front: readonly number[]
  /** Index of the one that is looked at; null for none. */
  readonly chosen: number | null
  /** How many were tried, where not all are drawn. */
  readonly tried: number
}

/** Room round those that hold, as a share of their span; of the whole span where they are close together. */
const room = 0.6
const leastRoom = 0.06
/** Room at the edges, so that no mark is cut in half. */
const edge = 0.03

/** Ends of an axis: what holds with room round it, within what there is; all of it where nothing holds. */
function endsOf(values: readonly number[], kept: readonly number[]): readonly [number, number] {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const [first, last] = kept.length === 0 ? [low, high] : [Math.min(...kept), Math.max(...kept)]
  const margin = Math.max(room * (last - first), leastRoom * (high - low))
  const [from, to] = [Math.max(low, first - margin), Math.min(high, last + margin)]
  const clear = edge * (to - from)
  return [from - clear, to + clear]
}

function dotsOf({ xs, ys, holds }: Candidates, inView: (index: number) => boolean): Mark[] {
  return [false, true].map((holding): Mark => {
    const mine = holds.flatMap((one, index) => (one === holding && inView(index) ? [index] : []))
    const at = (values: readonly number[]): number[] => mine.map((index) => values[index] ?? 0)
    const look = holding
      ? ({ role: 'series1', marker: 'disc', label: 'holds' } as const)
      : ({ role: 'quiet', marker: 'cross', label: 'does not hold' } as const)
    return { mark: 'dots', ...look, xs: at(xs), ys: at(ys) }
  })
}

function frontOf({ xs, ys, front }: Candidates): Mark[] {
  const at = (values: readonly number[]): number[] => front.map((index) => values[index] ?? 0)
  if (front.length === 0) return []
  return [
    { mark: 'curve', label: 'Best of both', role: 'ink', xs: at(xs), ys: at(ys), marker: 'ring', width: 1.2 },
  ]
}

/**
 * Candidates of a search against two figures: shape and colour say whether they hold what is asked, a line joins the
 * best. The axes end a little past those that hold; what lies further out is counted in the summary.
 */
export function candidateMap(data: Candidates, look: PlotLook): Scene {
  const title = `${data.y.label} over ${data.x.label.toLowerCase()} of each candidate`
  if (data.xs.length === 0) return absentPlot('candidate-map', title, 'No candidate yet.', look)
  const { chosen, xs, ys, holds } = data
  const keptOf = (values: readonly number[]) =>
    values.filter((_, index) => holds[index] === true || index === chosen)
  const [left, right] = endsOf(xs, keptOf(xs))
  const [bottom, top] = endsOf(ys, keptOf(ys))
  const inView = (index: number) => {
    const [x, y] = [xs[index] ?? NaN, ys[index] ?? NaN]
    return x >= left && x <= right && y >= bottom && y <= top
  }
  const now: Mark[] =
    chosen === null
      ? []
      : [
          {
            mark: 'point',
            x: xs[chosen] ?? 0,
            y: ys[chosen] ?? 0,
            label: 'This one',
            role: 'accent',
            size: 6,
          },
        ]
  const held = holds.filter(Boolean).length
  const further = xs.filter((_, index) => !inView(index)).length
  const out = further === 0 ? '' : ` ${further} that do not hold lie further out.`
  return plot({
    name: 'candidate-map',
    title,
    summary: `${data.tried} tried; of those drawn ${held} hold everything that is asked (discs), the rest do not (crosses); ${data.front.length} are the best of both aims.${out}`,
    ...look,
    x: { ...data.x, fromZero: false, low: left, high: right },
    panels: [
      {
        y: { ...data.y, fromZero: false, low: bottom, high: top },
        marks: [...dotsOf(data, inView), ...frontOf(data), ...now],
      },
    ],
  })
}
