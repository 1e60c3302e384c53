import { jsonOption, unitsOption, type Command } from '../command.ts'
import { choiceOptions, inAirOption } from '../log/choice-options.ts'

/** `pitchline validate`: a build held against a run that it was not fitted to. */
export const validate: Command = {
  name: 'validate',
  summary: 'hold a build against a run that it was not fitted to: where it is off, and by how much',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json)' },
    { name: 'log', about: 'file of the log: a table of text, or channels as JSON; - for standard input' },
  ],
  options: [...choiceOptions, inAirOption, jsonOption, unitsOption],
  more: `Speed, current and temperature are predicted from what drove the run (duty and
volts, else the current), and compared with what was measured, each with a band
of two standard deviations from the build's tolerances and the sensors. Take a
run that no entry of the build was fitted to: a fit agrees with its own run.
What a table's columns mean is said as for "pitchline log".

Exit codes: 0 all agree, 2 something is off or too little can be compared,
1 the build, the log or the command line could not be read.

Example: pitchline validate hauler.build.json second-run.csv`,
  run: async ([build = '', log = ''], options, io) => {
    const { validateFile } = await import('./run.ts')
    return validateFile(build, log, options, io)
  },
}
