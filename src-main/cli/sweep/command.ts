import { csvOption, jsonOption, unitsOption, type Command } from '../command.ts'
import { partOption } from '../parts/option.ts'

/** `pitchline sweep`: one number of the build varied. */
export const sweep: Command = {
  name: 'sweep',
  summary: 'vary one entry of a build and print figures against it, with the limits crossed',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json), or - for standard input' },
    { name: 'path', about: 'entry, as in the file: track.sprocketTeeth, stages.0.ratio' },
    { name: 'from', about: 'first value, in the unit of the entry’s key' },
    { name: 'to', about: 'last value' },
    { name: 'steps', about: 'steps between them, 1 to 1,000' },
  ],
  options: [
    jsonOption,
    csvOption,
    unitsOption,
    {
      flags: '--figures <names>',
      about: 'figures as check names them, parted by commas, or worstMargin',
      standard: 'topSpeedMps,topMotorAmps,toothForceN,worstMargin',
    },
    partOption,
  ],
  more: `A value that breaks a rule of the build is a gap, with its reason. With --json
and --csv, figures are SI; the entry is in its own unit.

Exit codes: 0 nothing over in the build as it is, 2 something is, 1 the build or
the command line could not be read.

Examples:
  pitchline sweep hauler.build.json track.sprocketTeeth 8 16 8
  pitchline sweep ibex.build.json vehicle.loadKg 0 150 30 --figures topSpeedMps`,
  run: async ([build = '', ...words], options, io) => {
    const { sweepBuild } = await import('./run.ts')
    return sweepBuild(build, words, options, io)
  },
}
