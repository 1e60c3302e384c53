import type { Command } from '../command.ts'

/** `pitchline new`: a build to start from. */
export const newBuild: Command = {
  name: 'new',
  summary: 'write a build to start from, and beside it what each entry means',
  arguments: [{ name: 'file', about: 'where to write it; .build.json is added where the name has no .json' }],
  options: [],
  more: `Writes two files: the build, and a page that lists every entry with its unit,
its range, what it means and how to get it. Neither overwrites a file that
exists.

Example: pitchline new hauler.build.json`,
  run: async ([file = ''], _options, io) => {
    const { writeNewBuild } = await import('./run.ts')
    return writeNewBuild(file, io)
  },
}
