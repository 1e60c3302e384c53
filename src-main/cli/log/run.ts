import { readColumns } from '../../../shared-engine/log/columns/choice.ts'
import { readAlarms } from '../../../shared-engine/log/facts/alarms.ts'
import { LogReading, type LogInput } from '../../../shared-engine/log/log.ts'
import { refusalCodeOf } from '../../../shared-engine/log/refusal.ts'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { sentenceOf } from '../../../shared-engine/mistakes/catalogue.ts'
import type { Mistake, Result } from '../../../shared-engine/mistakes/mistake.ts'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { buildOf, contentOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { mistake, report } from '../trouble.ts'
import { logBytesOf } from './log-file.ts'
import { logText } from './text.ts'

/** Reads a log and prints what happened; gives the exit code. */
export async function printLog(
  buildFile: string,
  file: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  if (buildFile === '-' && file === '-') {
    const allowed = 'standard input for one of the two'
    return report(io, 'pitchline', [
      mistake('option-not-understood', { path: 'the log', value: 'standard input, as the build', allowed }),
    ])
  }
  const build = buildOf(buildFile, io)
  const choice = fileOf(options['columns'], readColumns, io)
  const alarms = fileOf(options['alarms'], readAlarms, io)
  if (build === null || choice === null || alarms === null) return exit.unreadable
  const bytes = logBytesOf(file)
  if (!bytes.ok) return refused(file, bytes.mistakes, io)
  const result = await readInSteps(
    { build, bytes: bytes.value, choice: choice.value ?? {}, alarms: alarms.value },
    io,
  )
  if (!result.ok) return refused(file, result.mistakes, io)
  if (options['json'] === true) io.out(logJson(result.value))
  else {
    const name = file === '-' ? 'standard input' : file
    io.out(logText(result.value, name, options['units'] === 'imperial' ? 'imperial' : 'metric'))
  }
  return result.value.episodes.some(({ over }) => over) ? exit.over : exit.within
}

/** What a file that an option names holds: null in it without the option, null alone after its mistakes were reported. */
function fileOf<T>(
  file: string | boolean | undefined,
  reader: (bytes: Uint8Array) => Result<T>,
  io: Io,
): { readonly value: T | null } | null {
  if (typeof file !== 'string') return { value: null }
  let mistakes: readonly Mistake[] = []
  // Its mistakes are reported here, with their codes; those of the file itself by the reader of files.
  const value = contentOf<{ readonly found: T | null }>(
    file,
    (bytes) => {
      const read = reader(bytes)
      if (!read.ok) mistakes = read.mistakes
      return { ok: true, value: { found: read.ok ? read.value : null } }
    },
    io,
  )
  if (mistakes.length > 0) refused(file, mistakes, io)
  return value === null || mistakes.length > 0 ? null : { value: value.found }
}

/** Each mistake on a line, with its code where programs may want it. */
function refused(file: string, mistakes: readonly Mistake[], io: Io): number {
  const where = file === '-' ? 'standard input' : oneLine(file, 200)
  for (const one of mistakes) {
    const code = refusalCodeOf(one)
    io.err(`${where}: ${sentenceOf(one)}${code === null ? '' : ` [${code}]`}\n`)
  }
  return exit.unreadable
}

/** ms between two looks of a person at a terminal. */
const lookMs = 200

async function readInSteps(input: LogInput, io: Io): Promise<Result<LogResult>> {
  const reading = new LogReading(input)
  let shownAt = Date.now()
  for (let step = 1; !reading.done; step += 1) {
    reading.step()
    if (io.progress === undefined || Date.now() - shownAt < lookMs) continue
    shownAt = Date.now()
    io.progress(`${Math.floor((100 * step) / reading.steps)} % read`)
    await new Promise((resolve) => setImmediate(resolve))
  }
  io.progress?.('')
  return reading.result() ?? { ok: false, mistakes: [] }
}

/** The result for programs. */
function logJson({ build, ...rest }: LogResult): string {
  // Until when a track spun stands in its sentence: programs know the keys of an episode.
  const told = (key: string, value: unknown) => (key === 'spunUntil' ? undefined : value)
  return `${JSON.stringify({ format: 'pitchline-log', version: 1, build, ...rest }, told, 2)}\n`
}
