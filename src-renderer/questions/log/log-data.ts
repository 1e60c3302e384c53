import type { Machine } from '../../../shared-engine/index.ts'
import type { LogOverTime, LogPanel } from '../../../shared-engine/draw/plots/log-over-time.ts'
import type { Episode } from '../../../shared-engine/log/episodes/episode.ts'
import type { LogSeries, SeriesId } from '../../../shared-engine/log/series.ts'
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

/** A part of a segment that is looked at, s. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** A series within a span, with a sample either side so that its lines reach the edges; none where it has nothing there. */
function within(series: LogSeries, { from, to }: Span): readonly LogSeries[] {
  const { seconds, values, range } = series
  const first = Math.max(0, seconds.findIndex((time) => time >= from) - 1)
  const after = seconds.findIndex((time) => time > to)
  const last = after < 0 ? seconds.length : after + 1
  if (seconds.length === 0 || (seconds.at(-1) ?? 0) < from || (seconds[0] ?? 0) > to) return []
  const cut = <T>(list: readonly T[]) => list.slice(first, last)
  return [
    {
      ...series,
      seconds: cut(seconds),
      values: cut(values),
      ...(range === undefined ? {} : { range: { low: cut(range.low), high: cut(range.high) } }),
    },
  ]
}

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

/** One segment of a log as a plot: only what the log has, gaps left open. */
export function logPlotOf(
  { result, series }: ToldLog,
  segment: number,
  machine: Machine,
  span: Span | null = null,
): LogOverTime {
  const own = series.filter((one) => one.segment === segment)
  const here = span === null ? own : own.flatMap((one) => within(one, span))
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
        const found = here.find((one) => one.id === id)
        return found === undefined ? [] : [{ ...found, label }]
      })
      const bounds = lines.flatMap(([id]) => (curves.some((one) => one.id === id) ? (limits[id] ?? []) : []))
      return curves.length === 0 ? [] : [{ ...words, curves, limits: bounds }]
    }),
    episodes: episodes.map(({ kind, start, end, spunUntil, over: isOver }) => ({
      label: episodeNames[kind],
      start: Math.max(start, span?.from ?? start),
      end: Math.min(spunUntil ?? end, span?.to ?? Infinity),
      over: isOver,
    })),
  }
}
