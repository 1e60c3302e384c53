import { has } from './course.ts'
import { effectOf, scatterOf, type Effect } from './difference.ts'
import { lessCellMeans } from './matched.ts'
import { packOhms } from './quantity.ts'
import type { Chanced, NotCompared } from './result.ts'
import type { Course, Stretch } from './stretch.ts'

/** A stretch of one of the runs. */
interface Row extends Stretch {
  readonly run: number
}

/** Stretches that each run needs. *Source:* common practice, no source. */
const leastStretches = 12

/** Whether a log shows its pack's resistance. */
export const showsOhms = (course: Course): boolean => has(course, 'amps') && has(course, 'volts')

const complete = ({ means }: Stretch) => Number.isFinite(means.volts) && Number.isFinite(means.packAmps)

/**
 * The pack's resistance in two runs: V = V_run − (R + Δ b) I, with the drift of each run's volts at rest through the charge
 * that it uses; b is 1 in the later run.
 *
 * @param stretches of both runs
 * *Source:* Ohm's law, least squares.
 */
export function ohmsBetween(stretches: readonly (readonly Stretch[])[]): Chanced | NotCompared {
  const rows = stretches.flatMap((list, run) => list.filter(complete).map((one): Row => ({ ...one, run })))
  const cells = rows.map(({ run }) => String(run))
  const amps = (which: (run: number) => boolean) =>
    lessCellMeans(
      rows.map(({ run, means }) => (which(run) ? means.packAmps : 0)),
      cells,
    )
  const counts = stretches.map((_, run) => rows.filter((row) => row.run === run).length)
  const refused: NotCompared = { id: packOhms.id, condition: null, reaches: null }
  if (counts.some((count) => count < leastStretches)) return refused
  const later = amps((run) => run === 1)
  const drifts = driftsOf(rows, cells, counts.length)
  const volts = lessCellMeans(
    rows.map(({ means }) => means.volts),
    cells,
  )
  const follows = rows.map(
    ({ run, window }, at) => rows[at - 1]?.run === run && rows[at - 1]?.window === window - 1,
  )
  const all = amps(() => true)
  const moved = effectOf(later, [all, ...drifts], volts, follows, counts.length)
  const first = effectOf(all, [later, ...drifts], volts, follows, counts.length)
  if (moved === null || first === null) return refused
  return chancedOf(rows, -first.value, -moved.value, moved, [counts[0] ?? 0, counts[1] ?? 0])
}

/**
 * The pack's resistance in a run beside the build's.
 *
 * @param ohms R_b of the build, Ω
 * *Source:* as {@link ohmsBetween}.
 */
export function ohmsFromBuild(stretches: readonly Stretch[], ohms: number): Chanced | null {
  const rows = stretches.filter(complete).map((one): Row => ({ ...one, run: 1 }))
  if (rows.length < leastStretches) return null
  const cells = rows.map(() => '')
  const all = lessCellMeans(
    rows.map(({ means }) => means.packAmps),
    cells,
  )
  // Volts as they are above what the build's resistance leaves of them.
  const volts = lessCellMeans(
    rows.map(({ means }) => means.volts + ohms * means.packAmps),
    cells,
  )
  const follows = rows.map(({ window }, at) => rows[at - 1]?.window === window - 1)
  const moved = effectOf(all, driftsOf(rows, cells, 2), volts, follows, 1)
  return moved === null ? null : chancedOf(rows, ohms, -moved.value, moved, [0, rows.length])
}

/** The charge that a run has used, for each run that knows it; else its time. */
function driftsOf(
  rows: readonly Row[],
  cells: readonly string[],
  runs: number,
): readonly (readonly number[])[] {
  return Array.from({ length: runs }, (_, run) => {
    const own = rows.filter((row) => row.run === run)
    const known = own.every(({ means }) => Number.isFinite(means.charge))
    const drift = rows.map((row) => (row.run === run ? (known ? row.means.charge : row.window) : 0))
    return lessCellMeans(drift, cells)
  }).filter((drift) => drift.some((value) => Math.abs(value) > 1e-9))
}

function chancedOf(
  rows: readonly Row[],
  before: number,
  difference: number,
  effect: Effect,
  stretches: readonly [number, number],
): Chanced {
  const amps = rows.map(({ means }) => means.packAmps)
  const left = (run: number) => scatterOf(effect.left.filter((_, at) => rows[at]?.run === run))
  return {
    chance: effect.chance,
    change: {
      id: packOhms.id,
      before,
      after: before + difference,
      difference,
      within: effect.within,
      told: false,
      // Of the volts of a stretch about its line: a stretch has no resistance of its own.
      scatter: [left(0), left(1)],
      stretches,
      stretchSeconds: packOhms.seconds,
      conditions: [{ measure: 'packAmps', from: Math.min(...amps), to: Math.max(...amps) }],
    },
  }
}
