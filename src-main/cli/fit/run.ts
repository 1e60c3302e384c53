import { fitEntries, fitEntryOf } from '../../../shared-engine/fit/entries.ts'
import type { FitAnswer } from '../../../shared-engine/fit/answer.ts'
import { fitOf } from '../../../shared-engine/fit/fit.ts'
import { fitLogOf } from '../../../shared-engine/fit/from-log.ts'
import type { FitLog } from '../../../shared-engine/fit/log.ts'
import { readChannels } from '../../../shared-engine/fit/read.ts'
import { cutInAir } from '../../../shared-engine/fit/in-air.ts'
import { LogReading } from '../../../shared-engine/log/log.ts'
import type { Build } from '../../../shared-engine/entries/schema.ts'
import { failed, succeeded, type Result } from '../../../shared-engine/mistakes/mistake.ts'
import { channelsOfFit } from '../../../shared-engine/validate/fitted.ts'
import { buildOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { jsonText } from '../json.ts'
import { refused } from '../log/choice.ts'
import { toldOfLog, type ToldOfLog } from '../log/in-air.ts'
import { logBytesOf } from '../log/log-file.ts'
import { mistake, report } from '../trouble.ts'

/** Fits entries of a build to a log and prints what came of it; gives the exit code. */
export async function fitFile(
  buildFile: string,
  file: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  const asked = askedOf(options['entries'], io)
  if (asked === null || readsInputTwice([buildFile, file], io)) return exit.unreadable
  const build = buildOf(buildFile, io)
  if (build === null) return exit.unreadable
  const told = toldOfLog(options, io)
  if (told === null) return exit.unreadable
  const bytes = logBytesOf(file)
  const log = bytes.ok ? logIn(bytes.value, build, told) : bytes
  if (!log.ok) return refused(file, log.mistakes, io)
  const answer = fitOf(build, log.value, asked)
  if (options['json'] === true) io.out(fitJson(answer))
  else {
    const { fitText } = await import('./text.ts')
    io.out(fitText(build.name, answer, channelsOfFit(build, log.value, answer)))
  }
  return answer.entries.some(({ verdict }) => verdict === 'refused') ? exit.over : exit.within
}

/** The entries that are asked for, each once; null after what is wrong with them has been reported. */
function askedOf(typed: string | boolean | undefined, io: Io): readonly string[] | null {
  const words = typeof typed === 'string' ? typed.split(',').map((word) => word.trim()) : []
  const wrong = words.filter((word) => fitEntryOf(word) === undefined)
  if (words.length > 0 && wrong.length === 0) return [...new Set(words)]
  const allowed = `any of ${fitEntries.map(({ path }) => path).join(', ')}, parted by commas`
  const found = words.length === 0 ? [''] : wrong
  report(
    io,
    'pitchline',
    found.map((word) => mistake('not-one-of', { path: '--entries', value: `"${word}"`, allowed })),
  )
  return null
}

/** Channels as JSON begin with a brace; everything else is a log as a recorder writes it. */
export function isChannels(bytes: Uint8Array): boolean {
  const first = bytes.find((byte) => !/[\s\u00ef\u00bb\u00bf]/.test(String.fromCharCode(byte)))
  return first === undefined || String.fromCharCode(first) === '{'
}

function logIn(bytes: Uint8Array, build: Build, { choice, inAir }: ToldOfLog): Result<FitLog> {
  if (isChannels(bytes)) {
    const channels = readChannels(bytes)
    return channels.ok ? succeeded(cutInAir(channels.value, inAir)) : channels
  }
  const reading = new LogReading({ build, bytes, choice, alarms: null })
  while (!reading.done) reading.step()
  const read = reading.read()
  if (read !== null) return succeeded(fitLogOf(read, inAir))
  const result = reading.result()
  return failed(result?.ok === false ? result.mistakes : [mistake('cannot-read')])
}

function fitJson(answer: FitAnswer): string {
  return jsonText({ format: 'pitchline-fit', version: 1, ...answer })
}
