import { jsonOption, unitsOption, type Command } from '../command.ts'

/** `pitchline compare`: builds side by side. */
export const compare: Command = {
  name: 'compare',
  summary: 'put up to four builds side by side: what differs, figures, limits',
  arguments: [{ name: 'builds...', about: 'files of 2 to 4 builds (*.build.json)' }],
  options: [jsonOption, unitsOption],
  more: `Differences are from the first build.

Exit codes: 0 nothing is over in any of them, 2 something is, 1 a build could
not be read.

Example: pitchline compare hauler.build.json hauler-2.build.json`,
  run: async (files, { json, units }, io) => {
    const { compareBuilds } = await import('./run.ts')
    return compareBuilds(
      files,
      { json: json === true, system: units === 'imperial' ? 'imperial' : 'metric' },
      io,
    )
  },
}
