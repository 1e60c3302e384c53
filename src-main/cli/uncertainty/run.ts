import { fewestSamples, mostSamples } from '../../../shared-engine/uncertainty/samples.ts'
import { entriesWords, spreadByOrigin } from '../../../shared-engine/uncertainty/words.ts'
import type { UncertainLimit, Uncertainty } from '../../../shared-engine/uncertainty/uncertainty.ts'
import { uncertaintyJob } from '../../../shared-engine/jobs/uncertainty.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { marginText } from '../../../shared-engine/limits/margin-words.ts'
import { limitOf } from '../../../shared-engine/limits/table.ts'
import { formatText } from '../../../shared-engine/units/display.ts'
import { wrapped } from '../../../shared-engine/explain/wrap.ts'
import { buildOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { threadsOf, wholeOf } from '../option-values.ts'
import { partOf } from '../parts/option.ts'
import { runPart } from '../parts/run.ts'
import { runOnThreads } from '../threads.ts'
import { reportStopped } from '../trouble.ts'
import { jsonText } from '../json.ts'

/** Draws the tolerances of a build and prints what its limits make of them; gives the exit code. */
export async function uncertaintyOfFile(file: string, options: OptionValues, io: Io): Promise<number> {
  const samples = wholeOf('--samples', options['samples'], fewestSamples, mostSamples, io)
  const seed = wholeOf('--seed', options['seed'], 0, Number.MAX_SAFE_INTEGER, io)
  const workers = threadsOf(options, io)
  const build = buildOf(file, io)
  const part = partOf(options, io)
  if (build === null || samples === null || seed === null || workers === null || part === undefined)
    return exit.unreadable
  const input = { build, samples, seed }
  if (part !== null) return runPart(uncertaintyJob, input, part, workers, io)
  const { end, outcome } = await runOnThreads(uncertaintyJob, input, workers, io)
  if (end.type === 'failed') throw new Error(end.story)
  const told = outcome()
  return told === null ? reportStopped(io, file) : tellUncertainty(told, end.type === 'stopped', options, io)
}

/** Prints how sure the limits are; gives the exit code. */
export function tellUncertainty(
  outcome: Uncertainty,
  stopped: boolean,
  options: OptionValues,
  io: Io,
): number {
  io.out(
    options['json'] === true
      ? jsonText({ format: 'pitchline-uncertainty', version: 1, stopped, ...outcome })
      : uncertaintyText(outcome, stopped),
  )
  return outcome.probabilityAnyOver > 0 ? exit.over : exit.within
}

const percent = (value: number | null) => formatText(value, 'fraction', 'metric')

function uncertaintyText(result: Uncertainty, stopped: boolean): string {
  const { name, samples, seed, entries, counted, impossible, limits, probabilityAnyOver } = result
  const head =
    entries.length === 0
      ? 'No entry has a tolerance or says where it comes from, so nothing is uncertain here: add some under "tolerances" or "origins" in the build.'
      : `${samples.toLocaleString('en')} samples of ${entriesWords(entries)}, seed ${seed}${stopped ? ', stopped before the end' : ''}. Something is over in ${percent(probabilityAnyOver)} of them.`
  const byOrigin = spreadByOrigin(entries)
  const held = entries.filter((entry) => entry.held > 0)
  const lines = [
    ...wrapped(oneLine(name, 160), 80),
    ...wrapped(head, 80),
    ...(byOrigin === '' ? [] : wrapped(`Without a tolerance of their own, ${byOrigin}.`, 80, '  ')),
    ...(counted.length === 0 ? [] : wrapped(`Counts take no part: ${counted.join(', ')}.`, 80, '  ')),
    ...held.flatMap(({ path, held: times }) =>
      wrapped(`Held to its range ${times} times: ${path}.`, 80, '  '),
    ),
    ...(impossible === 0 ? [] : wrapped(`${impossible} draws made no build and are left out.`, 80)),
    '',
    `${'Margin of'.padEnd(30)} ${'5 %'.padStart(9)} ${'50 %'.padStart(9)} ${'95 %'.padStart(9)} ${'over'.padStart(9)}`,
    ...limits.map(limitLine),
    ...adviceLines(limits[0]),
  ]
  return `${lines.join('\n')}\n`
}

function limitLine({ id, margin5, margin50, margin95, probabilityOver }: UncertainLimit): string {
  const sense = limitOf(id)?.sense
  const margins = [margin5, margin50, margin95].map((value) => marginText(value, sense))
  const numbers = [...margins, percent(probabilityOver)].map((value) => value.padStart(9))
  return `${id.padEnd(30)} ${numbers.join(' ')}`
}

function adviceLines(worst: UncertainLimit | undefined): readonly string[] {
  if (worst === undefined || worst.measureFirst === null) return []
  const first = worst.influences.find(({ path }) => path === worst.measureFirst)
  const rows = worst.influences
    .filter(({ rankCorrelation }) => Math.abs(rankCorrelation ?? 0) >= 0.05)
    .map(
      ({ path, rankCorrelation }) => `  ${path.padEnd(40)} ${(rankCorrelation ?? 0).toFixed(2).padStart(6)}`,
    )
  const advice = `Measure ${worst.measureFirst} first: halving its tolerance would take the band of ${worst.id} from ${percent(first?.band ?? null)} to ${percent(first?.bandIfHalved ?? null)}.`
  return ['', `What moves ${worst.id}, by rank correlation`, ...rows, ...wrapped(advice, 80)]
}
