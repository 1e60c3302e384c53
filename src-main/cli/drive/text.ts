import type { Build } from '../../../shared-engine/entries/schema.ts'
import { energySinks, type Pattern } from '../../../shared-engine/drive/drive.ts'
import { peakNames, type PeakName } from '../../../shared-engine/drive/reading.ts'
import type { DriveRun, EnergyBook } from '../../../shared-engine/drive/result.ts'
import { mostSteps } from '../../../shared-engine/drive/run.ts'
import { peakWords, restTold, restWords, sinkWords } from '../../../shared-engine/drive/words.ts'
import { notesBeside, starvedWords } from '../../../shared-engine/drive/starving.ts'
import { changesFor, passedOf, passedWords, unfollowedOf } from '../../../shared-engine/drive/passed.ts'
import { flowForWeather, flowWords } from '../../../shared-engine/explain/flow-weather.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import type { QuantityKind, UnitSystem } from '../../../shared-engine/units/kinds.ts'

const ends: Readonly<Record<DriveRun['end'], string>> = {
  finished: 'Driven to its end',
  reserve: 'The charge reached the reserve',
  'too-hot': 'The winding passed 300 °C',
  'too-stiff': 'It could not be followed further',
  'too-long': `It took more than ${mostSteps.toLocaleString('en')} steps and was not followed further`,
  stopped: 'Stopped by Ctrl-C',
}

const seconds = (value: number) => formatText(value, 'time', 'metric')

type Line = (label: string, value: string, moment?: string) => string

const line: Line = (label, value, moment = '') => `  ${label.padEnd(38)} ${value.padStart(12)}${moment}`

/** What was driven, by what. */
interface Asked {
  readonly build: Build
  readonly pattern: Pattern
}

/** A drive in plain words, for people. */
export function driveText(run: DriveRun, asked: Asked, system: UnitSystem): string {
  const shown = (value: number, kind: QuantityKind) => formatText(value, kind, system)
  const lines = [
    ...wrapped(`${oneLine(run.name, 120)}, driven: ${oneLine(run.pattern, 120)}`, 80),
    `${ends[run.end]} after ${seconds(run.seconds)}.`,
    ...(run.starved === null ? [] : wrapped(starvedWords(run.starved, system), 80)),
    '',
    ...figureLines(run, shown),
    '',
    'Peaks',
    ...peakLines(run, shown),
    '',
    'Limits passed',
    ...passedLines(run, asked, system),
    '',
    'Where the energy went',
    ...energyLines(run.energy, shown),
    '',
    ...pumpLines(asked.build, shown),
    ...notesBeside(run).flatMap((note) => wrapped(`Note: ${note}`, 80, '  ')),
  ]
  return `${lines.join('\n')}\n`
}

type Shown = (value: number, kind: QuantityKind) => string

function figureLines(run: DriveRun, shown: Shown): string[] {
  const optional = (label: string, value: number | null, kind: QuantityKind) =>
    value === null || value === 0 ? [] : [line(label, shown(value, kind))]
  return [
    line('Distance', shown(run.metres, 'distance')),
    line('Charge used', shown(run.chargeDrawn, 'charge')),
    line('Charge left', shown(run.chargeLeft, 'fraction')),
    line('RMS current of one motor', shown(run.motorAmpsRms, 'amps')),
    line('RMS pack current', shown(run.packAmpsRms, 'amps')),
    ...optional('Fed back into the pack', run.backJoules, 'energy'),
    ...optional('Turning on the spot', run.turnSeconds, 'time'),
    ...optional('Track spinning', run.spinSeconds, 'time'),
    ...optional('Winding at the end', run.windingEndC, 'temperature'),
    ...optional('Case of the motor at the end', run.caseEndC, 'temperature'),
    ...optional('Controller at the end', run.controllerEndC, 'temperature'),
    ...optional('Coolant at the end', run.coolantEndC, 'temperature'),
    line('Cells at the end', shown(run.packEndC, 'temperature')),
  ]
}

/** A temperature that is held is no peak. */
function isFollowed(name: PeakName, run: DriveRun): boolean {
  if (name === 'winding') return run.windingEndC !== null
  if (name === 'controller') return run.controllerEndC !== null
  return name !== 'coolant' || run.coolantEndC !== null
}

function peakLines(run: DriveRun, shown: Shown): string[] {
  return peakNames.flatMap((name) => {
    const peak = run.peaks[name]
    if (peak === null || !isFollowed(name, run)) return []
    if (name === 'spinUpMotorAmps' && peak.value === 0) return []
    const [label, kind] = peakWords[name]
    return [line(label, shown(peak.value, kind), `  at ${seconds(peak.seconds)}`)]
  })
}

/** What is passed, when and in which row, and what of the build would move it. */
function passedLines(run: DriveRun, { build, pattern }: Asked, system: UnitSystem): string[] {
  const passed = passedOf(run, pattern.rows)
  const unfollowed = unfollowedOf(run).map(({ words, needs }) => `${words} (needs ${needs.join(', ')})`)
  const unwatched =
    unfollowed.length === 0 ? [] : wrapped(`Not watched: ${unfollowed.join('; ')}.`, 80, '    ', '  ')
  if (passed.length === 0) return ['  none', ...unwatched]
  const lines = passed.flatMap((one) => {
    const changes = changesFor(one.id, build).map(({ words, path }) => `${words} (${path})`)
    return [
      ...wrapped(`${one.label} ${passedWords(one, system)}.`, 80, '    ', '  '),
      ...wrapped(`Would help: ${changes.join('; ')}.`, 80, '      ', '    '),
    ]
  })
  return [...lines, ...unwatched]
}

/** How fast the pump has to turn from winter to summer; nothing without a liquid circuit. */
function pumpLines(build: Build, shown: Shown): string[] {
  const weather = flowForWeather(build)
  if (weather === null) return []
  const rows = weather.air.flatMap((celsius, at) => {
    if (celsius % 10 !== 0) return []
    const least = weather.flow[at] ?? null
    const none = celsius <= weather.freezes ? 'frozen' : 'none'
    return [line(`Air of ${shown(celsius, 'temperature')}`, least === null ? none : shown(least, 'flow'))]
  })
  return [
    'Least flow of the pump, in the build’s own drive pattern',
    ...rows,
    ...wrapped(flowWords(weather, shown), 80, '  ', '  '),
    '',
  ]
}

function energyLines(book: EnergyBook, shown: Shown): string[] {
  return [
    line('From the pack', shown(book.pack, 'energy')),
    ...energySinks.map((name) => line(sinkWords[name], shown(book.sinks[name], 'energy'))),
    line(sinkWords.motion, shown(book.motion, 'energy')),
    ...restTold(book).map(([name, joules]) => line(restWords[name], shown(joules, 'energy'))),
    line(restWords.steps, shown(book.rest.steps, 'energy')),
  ]
}
