import type { Machine } from '../../../shared-engine/index.ts'
import type { LogOverTime, LogPanel } from '../../../shared-engine/draw/plots/log-over-time.ts'
import type { Episode } from '../../../shared-engine/log/episodes/episode.ts'
import type { LogSeries, SeriesId } from '../../../shared-engine/log/series.ts'
import { shownOf, type ShownSeries, type Span } from '../../../shared-engine/log/shown.ts'
import type { QuantityKind } from '../../../shared-engine/units/kinds.ts'
import type { ToldLog } from './log.svelte.ts'
import { episodeNames } from './log-words.ts'

interface PanelWords {
  readonly label: string
  readonly kind: QuantityKind
  readonly fromZero: boolean
  readonly lines: readonly (readonly [id: SeriesId, label: string])[]
}

const panels: readonly PanelWords[] = [
  { label: 'Motor rpm', kind: 'rpm', fromZero: true, lines: [['rpm', 'Motor']] },
  { label: 'Pack volts', kind: 'volts', fromZero: false, lines: [['volts', 'Pack']] },
  { label: 'Lowest cell', kind: 'volts', fromZero: false, lines: [['cellVolts', 'Lowest cell']] },
  {
    label: 'Current',
    kind: 'amps',
    fromZero: true,
    lines: [
      ['amps', 'Pack'],
      ['driveAmps', 'Pack, from the sag'],
      ['motorAmps', 'One motor'],
      ['oneMotorAmps', 'One motor, worked out'],
    ],
  },
  { label: 'On the most loaded tooth', kind: 'force', fromZero: true, lines: [['toothN', 'Tooth']] },
  { label: 'Tension of one loop', kind: 'force', fromZero: true, lines: [['tensionN', 'Loop']] },
  {
    label: 'Ground speed',
    kind: 'speed',
    fromZero: true,
    lines: [
      ['speed', 'Logged'],
      ['speedByRpm', 'By the rpm'],
    ],
  },
  {
    label: 'Temperature',
    kind: 'temperature',
    fromZero: false,
    lines: [
      ['motorC', 'Motor’s sensor'],
      ['controllerC', 'Controller'],
      ['coolantC', 'Coolant'],
    ],
  },
  {
    label: 'Throttle',
    kind: 'fraction',
    fromZero: true,
    lines: [
      ['throttle', 'Throttle'],
      ['duty', 'Duty'],
    ],
  },
]

/** Least length of a span that shows something, s. */
const shortest = 0.5

/** A span about a middle, held within a segment; null: all of it. */
export function spanAbout(middle: number, length: number, seconds: number): Span | null {
  const held = Math.max(shortest, length)
  if (held >= seconds) return null
  const from = Math.min(Math.max(0, middle - held / 2), seconds - held)
  return { from, to: from + held }
}

/** What a log is judged by, where it is drawn. */
function limitsOf({ motor, controller, pack }: Machine): Partial<Record<SeriesId, LogPanel['limits']>> {
  const above = (label: string, value: number | null) =>
    value === null ? [] : [{ label, value, beyond: 'above' as const }]
  return {
    rpm: above('Limit', motor.ratedMaxRpm),
    volts: [{ label: 'Floor', value: pack.floorVolts, beyond: 'below' }],
    cellVolts: [{ label: 'Floor', value: pack.floorVolts / pack.series, beyond: 'below' }],
    motorC: above('Motor', motor.maxTemperature),
    controllerC: above('Controller', controller.maxTemperature),
  }
}

/** How many frames the plot of a segment has: as many wherever one looks, so that it keeps its height. */
export function panelsOf({ series }: ToldLog, segment: number): number {
  const has = (id: SeriesId) => series.some((one) => one.segment === segment && one.id === id)
  return panels.filter(({ lines }) => lines.some(([id]) => has(id))).length
}

/** Series of a segment that have something in a span, by their names, as a screen of so many columns shows them. */
function shownIn(
  series: readonly LogSeries[],
  segment: number,
  span: Span,
  columns: number,
): ReadonlyMap<SeriesId, ShownSeries> {
  const shown = new Map<SeriesId, ShownSeries>()
  for (const one of series) {
    const [first, last] = [one.seconds[0] ?? Infinity, one.seconds.at(-1) ?? -Infinity]
    if (one.segment !== segment || first > span.to || last < span.from) continue
    shown.set(one.id, shownOf(one, span, columns))
  }
  return shown
}

/**
 * One segment of a log as a plot: only what the log has, gaps left open.
 *
 * @param columns of the screen, px: no more is drawn than it can show
 */
export function logPlotOf(
  { result, series }: ToldLog,
  segment: number,
  machine: Machine,
  columns: number,
  span: Span | null = null,
): LogOverTime {
  const whole = { from: 0, to: result.segments[segment - 1]?.seconds ?? 0 }
  const here = shownIn(series, segment, span ?? whole, columns)
  const limits = limitsOf(machine)
  const seen = ({ start, end, spunUntil = end }: Episode) =>
    span === null || (spunUntil >= span.from && start <= span.to)
  const episodes = result.episodes.filter((one) => one.segment === segment && seen(one))
  const over = episodes.filter((one) => one.over).length
  return {
    title: `Channels over time${result.segments.length > 1 ? `, segment ${segment}` : ''}`,
    summary: `${episodes.length} marked on the way, of which ${over} passed a limit or broke something.`,
    panels: panels.flatMap(({ lines, ...words }): LogPanel[] => {
      const curves = lines.flatMap(([id, label]) => {
        const found = here.get(id)
        return found === undefined ? [] : [{ ...found, label }]
      })
      const bounds = lines.flatMap(([id]) => (here.has(id) ? (limits[id] ?? []) : []))
      return curves.length === 0 ? [] : [{ ...words, curves, limits: bounds }]
    }),
    span,
    episodes: episodes.map(({ kind, start, end, spunUntil, over: isOver }) => ({
      label: episodeNames[kind],
      start: Math.max(start, span?.from ?? start),
      end: Math.min(spunUntil ?? end, span?.to ?? Infinity),
      over: isOver,
    })),
  }
}
