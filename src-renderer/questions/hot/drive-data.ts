import { limitOf } from '../../../shared-engine/index.ts'
import type { OverTime, TimeLimit, TimePanel } from '../../../shared-engine/draw/plots/pattern-over-time.ts'
import { tableCsv } from '../../../shared-engine/draw/table.ts'
import { kindUnits } from '../../../shared-engine/units/table.ts'
import type { Passed } from '../../../shared-engine/drive/passed.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import { channels, type Channel } from '../../../shared-engine/drive/series.ts'
import { channelWords } from '../../../shared-engine/drive/words.ts'

type Line = readonly [channel: Channel, label: string]

/**
 * What the plots of a drive show over the same time: temperatures, charge, volts, current, speed and height, and rpm where
 * a bound on it was passed.
 */
export function overTimeOf(run: DriveRun, passed: readonly Passed[]): OverTime {
  const warm: Line[] = [
    ...(run.windingEndC === null ? [] : [['winding', 'Winding'] as const]),
    ...(run.caseEndC === null ? [] : [['case', 'Case'] as const]),
    ...(run.controllerEndC === null ? [] : [['controller', 'Controller'] as const]),
    ...(run.coolantEndC === null ? [] : [['coolant', 'Coolant'] as const]),
    ['pack', 'Cells'],
  ]
  const tooFast = run.watched.some(({ channel, passedAt }) => channel === 'motorRpm' && passedAt !== null)
  return {
    title: `Over the drive: ${run.pattern}`,
    name: 'drive-pattern',
    summary:
      passed.length === 0
        ? 'None of the limits watched on the way is passed.'
        : `Passed on the way: ${passed.map(({ label }) => label).join(', ')}.`,
    seconds: run.series.map(({ seconds }) => seconds),
    panels: [
      { ...panel(run, 'Temperature', warm), fromZero: false },
      panel(run, 'Charge', [['charge', 'Charge']]),
      { ...panel(run, 'Pack volts', [['packVolts', 'Volts']]), fromZero: false },
      panel(run, 'Current', [
        ['motorAmps', 'One motor'],
        ['packAmps', 'Pack'],
      ]),
      ...(tooFast ? [panel(run, 'Motor rpm', [['motorRpm', 'Rpm']])] : []),
      panel(run, 'Ground speed', [['speed', 'Speed']]),
      { ...panel(run, 'Height', [['height', 'Height']]), fromZero: false },
    ],
  }
}

function panel(run: DriveRun, label: string, lines: readonly Line[]): TimePanel {
  return {
    label,
    kind: channelWords[lines[0]?.[0] ?? 'seconds'][1],
    series: lines.map(([channel, words]) => ({
      label: words,
      values: run.series.map((sample) => sample[channel]),
    })),
    limits: lines.flatMap(([channel]) => limitsOn(run, channel)),
  }
}

/** Bounds on a channel; where several stand on one, the nearest, and those that were passed. */
function limitsOn({ watched }: DriveRun, channel: Channel): TimeLimit[] {
  const here = watched.filter((one) => (one.channel as string) === channel)
  const nearest = here.reduce<number | null>(
    (near, { allowed, minimum }) =>
      near === null ? allowed : minimum ? Math.max(near, allowed) : Math.min(near, allowed),
    null,
  )
  return here
    .filter(({ allowed, passedAt }) => passedAt !== null || allowed === nearest)
    .map(({ id, allowed, minimum, passedAt }) => ({
      id,
      label: limitOf(id)?.label ?? id,
      value: allowed,
      beyond: minimum ? ('below' as const) : ('above' as const),
      passedAt,
    }))
}

/** The drive as CSV: every channel in the engine's units, which the headings name. */
export function driveCsv({ series }: DriveRun): string {
  return tableCsv({
    columns: channels.map((channel) => {
      const [label, kind] = channelWords[channel]
      return { label, unit: kindUnits[kind].engine }
    }),
    rows: series.map((sample) => channels.map((channel) => sample[channel])),
  })
}
