import { jsonOption, type Command } from '../command.ts'

/** `pitchline measure`: readings of a bench test to an entry with its tolerance. */
export const measure: Command = {
  name: 'measure',
  summary: 'turn the readings of a guided bench test into an entry with its tolerance',
  arguments: [
    { name: 'test', about: 'the guided test, such as kv, free-run, coast-down, weigh' },
    { name: 'readings', about: 'file of the readings (*.readings.json), or - for standard input' },
  ],
  options: [{ flags: '--build <file>', about: 'build that has what the readings do not give' }, jsonOption],
  more: `A readings file: { "format": "pitchline-readings", "version": 1,
"test": "weigh",
"lists": { "frontKg": [8.2, 8.3], "rearKg": [9.9, 9.8], "spanMm": [640] },
"instruments": { "frontKg": { "percent": 0.5, "resolution": 0.1 } } }

Without a file that can be read, a wrong name of a test lists all of them.

Exit codes: 0 the result can be taken, 2 the readings have to be taken again,
1 readings, build or command line could not be read.

Example: pitchline measure kv motor.readings.json --build hauler.build.json`,
  run: async ([test = '', readings = ''], options, io) => {
    const { measureFile } = await import('./run.ts')
    return measureFile(test, readings, options, io)
  },
}
