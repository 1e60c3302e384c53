import { existsSync } from 'node:fs'
import { oneLine } from '../../../shared-engine/mistakes/shown.ts'
import { demoPatternOf, demoPatterns } from '../../../shared-engine/drive/demos.ts'
import { readPattern } from '../../../shared-engine/drive/read.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'
import { DriveUnderWay } from '../../../shared-engine/drive/run.ts'
import { channels } from '../../../shared-engine/drive/series.ts'
import type { Pattern } from '../../../shared-engine/drive/drive.ts'
import { buildOf, contentOf, readsInputTwice } from '../build-file.ts'
import type { OptionValues } from '../command.ts'
import { exit } from '../exit.ts'
import type { Io } from '../io.ts'
import { systemOf } from '../option-values.ts'
import { mistake, report, reportStopped } from '../trouble.ts'
import { untilStopped } from '../until-stopped.ts'
import { jsonText } from '../json.ts'
import { driveText } from './text.ts'
import { driveJson } from './json.ts'

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
    io.out(jsonText(driveJson(run)))
  } else if (options['csv'] === true) {
    const rows = run.series.map((sample) => channels.map((channel) => sample[channel]).join(','))
    io.out(`${[channels.join(','), ...rows].join('\n')}\n`)
  } else io.out(driveText(run, { build, pattern }, systemOf(options)))
  const passed = run.overContinuous.length > 0 || run.watched.some(({ passedAt }) => passedAt !== null)
  return passed || run.starved !== null || run.end !== 'finished' ? exit.over : exit.within
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
