import { csvOption, jsonOption, unitsOption, type Command } from '../command.ts'

/** `pitchline merge`: the parts of a divided run put together. */
export const merge: Command = {
  name: 'merge',
  summary: 'put together what several computers did of one search, sweep or uncertainty',
  arguments: [{ name: 'parts...', about: 'files of all parts of one run, in any order' }],
  options: [jsonOption, csvOption, unitsOption],
  more: `The answer is that of one run, to the bit. A missing or second part, and one of
another build, space, seed or program, is refused by name. --csv is for searches
and sweeps.

Exit codes: those of the command that was divided; 1 where parts do not make a
whole.

Example:
  for k in 1 2 3 4; do
    pitchline search hauler.build.json drawer.space.json --part $k/4 > $k.part &
  done; wait
  pitchline merge *.part`,
  run: async (files, options, io) => {
    const { mergeParts } = await import('./run.ts')
    return mergeParts(files, options, io)
  },
}
