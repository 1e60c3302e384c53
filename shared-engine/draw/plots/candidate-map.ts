import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { DotsMark } from '../marks/dots.ts'
import type { Role } from '../role.ts'
import type { Scene } from '../scene.ts'
import type { QuantityKind } from '../../units/kinds.ts'
import { absentPlot } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'

type CandidateStanding = 'within' | 'near' | 'over'

export interface Candidates {
  readonly x: { readonly label: string; readonly kind: QuantityKind }
  readonly y: { readonly label: string; readonly kind: QuantityKind }
  /** SI, one of each for every candidate drawn. */
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  readonly standings: readonly CandidateStanding[]
  /** Indices of those that no other beats in both aims, in order of x. */
  readonly front: readonly number[]
  /** Index of the one that is looked at; null for none. */
  readonly chosen: number | null
  /** How many were tried, where not all are drawn. */
  readonly tried: number
}

const looks: readonly {
  standing: CandidateStanding
  role: Role
  marker: DotsMark['marker']
  label: string
}[] = [
  { standing: 'over', role: 'over', marker: 'cross', label: 'over' },
  { standing: 'near', role: 'near', marker: 'triangle', label: 'near' },
  { standing: 'within', role: 'series1', marker: 'disc', label: 'within' },
]

function dotsOf({ xs, ys, standings }: Candidates): Mark[] {
  return looks.map(({ standing, role, marker, label }): Mark => {
    const mine = standings.flatMap((one, index) => (one === standing ? [index] : []))
    const at = (values: readonly number[]): number[] => mine.map((index) => values[index] ?? 0)
    return { mark: 'dots', role, marker, label, xs: at(xs), ys: at(ys) }
  })
}

function frontOf({ xs, ys, front }: Candidates): Mark[] {
  const at = (values: readonly number[]): number[] => front.map((index) => values[index] ?? 0)
  if (front.length === 0) return []
  return [
    { mark: 'curve', label: 'Best of both', role: 'ink', xs: at(xs), ys: at(ys), marker: 'ring', width: 1.2 },
  ]
}

/** Every candidate of a search against two figures: shape and colour say how it stands, a line joins the best. */
export function candidateMap(data: Candidates, look: PlotLook): Scene {
  const title = `${data.y.label} over ${data.x.label.toLowerCase()} of each candidate`
  if (data.xs.length === 0) return absentPlot('candidate-map', title, 'No candidate yet.', look)
  const { chosen } = data
  const today: Mark[] =
    chosen === null
      ? []
      : [
          {
            mark: 'point',
            x: data.xs[chosen] ?? 0,
            y: data.ys[chosen] ?? 0,
            label: 'This one',
            role: 'accent',
            size: 6,
          },
        ]
  const count = (standing: CandidateStanding): number =>
    data.standings.filter((one) => one === standing).length
  return plot({
    name: 'candidate-map',
    title,
    summary: `${data.tried} tried; of those drawn ${count('within')} are within every limit (discs), ${count('near')} near one (triangles), ${count('over')} over one (crosses); ${data.front.length} are the best of both aims.`,
    ...look,
    x: { ...data.x, fromZero: false },
    panels: [{ y: { ...data.y, fromZero: false }, marks: [...dotsOf(data), ...frontOf(data), ...today] }],
  })
}
