import { jsonOption, type Command } from '../command.ts'
import { choiceOptions, inAirOption } from '../log/choice-options.ts'

/** `pitchline fit`: entries of a build from a log. */
export const fit: Command = {
  name: 'fit',
  summary: 'fit entries of a build to a log of a run: values with their errors, or why not',
  arguments: [
    { name: 'build', about: 'file of the build (*.build.json)' },
    { name: 'log', about: 'file of the log: a table of text, or channels as JSON; - for standard input' },
  ],
  options: [
    { flags: '--entries <list>', about: 'paths of the entries, parted by commas' },
    ...choiceOptions,
    inAirOption,
    jsonOption,
  ],
  more: `Entries that a log can tell: ground.rollingCoefficient, track.internalDragN,
track.internalDragNPerMps, vehicle.dragCoefficient, motor.kvRpmPerVolt,
motor.resistanceMilliohm, pack.cellResistanceMilliohm,
motor.thermalResistanceKPerW, motor.heatCapacityJPerK, ground.slipPercent.
What a table's columns mean is said as for "pitchline log".

Exit codes: 0 all are offered, 2 some are refused, 1 the build, the log or the
command line could not be read.

Example: pitchline fit hauler.build.json run.csv --entries
  ground.rollingCoefficient,pack.cellResistanceMilliohm`,
  run: async ([build = '', log = ''], options, io) => {
    const { fitFile } = await import('./run.ts')
    return fitFile(build, log, options, io)
  },
}
