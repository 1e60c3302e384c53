import type { Mark } from '../marks/kinds.ts'
import { plot } from '../plot.ts'
import type { Role } from '../role.ts'
import type { Scene } from '../scene.ts'
import { absentPlot } from './plot-look.ts'
import type { PlotLook } from './plot-look.ts'
import type { LimitId } from '../../limits/id.ts'

interface LimitBar {
  readonly id: LimitId
  readonly label: string
  /** 1 − share of the limit in use; null where it cannot be formed (over). */
  readonly margin: number | null
  readonly standing: 'within' | 'near' | 'over'
}

/** px of one row. */
const limitBarHeight = 26
/** A bar past this share of its limit is cut off: how far over it is stands in words. */
const longest = 1.6

const roles: Readonly<Record<LimitBar['standing'], Role>> = { within: 'quiet', near: 'near', over: 'over' }

function shareText(margin: number | null): string {
  return margin === null ? 'over' : `${Math.round((1 - margin) * 100)} %`
}

/** Each limit as a bar of how much of it is used, worst first as given; over is hatched and said in a word. */
export function limitBars(rows: readonly LimitBar[], look: PlotLook): Scene {
  const name = 'limit-bars'
  const title = 'Limits in use'
  const worst = rows[0]
  if (worst === undefined) return absentPlot(name, title, 'No limit is known for these entries.', look)
  const bars = rows.map((row, index): Mark => {
    const share = row.margin === null ? longest : Math.min(longest, Math.max(0, 1 - row.margin))
    const word = row.standing === 'within' ? '' : ` ${row.standing}`
    return {
      mark: 'bar',
      row: index,
      from: 0,
      to: share,
      label: row.label,
      role: roles[row.standing],
      note: row.margin === null ? 'over' : `${shareText(row.margin)}${word}`,
      noteFrom: 1,
      hatched: row.standing === 'over',
      limit: row.id,
    }
  })
  const limit: Mark = { mark: 'rule', axis: 'x', value: 1, label: '', role: 'ink' }
  const over = rows.filter((row) => row.standing === 'over').length
  return plot({
    name,
    title,
    summary: `${over} of ${rows.length} limit${rows.length === 1 ? '' : 's'} passed; worst: ${worst.label}, ${shareText(worst.margin)} of what is allowed.`,
    system: look.system,
    size: { width: look.size.width, height: rows.length * limitBarHeight + 64 },
    x: { label: 'Part of the limit in use', kind: 'fraction', low: 0, high: longest + 0.3 },
    panels: [
      {
        y: { label: '', kind: 'none', low: -rows.length + 0.4, high: 0.6 },
        rows: rows.map((row) => row.label),
        marks: [limit, ...bars],
      },
    ],
  })
}
