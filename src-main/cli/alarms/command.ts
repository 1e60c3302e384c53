import { jsonOption, unitsOption, type Command } from '../command.ts'

/** `pitchline alarms`: what to set on transmitter and controller. */
export const alarms: Command = {
  name: 'alarms',
  summary: 'print the alarm card: what to set on transmitter and controller',
  arguments: [{ name: 'build', about: 'file of the build (*.build.json), or - for standard input' }],
  options: [jsonOption, unitsOption],
  more: `The direction of each alarm is in words. With --json each row carries its
working.

Exit codes: 0 nothing over in the build as it is, 2 something is, 1 the build or
the command line could not be read.

Example: pitchline alarms hauler.build.json`,
  run: async ([build = ''], { json, units }, io) => {
    const { alarmCard } = await import('./run.ts')
    return alarmCard(build, { json: json === true, system: units === 'imperial' ? 'imperial' : 'metric' }, io)
  },
}
