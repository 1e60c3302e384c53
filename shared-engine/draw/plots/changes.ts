import { changeRow } from '../../log/changes/sentences.ts'
import { changeWords } from '../../log/changes/quantity.ts'
import type { Change, Changes } from '../../log/changes/result.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import { namedRows } from '../plot-frame.ts'
import type { Scene } from '../scene.ts'
import { textWidth } from '../text-width.ts'
import { absentPlot, type PlotLook } from './plot-look.ts'

const name = 'changes'
const title = 'Differences under like conditions, with their scatter'

const rowHeight = 34
/** Parts further out than this say no more than "far". */
const furthest = 1

/** The axis reaches as far as this either way, even where nothing differs. */
const least = 0.01

const held = (part: number): number => Math.max(-furthest, Math.min(furthest, part))

/** End of the axis that leaves a column on the right for the differences in words: on the bars they could not be read. */
function roomForNotes(
  rows: readonly Change[],
  notes: readonly string[],
  low: number,
  most: number,
  width: number,
): number {
  const column = 16 + Math.max(...notes.map((note) => textWidth(note, 13)))
  const names = namedRows(rows.map(({ id }) => changeWords(id).label))
  const share = column / Math.max(2 * column, width - names - 14)
  return (most - share * low) / (1 - share)
}

/** Whether the scatter of single stretches is of the quantity itself: a stretch has volts, but no resistance of its own. */
const ownScatter = ({ id }: Change) => id !== 'pack-ohms'

/**
 * What differs between two runs, or a run and its build, as parts of what it was: a bar for the interval of 95 of 100 about
 * the difference, crosses for one standard deviation of a single stretch about it. A bar that is clear of zero is told.
 */
export function changesPlot(
  { against, changes }: Pick<Changes, 'against' | 'changes'>,
  look: PlotLook,
): Scene {
  const rows = changes.filter(({ before }) => Math.abs(before) > 0)
  if (rows.length === 0) return absentPlot(name, title, 'Nothing was alike enough to compare.', look)
  const reach = (sign: number) =>
    rows.map(({ before, difference, within }) => held((difference + sign * within) / Math.abs(before)))
  const [low, most] = [Math.min(-least, ...reach(-1)), Math.max(least, ...reach(1))]
  const notes = rows.map((change) => changeRow(change, look.system).difference)
  const marks = rows.flatMap((change, row): Mark[] => {
    const part = (value: number) => value / Math.abs(change.before)
    const middle = part(change.difference)
    const scatter = ownScatter(change)
      ? Math.max(0, ...change.scatter.flatMap((one) => (one === null ? [] : [part(one)])))
      : 0
    return [
      {
        mark: 'bar',
        row,
        from: held(middle - part(change.within)),
        to: held(middle + part(change.within)),
        label: changeWords(change.id).label,
        role: change.told ? 'accent' : 'quiet',
        note: notes[row] ?? '',
        noteFrom: most,
        hatched: !change.told,
      },
      ...(scatter > 0
        ? [
            {
              mark: 'dots' as const,
              label: 'One stretch',
              role: 'quiet' as const,
              marker: 'cross' as const,
              xs: [held(middle - scatter), held(middle + scatter)],
              ys: [-row, -row],
            },
          ]
        : []),
      { mark: 'point', x: held(middle), y: -row, label: '', role: 'ink', marker: 'diamond', unnamed: true },
    ]
  })
  const zero: Mark = { mark: 'rule', axis: 'x', value: 0, label: '', role: 'ink' }
  return plot({
    name,
    title,
    summary: `${rows.filter(({ told }) => told).length} of ${rows.length} differences are told from nothing (filled). Bars hold 95 of 100, crosses are one standard deviation of a single stretch.`,
    system: look.system,
    size: { width: look.size.width, height: rows.length * rowHeight + 64 },
    x: {
      label: `Difference, part of ${against === 'log' ? 'what it was' : 'what the build says'}`,
      kind: 'fraction',
      low: low - 0.03 * (most - low),
      high: roomForNotes(rows, notes, low, most, look.size.width),
    },
    panels: [
      {
        y: { label: '', kind: 'none', low: 0.4 - rows.length, high: 0.6 },
        rows: rows.map(({ id }) => changeWords(id).label),
        marks: [zero, ...marks],
      },
    ],
  })
}
