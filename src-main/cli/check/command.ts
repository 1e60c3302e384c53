import { jsonOption, unitsOption, type Command } from '../command.ts'

/** `pitchline check`: every figure and every limit of a build. */
export const check: Command = {
  name: 'check',
  summary: 'print every figure of a build and its limits, worst first',
  arguments: [{ name: 'build', about: 'file of the build (*.build.json), or - for standard input' }],
  options: [jsonOption, unitsOption],
  more: `Exit codes: 0 nothing is over in ordinary use, 2 something is, 1 the build or
the command line could not be read.

Examples:
  pitchline check hauler.build.json
  pitchline check hauler.build.json --units imperial
  pitchline check hauler.build.json --json > hauler.check.json`,
  run: async ([build = ''], { json, units }, io) => {
    const { checkBuild } = await import('./run.ts')
    return checkBuild(
      build,
      { json: json === true, system: units === 'imperial' ? 'imperial' : 'metric' },
      io,
    )
  },
}
