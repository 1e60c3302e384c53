import type { Build } from '../../../shared-engine/entries/schema.ts'
import { readChannels } from '../../../shared-engine/fit/read.ts'
import { cutInAir } from '../../../shared-engine/fit/in-air.ts'
import { LogReading } from '../../../shared-engine/log/log.ts'
import { failed, succeeded, type Result } from '../../../shared-engine/mistakes/mistake.ts'
import { runOfChannels, runOfLog, type Run } from '../../../shared-engine/validate/run.ts'
import { validationOf, type Validation } from '../../../shared-engine/validate/validate.ts'
import { buildOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { jsonText } from '../json.ts'
import { isChannels } from '../fit/run.ts'
import { refused } from '../log/choice.ts'
import { toldOfLog, type ToldOfLog } from '../log/in-air.ts'
import { logBytesOf } from '../log/log-file.ts'
import { mistake } from '../trouble.ts'

/** Holds a build against a run and prints how it agrees; gives the exit code. */
export async function validateFile(
  buildFile: string,
  file: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  if (readsInputTwice([buildFile, file], io)) return exit.unreadable
  const build = buildOf(buildFile, io)
  if (build === null) return exit.unreadable
  const told = toldOfLog(options, io)
  if (told === null) return exit.unreadable
  const bytes = logBytesOf(file)
  const run = bytes.ok ? runIn(bytes.value, build, told) : bytes
  if (!run.ok) return refused(file, run.mistakes, io)
  const { validation } = validationOf(build, run.value)
  if (options['json'] === true)
    io.out(jsonText({ format: 'pitchline-validation', version: 1, ...validation }))
  else {
    const { validationText } = await import('./text.ts')
    io.out(validationText(validation, options['units'] === 'imperial' ? 'imperial' : 'metric'))
  }
  return agrees(validation) ? exit.within : exit.over
}

const agrees = ({ quantities }: Validation) =>
  quantities.length > 0 && quantities.every(({ verdict }) => verdict === 'agrees')

function runIn(bytes: Uint8Array, build: Build, { choice, inAir }: ToldOfLog): Result<Run> {
  if (isChannels(bytes)) {
    const channels = readChannels(bytes)
    return channels.ok ? succeeded(runOfChannels(cutInAir(channels.value, inAir))) : channels
  }
  const reading = new LogReading({ build, bytes, choice, alarms: null })
  while (!reading.done) reading.step()
  const [read, result] = [reading.read(), reading.result()]
  if (read !== null && result?.ok === true) return succeeded(runOfLog(read, result.value.episodes, inAir))
  return failed(result?.ok === false ? result.mistakes : [mistake('cannot-read')])
}
