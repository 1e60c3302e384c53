import { jsonOption, type Command } from '../command.ts'
import { partOption } from '../parts/option.ts'

/** `pitchline uncertainty`: how sure each limit is. */
export const uncertainty: Command = {
  name: 'uncertainty',
  summary: 'how sure each limit is, given the tolerances of the build, and what to measure first',
  arguments: [{ name: 'build', about: 'file of the build (*.build.json), or - for standard input' }],
  options: [
    jsonOption,
    { flags: '--samples <count>', about: 'samples to draw, 20 to 200,000', standard: '10000' },
    { flags: '--seed <number>', about: 'whole number that decides the draws', standard: '1' },
    { flags: '--workers <count>', about: 'threads to use, 1 to 64; one for each core where left out' },
    partOption,
  ],
  more: `The same seed gives the same result, whatever the number of threads.
Stopped by Ctrl-C, the result is that of the samples that are in.

Exit codes: 0 nothing was over in any sample, 2 something was, 1 the build or
the command line could not be read.

Example: pitchline uncertainty hauler.build.json --samples 20000 --seed 7`,
  run: async ([build = ''], options, io) => {
    const { uncertaintyOfFile } = await import('./run.ts')
    return uncertaintyOfFile(build, options, io)
  },
}
