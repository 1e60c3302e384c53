import { readBuildForReadings } from '../../../shared-engine/measure/build.ts'
import { measure, type Measurement } from '../../../shared-engine/measure/measure.ts'
import { readReadings } from '../../../shared-engine/measure/read.ts'
import type { Readings } from '../../../shared-engine/measure/readings.ts'
import { isTestId, testIds } from '../../../shared-engine/reference/measurements.ts'
import { contentOf } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { jsonText } from '../json.ts'
import { mistake, report } from '../trouble.ts'

/** Works readings out and prints what came of them; gives the exit code. */
export async function measureFile(
  test: string,
  file: string,
  options: OptionValues,
  io: Io,
): Promise<number> {
  if (!isTestId(test)) {
    const allowed = testIds.join(', ')
    return report(io, 'pitchline', [mistake('not-one-of', { path: 'test', value: `"${test}"`, allowed })])
  }
  const { build: buildFile } = options
  const build = typeof buildFile === 'string' ? contentOf(buildFile, readBuildForReadings, io) : undefined
  const readings = contentOf(file, (bytes) => readReadings(test, bytes, build ?? null), io)
  if (readings === null || build === null) return exit.unreadable
  const measured = measure(readings, build ?? null)
  if (!measured.ok) return report(io, file === '-' ? 'standard input' : file, measured.mistakes)
  await print(readings, measured.value, options['json'] === true, io)
  return measured.value.verdict === 'retake' ? exit.over : exit.within
}

async function print(readings: Readings, measured: Measurement, json: boolean, io: Io): Promise<void> {
  if (json) {
    const { test, verdict, origin, results, figures, notes } = measured
    const whole = {
      format: 'pitchline-measurement',
      version: 1,
      test,
      verdict,
      origin,
      results,
      figures,
      notes,
    }
    io.out(jsonText(whole))
    return
  }
  const { measurementText } = await import('./text.ts')
  io.out(measurementText(readings, measured))
}
