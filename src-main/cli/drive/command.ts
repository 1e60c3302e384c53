import { csvOption, jsonOption, unitsOption, type Command } from '../command.ts'

/** `pitchline pattern`: a drive through time. */
export const drive: Command = {
  name: 'pattern',
  summary: 'drive a pattern through time: charge, heat, speed, energy, limits passed',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json), or - for standard input' },
    {
      name: 'pattern',
      about:
        'file of the pattern, or "Hut round", "Practice sled", "Stop and go", "Long climb", "Inspection"',
    },
  ],
  options: [jsonOption, csvOption, unitsOption],
  more: `A pattern file: { "format": "pitchline-pattern", "version": 2, "name": "…",
"rows": [{ "seconds": 30, "throttlePercent": 60, "gradePercent": 5 }, …] }.
Each row asks for one of "throttlePercent", "speedKmh", "speedPercent" (of top
speed) and "brakePercent"; it may have "gradePercent", "loadKg", "towForceN",
"resistancePercent", "gripPercent" and "turnPercent" of its own.

A drive is followed for at most 2,000,000 steps, which is some days of driving.
Stopped by Ctrl-C, the result is that of the time driven.

Exit codes: 0 no limit was passed on the way, 2 one was, the pack could not give
what was asked, or the drive ended early, 1 the build, the pattern or the
command line could not be read.

Example: pitchline pattern hauler.build.json "Hut round"`,
  run: async ([build = '', name = ''], options, io) => {
    const { driveBuild } = await import('./run.ts')
    return driveBuild(build, name, options, io)
  },
}
