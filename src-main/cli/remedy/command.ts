import { jsonOption, unitsOption, type Command } from '../command.ts'

/** `pitchline remedy`: what would hold. */
export const remedy: Command = {
  name: 'remedy',
  summary: 'the least change of each entry that brings a limit to 20 % in hand',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json), or - for standard input' },
    { name: 'limit', about: 'a limit as check names it; the worst where left out', optional: true },
  ],
  options: [jsonOption, unitsOption],
  more: `One entry at a time, all others and the factor for shock kept; each line is
verified by check. Sizes are rounded to what can be had, on the safe side.

Exit codes: 0 nothing over in the build as it is, 2 something is, 1 the build or
the command line could not be read.

Examples:
  pitchline remedy hauler.build.json
  pitchline remedy hauler.build.json motor.temperature --json`,
  run: async ([build = '', limit = ''], { json, units }, io) => {
    const { remedyBuild } = await import('./run.ts')
    const system = units === 'imperial' ? 'imperial' : 'metric'
    return remedyBuild(build, limit, { json: json === true, system }, io)
  },
}
