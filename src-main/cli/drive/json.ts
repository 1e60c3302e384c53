import { channels } from '../../../shared-engine/drive/series.ts'
import { peakNames } from '../../../shared-engine/drive/reading.ts'
import type { DriveRun } from '../../../shared-engine/drive/result.ts'

/** What `series` holds, in its order. */
const listed = channels.filter((name) => !['case', 'pack', 'height'].includes(name))

/**
 * A drive as `--json` gives it, version 2: SI and °C; one motor's amps and iron, all of the pack; what does not exist is
 * null.
 */
export function driveJson(run: DriveRun) {
  const { series, peaks, ...rest } = run
  return {
    format: 'pitchline-drive',
    version: 2,
    ...rest,
    peaks: Object.fromEntries(peakNames.map((name) => [name, peaks[name]?.value ?? null])),
    peakSeconds: Object.fromEntries(peakNames.map((name) => [name, peaks[name]?.seconds ?? null])),
    series: series.map((sample) => Object.fromEntries(listed.map((name) => [name, sample[name]]))),
  }
}
