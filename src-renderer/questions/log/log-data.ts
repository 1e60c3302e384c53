import type { Machine } from '../../../shared-engine/index.ts'
import type { LogOverTime, LogPanel } from '../../../shared-engine/draw/plots/log-over-time.ts'
import type { SeriesId } from '../../../shared-engine/log/series.ts'
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
export function logPlotOf({ result, series }: ToldLog, segment: number, machine: Machine): LogOverTime {
  const here = series.filter((one) => one.segment === segment)
  const limits = limitsOf(machine)
  const episodes = result.episodes.filter((one) => one.segment === segment)
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
    episodes: episodes.map(({ kind, start, end, over: isOver }) => ({
      label: episodeNames[kind],
      start,
      end,
      over: isOver,
    })),
  }
}
