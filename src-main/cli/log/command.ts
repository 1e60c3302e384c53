import { jsonOption, unitsOption, type Command } from '../command.ts'
import { choiceOptions } from './choice-options.ts'

/** `pitchline log`: what happened on a run. */
export const log: Command = {
  name: 'log',
  summary: 'read a log of a run: what happened, how far, how much, which alarms spoke',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json), or - for standard input' },
    { name: 'file', about: 'file of the log: a table of text, with a heading and a time' },
  ],
  options: [
    jsonOption,
    unitsOption,
    ...choiceOptions,
    { flags: '--before <file>', about: 'an earlier log: what changed since, under like conditions' },
    { flags: '--before-build <file>', about: 'the build that the earlier log was driven with, if another' },
    { flags: '--by-build', about: 'also what the build says of the same speeds and currents' },
    { flags: '--alarms <file>', about: 'alarms to replay; without it, those of the alarm card' },
  ],
  more: `Columns are known by name and unit: time, motor rpm (or electrical, or of the
sprocket), volts, amps, duty, throttle, speed, temperatures, counters. A file of
columns: { "delimiter": ";", "decimal": ",", "rate": 5, "rpmFactor": 0.5,
"columns": { "Sensor 3": { "channel": "motorC", "unit": "°f" } } }, each part
only where it is needed; "channel": null leaves a column out.
With --before, stretches of both runs at the same speed, motor temperature and
charge are compared: current, energy per kilometre, speed, warming, resistance
of the pack, each difference with its scatter, or why the runs cannot tell it.
A file of alarms: [{ "id": "rpm", "channel": "rpm", "direction": "above",
"value": 9000, "hold": 0.5, "hysteresis": 200, "limit": 9500 }].

Exit codes: 0 nothing went over a limit, 2 something did, or the load was lost,
1 the log, the build or the command line could not be read.

Example: pitchline log hut-hauler.build.json run.csv`,
  run: async ([build = '', file = ''], options, io) => {
    const { printLog } = await import('./run.ts')
    return printLog(build, file, options, io)
  },
}
