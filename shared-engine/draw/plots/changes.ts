import { changeRow, sideNames } from '../../log/changes/sentences.ts'
import { changeWords } from '../../log/changes/quantity.ts'
import type { Change, Changes } from '../../log/changes/result.ts'
import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Scene } from '../scene.ts'
import { absentPlot, type PlotLook } from './plot-look.ts'

const name = 'changes'
const title = 'Differences under like conditions, with their scatter'

const rowHeight = 34
/** Parts further out than this say no more than "far". */
const furthest = 1

const held = (part: number): number => Math.max(-furthest, Math.min(furthest, part))

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
        note: changeRow(change, look.system).difference,
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
  const [before] = sideNames(against)
  const zero: Mark = { mark: 'rule', axis: 'x', value: 0, label: '', role: 'ink' }
  return plot({
    name,
    title,
    summary: `${rows.filter(({ told }) => told).length} of ${rows.length} differences are told from nothing (filled). Bars hold 95 of 100, crosses are one standard deviation of a single stretch.`,
    system: look.system,
    size: { width: look.size.width, height: rows.length * rowHeight + 64 },
    x: {
      label: `Difference, part of ${against === 'log' ? before.toLowerCase() : 'what the build says'}`,
      kind: 'fraction',
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
