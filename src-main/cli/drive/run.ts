import { existsSync } from 'node:fs'
import { limitOf } from '../../../shared-engine/limits/table.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { QuantityKind, UnitSystem } from '../../../shared-engine/units/kinds.ts'
import { demoPatternOf, demoPatterns } from '../../../shared-engine/drive/demos.ts'
import { readPattern } from '../../../shared-engine/drive/read.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import { DriveUnderWay, mostSteps } from '../../../shared-engine/drive/run.ts'
import { channels } from '../../../shared-engine/drive/series.ts'
import { energySinks, type Pattern } from '../../../shared-engine/drive/drive.ts'
import { channelWords, peakWords, sinkWords } from '../../../shared-engine/drive/words.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { buildOf, contentOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { systemOf } from '../option-values.ts'
import { mistake, report, reportStopped } from '../trouble.ts'
import { untilStopped } from '../until-stopped.ts'
import { jsonText } from '../json.ts'

/** Drives a pattern and prints what came of it; gives the exit code. */
export async function driveBuild(
  file: string,
  asked: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  if (readsInputTwice([file, asked], io)) return exit.unreadable
  const build = buildOf(file, io)
  const pattern = patternOf(asked, io)
  if (build === null || pattern === null) return exit.unreadable
  const run = await followed(new DriveUnderWay(build, pattern), io)
  if (run === null) return reportStopped(io, file)
  if (options['json'] === true) {
    io.out(jsonText({ format: 'pitchline-drive', version: 1, ...run }))
  } else if (options['csv'] === true) {
    const rows = run.series.map((sample) => channels.map((channel) => sample[channel]).join(','))
    io.out(`${[channels.join(','), ...rows].join('\n')}\n`)
  } else io.out(driveText(run, systemOf(options)))
  const passed = run.overContinuous.length > 0 || run.watched.some(({ passedAt }) => passedAt !== null)
  return passed || run.end !== 'finished' ? exit.over : exit.within
}

/** ms of work between two looks at whether somebody wants it stopped. */
const slice = 100

/** Follows a drive to its end, or until Ctrl-C; null where that came before its first moment. */
async function followed(drive: DriveUnderWay, io: Io): Promise<DriveRun | null> {
  const part = drive.seconds / 2000
  await untilStopped(io, (progress) => {
    const from = performance.now()
    while (!drive.isOver && performance.now() - from < slice) drive.until(drive.time + part)
    progress(Math.floor(drive.time), drive.seconds, ' s')
    return drive.isOver
  })
  return drive.isOver || drive.time > 0 ? drive.result() : null
}

function patternOf(asked: string, io: Io): Pattern | null {
  const demo = existsSync(asked) ? undefined : demoPatternOf(asked)
  if (demo !== undefined) return demo
  if (existsSync(asked) || asked === '-' || asked.endsWith('.json')) return contentOf(asked, readPattern, io)
  const allowed = `a file, or ${demoPatterns.map(({ name }) => `"${name}"`).join(', ')}`
  report(io, 'pitchline', [mistake('unknown-pattern', { value: `"${oneLine(asked, 60)}"`, allowed })])
  return null
}

const ends: Readonly<Record<DriveRun['end'], string>> = {
  finished: 'Driven to its end',
  reserve: 'The charge reached the reserve',
  'too-hot': 'The winding passed 300 °C',
  'too-stiff': 'It could not be followed further',
  'too-long': `It took more than ${mostSteps.toLocaleString('en')} steps and was not followed further`,
  stopped: 'Stopped by Ctrl-C',
}

const seconds = (value: number) => formatText(value, 'time', 'metric')

function driveText(run: DriveRun, system: UnitSystem): string {
  const shown = (value: number, kind: QuantityKind) => formatText(value, kind, system)
  const line = (label: string, value: string, moment = '') =>
    `  ${label.padEnd(34)} ${value.padStart(12)}${moment}`
  const peaks = run.peaks.map(({ channel, value, seconds: at }) => {
    const [name, kind] = channelWords[channel]
    return line(peakWords[channel] ?? name, shown(value, kind), `  at ${seconds(at)}`)
  })
  const passed = [
    ...run.watched.flatMap(({ id, passedAt }) =>
      passedAt === null ? [] : [line(limitOf(id)?.label ?? id, 'passed', `  at ${seconds(passedAt)}`)],
    ),
    ...run.overContinuous.map((id) => line(limitOf(id)?.label ?? id, 'over', '  by the RMS of the drive')),
  ]
  const sinks = energySinks.map((name) => line(sinkWords[name], shown(run.energy.sinks[name], 'energy')))
  const lines = [
    ...wrapped(`${oneLine(run.name, 120)}, driven: ${oneLine(run.pattern, 120)}`, 80),
    `${ends[run.end]} after ${seconds(run.seconds)}.`,
    '',
    line('Distance', shown(run.metres, 'distance')),
    line('Charge used', shown(run.chargeDrawn, 'charge')),
    line('Charge left', shown(run.chargeLeft, 'fraction')),
    line('RMS current of one motor', shown(run.motorAmpsRms, 'amps')),
    line('RMS pack current', shown(run.packAmpsRms, 'amps')),
    '',
    'Peaks',
    ...peaks,
    '',
    'Limits passed',
    ...(passed.length === 0 ? ['  none'] : passed),
    '',
    'Where the energy went',
    line('From the pack', shown(run.energy.pack, 'energy')),
    ...sinks,
    line(sinkWords.motion, shown(run.energy.motion, 'energy')),
    '',
    ...run.notes.flatMap((note) => wrapped(`Note: ${note}`, 80, '  ')),
  ]
  return `${lines.join('\n')}\n`
}
