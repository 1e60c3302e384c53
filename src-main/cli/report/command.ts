import { unitsOption, type Command } from '../command.ts'

/** `pitchline report`: the printable sheet of a build. */
export const report: Command = {
  name: 'report',
  summary: 'write the sheet of a build: to print, to hand on, to hang up in the workshop',
  arguments: [{ name: 'build', about: 'file of the build (*.build.json), or - for standard input' }],
  options: [
    {
      flags: '-o, --output <file>',
      about: 'write a file, which must not exist: .pdf, .html or .md; without it, Markdown is printed',
    },
    { flags: '--html', about: 'print a page of HTML instead of Markdown' },
    {
      flags: '--paper <size>',
      about: 'paper of PDF and HTML',
      choices: ['a4', 'letter', 'a3'],
      standard: 'a4',
    },
    { flags: '--all', about: 'everything in tables, on as many pages as it takes, instead of one page' },
    { flags: '--workings', about: 'with the working of every figure and limit, on further pages' },
    { flags: '--date <day>', about: 'day on the sheet; the present one where none is given' },
    unitsOption,
  ],
  more: `The sheet is one page: answer, limits in their three groups, what a mishap
does, what would hold, what was not judged, alarm card, what to order, curves,
figures, the build with origins and spreads, cautions. Its numbers are those of
check. Letters are as large as one page allows; what a page cannot hold at the
smallest goes on over it.

Exit codes: 0 nothing over, 2 something is, 1 the build or the command line
could not be read or the file not be written.

Examples:
  pitchline report hauler.build.json -o hauler.pdf
  pitchline report hauler.build.json --html --units imperial > hauler.html`,
  run: async ([build = ''], options, io) => {
    const { reportBuild } = await import('./run.ts')
    return reportBuild(build, options, io)
  },
}
