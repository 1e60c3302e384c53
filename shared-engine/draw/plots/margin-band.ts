import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { namedRows } from '../plot-frame.ts'
import { textWidth } from '../text-width.ts'
import type { Scene } from '../scene.ts'
import { chanceText } from '../../units/chance.ts'
import { absentPlot } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import type { LimitId } from '../../limits/id.ts'

/** How sure a limit's margin is: quantiles over the tolerances. */
interface MarginBand {
  readonly id: LimitId
  readonly label: string
  /** 5th, 50th and 95th percentile of the margin. */
  readonly low: number
  readonly middle: number
  readonly high: number
  /** 0 to 1. */
  readonly probabilityOver: number
}

const rowHeight = 28
/** Margins further out than this say no more than "far". */
const furthest = 1

const held = (margin: number): number => Math.max(-furthest, Math.min(furthest, margin))

const noteOf = ({ probabilityOver }: MarginBand) => `over: ${chanceText(probabilityOver)}`

/** End of the axis that leaves a column on the right for the notes: beside the bars they would jump from row to row. */
function roomForNotes(rows: readonly MarginBand[], low: number, width: number): number {
  const column = 12 + Math.max(...rows.map((row) => textWidth(noteOf(row), 13)))
  const frame = Math.max(1.5 * column, width - namedRows(rows.map(({ label }) => label)) - 14)
  const share = column / frame
  return (furthest - share * low) / (1 - share)
}

/** Each limit's margin as a band from its 5th to its 95th percentile, the middle marked; what lies under zero is over. */
export function marginBands(rows: readonly MarginBand[], look: PlotLook): Scene {
  const name = 'margin-bands'
  const title = 'How sure each margin is'
  const [worst] = rows
  if (worst === undefined) return absentPlot(name, title, 'Tolerances would bring the bands.', look)
  const low = Math.min(-0.2, ...rows.map((row) => held(row.low)))
  const marks = rows.flatMap((row, index): Mark[] => [
    {
      mark: 'bar',
      row: index,
      from: held(row.low),
      to: held(row.high),
      label: row.label,
      role: row.probabilityOver > 0.5 ? 'over' : row.probabilityOver > 0.05 ? 'near' : 'quiet',
      note: noteOf(row),
      noteFrom: furthest,
      hatched: true,
      limit: row.id,
    },
    {
      mark: 'point',
      x: held(row.middle),
      y: -index,
      label: row.label,
      role: 'ink',
      marker: 'diamond',
      unnamed: true,
    },
  ])
  const zero: Mark = { mark: 'rule', axis: 'x', value: 0, label: '', role: 'over', beyond: 'below' }
  return plot({
    name,
    title,
    summary: `${worst.label} is ${chanceText(worst.probabilityOver)} likely to be over; bands run from the 5th to the 95th percentile of the margin, the diamond is the middle.`,
    system: look.system,
    size: { width: look.size.width, height: rows.length * rowHeight + 64 },
    x: {
      label: 'Margin',
      kind: 'fraction',
      low,
      high: roomForNotes(rows, low, look.size.width),
    },
    panels: [
      {
        y: { label: '', kind: 'none', low: 0.4 - rows.length, high: 0.6 },
        rows: rows.map((row) => row.label),
        marks: [zero, ...marks],
      },
    ],
  })
}
