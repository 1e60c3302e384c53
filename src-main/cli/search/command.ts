import { csvOption, jsonOption, unitsOption, type Command } from '../command.ts'
import { partOption } from '../parts/option.ts'

/** `pitchline search`: which combinations of what is in the drawers hold, and which of them is best. */
export const search: Command = {
  name: 'search',
  summary: 'search combinations of teeth, ratios, cells, motors and throttle caps',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json), or - for standard input' },
    { name: 'space', about: 'file of the space (*.space.json): what to vary, to hold and to aim for' },
  ],
  options: [
    jsonOption,
    csvOption,
    unitsOption,
    { flags: '--workers <count>', about: 'threads; one for each core, at most 8, if left out' },
    partOption,
  ],
  more: `The space names values to try for any of stages.N.driverTeeth, .drivenTeeth or
.ratio, track.sprocketTeeth, pack.series, controller.throttleCapPercent and
motor; margins and figures to hold; one figure to aim for, or two for a Pareto
front.
With --json, numbers are SI; entries are in the build's own units.

Exit codes: 0 found, and nothing over in the best; 2 nothing holds, or
something is over in the best; 1 the build or the space could not be read.

Examples:
  pitchline search hauler.build.json drawer.space.json
  pitchline search hauler.build.json drawer.space.json --csv > rows.csv`,
  run: async ([build = '', space = ''], options, io) => {
    const { searchBuild } = await import('./run.ts')
    return searchBuild(build, space, options, io)
  },
}
