import type { Build } from '../../../shared-engine/entries/schema.ts'
import { changesBetween } from '../../../shared-engine/log/changes/changes.ts'
import type { ToldRun } from '../../../shared-engine/log/changes/course.ts'
import { changesFromBuild } from '../../../shared-engine/log/changes/from-build.ts'
import type { Changes } from '../../../shared-engine/log/changes/result.ts'
import { readAlarms } from '../../../shared-engine/log/facts/alarms.ts'
import { LogReading, type LogInput } from '../../../shared-engine/log/log.ts'
import type { LogResult } from '../../../shared-engine/log/result.ts'
import { buildOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { choiceOf, fileOf, refused } from './choice.ts'
import { logBytesOf } from './log-file.ts'
import { logText } from './text.ts'

/** Reads a log and prints what happened; gives the exit code. */
export async function printLog(
  buildFile: string,
  file: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  const files = [buildFile, file, options['before'], options['beforeBuild']]
  if (
    readsInputTwice(
      files.filter((one) => typeof one === 'string'),
      io,
    )
  )
    return exit.unreadable
  const build = buildOf(buildFile, io)
  const choice = choiceOf(options, io)
  const alarms = fileOf(options['alarms'], readAlarms, io)
  if (build === null || choice === null || alarms === null) return exit.unreadable
  const own = await readIn({ build, file, choice, alarms: alarms.value }, io)
  if (own === null) return exit.unreadable
  const changes = await changesFor(own, build, options, io)
  if (changes === null) return exit.unreadable
  const { result } = own
  if (options['json'] === true) io.out(logJson(result, changes))
  else {
    const name = file === '-' ? 'standard input' : file
    const system = options['units'] === 'imperial' ? 'imperial' : 'metric'
    io.out(logText(result, name, system, changes))
  }
  return result.episodes.some(({ over }) => over) ? exit.over : exit.within
}

/** A log that was read: what it says, and its channels. */
interface ReadRun extends ToldRun {
  readonly result: LogResult
}

/** Reads a log's file; null after its mistakes were reported. */
async function readIn(
  { file, ...input }: Omit<LogInput, 'bytes'> & { readonly file: string },
  io: Io,
): Promise<ReadRun | null> {
  const bytes = logBytesOf(file)
  const reading = bytes.ok ? await readInSteps({ ...input, bytes: bytes.value }, io) : null
  const result = bytes.ok ? (reading?.result() ?? null) : bytes
  const log = reading?.read() ?? null
  if (result?.ok === true && 'episodes' in result.value && log !== null)
    return { log, result: result.value, episodes: result.value.episodes }
  if (result?.ok === false) refused(file, result.mistakes, io)
  return null
}

/** What is asked to be compared; null after what could not be read was reported. */
async function changesFor(
  own: ReadRun,
  build: Build,
  options: OptionValues,
  io: Io,
): Promise<readonly Changes[] | null> {
  const { before: file, beforeBuild: other } = options
  const found: Changes[] = []
  if (typeof file === 'string') {
    const driven = typeof other === 'string' ? buildOf(other, io) : build
    const before =
      driven === null ? null : await readIn({ build: driven, file, choice: {}, alarms: null }, io)
    if (before === null) return null
    found.push(changesBetween(before, own))
  }
  if (options['byBuild'] === true) found.push(changesFromBuild(own))
  return found
}

/** ms between two looks of a person at a terminal. */
const lookMs = 200

async function readInSteps(input: LogInput, io: Io): Promise<LogReading> {
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
  return reading
}

/** The result for programs. */
function logJson({ build, ...rest }: LogResult, changes: readonly Changes[]): string {
  // Until when a track spun stands in its sentence: programs know the keys of an episode.
  const told = (key: string, value: unknown) => (key === 'spunUntil' ? undefined : value)
  const more = changes.length === 0 ? {} : { changes }
  return `${JSON.stringify({ format: 'pitchline-log', version: 1, build, ...rest, ...more }, told, 2)}\n`
}
